package handreach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.PlaceForm;
import handreach.input.Keyword;
import handreach.loadout.Carry;
import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.plan.Questions;
import handreach.propagation.GroundType;
import handreach.propagation.NoiseEnvironment;
import handreach.propagation.Standing;
import handreach.relay.RelayMode;
import handreach.story.CommandRun;
import handreach.terrain.Cover;
import handreach.terrain.CoverLegend;
import handreach.terrain.Surface;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A word that is read is owned once: documents and help name the words that the program reads, all of them and no other. */
class WordsTest {
    private static final Pattern QUOTED = Pattern.compile("`([^`]+)`");
    private static final int HELP_WIDTH = 110;

    /** A row of a document that lists the words of a key, and what else stands in quotes there. */
    private record Row(String page, String start, Keyword<?> keyword, Set<String> others) {
        Row(String page, String start, Keyword<?> keyword) {
            this(page, start, keyword, Set.of());
        }
    }

    private static final List<Row> ROWS = List.of(
            new Row("plan-file.md", "| `place_form` |", PlaceForm.KEYWORD),
            new Row("plan-file.md", "| `modulation` |", Modulation.KEYWORD),
            new Row("plan-file.md", "| `quality` |", CopyQuality.KEYWORD),
            new Row("plan-file.md", "| `fading` |", Fading.KEYWORD),
            new Row("plan-file.md", "| `surface` |", Surface.KEYWORD),
            new Row("plan-file.md", "| `type` |", GroundType.KEYWORD),
            new Row("plan-file.md", "| `cover` |", Cover.KEYWORD),
            new Row("plan-file.md", "| `land_cover`, `legend` |", CoverLegend.KEYWORD),
            new Row("plan-file.md", "| `noise` |", NoiseEnvironment.KEYWORD),
            new Row("plan-file.md", "| `woods_and_towns` |", Standing.KEYWORD, Set.of("full-wave", "full-wave.md")),
            new Row("plan-file.md", "| `radiator` |", Radiator.KEYWORD),
            new Row(
                    "plan-file.md",
                    "| `talk`, `pairs` |",
                    Questions.WhoTalks.KEYWORD,
                    Set.of("pairs = [[\"a\", \"b\"]]")),
            new Row("plan-file.md", "| `mode` |", RelayMode.KEYWORD));

    private static List<String> lines(String page) throws IOException {
        return Files.readAllLines(Path.of("docs", page));
    }

    private static List<String> quoted(String text) {
        List<String> words = new ArrayList<>();
        Matcher matcher = QUOTED.matcher(text);
        while (matcher.find()) words.add(matcher.group(1));
        return words;
    }

    @Test
    void everyRowNamesTheWordsThatAreRead() throws IOException {
        for (Row row : ROWS) {
            String line = lines(row.page()).stream()
                    .filter(one -> one.startsWith(row.start()))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(row.page() + " has no row " + row.start()));
            Set<String> named = new HashSet<>(quoted(line.split("\\|")[2]));
            named.removeAll(row.others());
            assertEquals(new HashSet<>(row.keyword().words()), named, row.page() + ", " + row.start());
        }
    }

    @Test
    void carriesAreTheSameInThePlanTheTableAndTheProgram() throws IOException {
        String page = String.join("\n", lines("plan-file.md"));
        String section = page.substring(page.indexOf("## [[loadout]]"), page.indexOf("## [[carry_loss]]"));
        String list = section.substring(section.indexOf("`carry`:"), section.indexOf("`height_m`"));
        List<String> words = quoted(list.substring("`carry`:".length()));
        for (String word : Carry.KEYWORD.words()) assertTrue(words.contains(word), word + " is missing: " + words);
        for (String word : words) assertTrue(Carry.KEYWORD.find(word).isPresent(), word + " is not read");
        List<String> table = lines("antennas.md");
        int head = table.indexOf(table.stream()
                .filter(line -> line.startsWith("| position | word |"))
                .findFirst()
                .orElseThrow());
        List<String> rows = new ArrayList<>();
        for (int i = head + 2; table.get(i).startsWith("|"); i++)
            for (String word : quoted(table.get(i).split("\\|")[2])) {
                assertTrue(Carry.KEYWORD.find(word).isPresent(), word + " is not read");
                rows.add(word);
            }
        assertTrue(rows.containsAll(Carry.KEYWORD.words()), rows.toString());
    }

    /** A row behind an empty line is shown as text. */
    @Test
    void noRowFallsOutOfItsTable() throws IOException {
        try (Stream<Path> pages = Files.list(Path.of("docs"))) {
            for (Path page :
                    pages.filter(file -> file.toString().endsWith(".md")).toList()) {
                List<String> lines = Files.readAllLines(page);
                for (int i = 0; i < lines.size(); i++) {
                    boolean begins = lines.get(i).startsWith("|")
                            && (i == 0 || !lines.get(i - 1).startsWith("|"));
                    if (begins)
                        assertTrue(
                                i + 1 < lines.size() && lines.get(i + 1).matches("\\|[ :|-]+\\|"),
                                page + " line " + (i + 1) + " stands outside its table");
                }
            }
        }
    }

    /** A synopsis ended a line within {@code FILE.s1p} and the next began with {@code s1p}. */
    @Test
    void whatIsTypedIsNotPartedInASynopsis() {
        for (String command : List.of(
                "bench", "match", "pattern", "tiles", "plan", "path", "reach", "assign", "relay", "atlas", "walk",
                "card", "report")) {
            List<String> synopsis = CommandRun.of(command, "--help")
                    .out()
                    .lines()
                    .takeWhile(line -> line.startsWith("Usage: ") || line.startsWith("   "))
                    .toList();
            for (String word : String.join(" ", synopsis).split(" +"))
                assertTrue(
                        word.matches("Usage:|handreach|" + command + "|(-|--|\\[|[A-Z]).*[A-Za-z\\].]")
                                && word.chars().filter(c -> c == '[').count()
                                        == word.chars().filter(c -> c == ']').count(),
                        word + " in " + synopsis);
        }
    }

    /** What is shown as an example is copied: it stands on a line of its own, whole, and its options exist. */
    @Test
    void examplesInTheHelpCanBeCopied() {
        int examples = 0;
        for (String command : List.of(
                "bench", "match", "pattern", "tiles", "plan", "path", "reach", "assign", "relay", "atlas", "walk",
                "card", "report", "desk")) {
            String help = CommandRun.of(command, "--help").out();
            for (String line : help.lines().toList()) {
                if (line.startsWith("  handreach ")) {
                    examples++;
                    Matcher option = Pattern.compile(" (--[a-z0-9-]+)").matcher(line);
                    while (option.find())
                        assertTrue(
                                Pattern.compile("(?m)^ +(-\\w, )?" + option.group(1) + "\\b")
                                        .matcher(help)
                                        .find(),
                                command + ": " + line);
                } else assertTrue(line.length() <= HELP_WIDTH, line);
            }
            int after = help.indexOf("Worked example");
            String rest = after < 0 ? "" : help.substring(help.indexOf('\n', after) + 1);
            for (String line : rest.lines().toList()) {
                if (line.isBlank()) break;
                assertTrue(
                        line.endsWith(":") || line.startsWith("  handreach " + command + " "), command + ": " + line);
            }
        }
        assertTrue(examples > 10, examples + " examples");
    }
}
