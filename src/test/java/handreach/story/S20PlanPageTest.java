package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of the plan file has the keys and the words that the program reads: asked of the program itself, which names them in its refusals. */
class S20PlanPageTest {
    private static final List<String> SECTIONS = List.of(
            "[channel]",
            "[target]",
            "[ground]",
            "[bench]",
            "[[radio]]",
            "[[power_step]]",
            "[[antenna]]",
            "[[delta]]",
            "[anchor]",
            "[[loadout]]",
            "[[carry_loss]]",
            "[area]",
            "[[position]]",
            "[[route]]",
            "[[sector]]",
            "[[station]]",
            "[reach]",
            "[decide]",
            "[relay]",
            "[assign]",
            "[[walk]]",
            "[calibration]",
            "[doubt]");
    private static final Pattern CODE = Pattern.compile("`([^`]+)`");
    private static final Pattern KNOWN = Pattern.compile("unknown key zzz in (.+?)\\..*Known here: (.+)\\.");
    private static final Pattern ALLOWED = Pattern.compile("line \\d+: (\\w+) is \"zzz\", allowed is (.+?)\\.(?: |$)");

    @TempDir
    Path folder;

    private List<String> said(String plan) throws IOException {
        Path file = Files.writeString(folder.resolve("plan.toml"), plan);
        CommandRun run = CommandRun.of("reach", file.toString());
        assertEquals(2, run.code(), run.err());
        return run.err().lines().toList();
    }

    /** Keys of every section as the program names them to whoever mistypes one. */
    private Map<String, Set<String>> known() throws IOException {
        StringBuilder plan = new StringBuilder("zzz = 1\n");
        for (String section : SECTIONS) plan.append(section).append("\nzzz = 1\n");
        Map<String, Set<String>> known = new LinkedHashMap<>();
        for (String line : said(plan.toString())) {
            Matcher found = KNOWN.matcher(line);
            if (found.find())
                known.put(
                        found.group(1),
                        new LinkedHashSet<>(Arrays.asList(found.group(2).split(", "))));
        }
        assertEquals(SECTIONS.size() + 1, known.size(), known.keySet().toString());
        return known;
    }

    /** The page by its heads, each with its text. */
    private static Map<String, String> page() throws IOException {
        Map<String, String> parts = new LinkedHashMap<>();
        String head = "";
        for (String line : Files.readAllLines(Path.of("docs/plan-file.md"))) {
            if (line.startsWith("## ")) head = line;
            parts.merge(head, line + "\n", String::concat);
        }
        return parts;
    }

    private static String told(Map<String, String> page, String section) {
        String name = section.equals("the plan") ? "Top of the file" : section;
        return page.entrySet().stream()
                .filter(part -> part.getKey().contains(name))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElseThrow(() -> new AssertionError(section));
    }

    private static Set<String> words(String text) {
        Set<String> words = new LinkedHashSet<>();
        for (Matcher code = CODE.matcher(text); code.find(); )
            words.add(code.group(1).split(" ")[0].replaceAll("[\\[\\]\"]", ""));
        return words;
    }

    @Test
    void everyKeyThatIsReadIsOnThePage() throws IOException {
        Map<String, String> page = page();
        List<String> missing = new ArrayList<>();
        known().forEach((section, keys) -> {
            Set<String> told = words(told(page, section));
            for (String key : keys)
                if (!told.contains(key) && !(section.equals("the plan") && isSection(key)))
                    missing.add(section + " " + key);
        });
        assertEquals(List.of(), missing);
    }

    private static boolean isSection(String key) {
        return SECTIONS.stream()
                .anyMatch(section -> section.replaceAll("[\\[\\]]", "").equals(key));
    }

    @Test
    void everyKeyOfATableOnThePageIsRead() throws IOException {
        Map<String, String> page = page();
        List<String> strange = new ArrayList<>();
        known().forEach((section, keys) -> told(page, section)
                .lines()
                .filter(line -> line.startsWith("| `"))
                .flatMap(line -> words(line.split("\\|")[1]).stream())
                .filter(key -> !keys.contains(key))
                .forEach(key -> strange.add(section + " " + key)));
        assertEquals(List.of(), strange);
    }

    /** {@code worldcover} stood on the page; the program read {@code world-cover}. */
    @Test
    void theWordsOfEveryKeyAreOnThePage() throws IOException {
        Map<String, String> page = page();
        StringBuilder plan = new StringBuilder();
        Map<String, Set<String>> known = known();
        known.get("the plan").stream()
                .filter(key -> !isSection(key))
                .forEach(key -> plan.append(key).append(" = \"zzz\"\n"));
        Map<Integer, String> sectionOfLine = new LinkedHashMap<>();
        for (String section : SECTIONS) {
            plan.append(section).append('\n');
            for (String key : known.get(section.replace("[[", "[").replace("]]", "]")))
                plan.append(key).append(" = \"zzz\"\n");
        }
        String section = "the plan";
        int number = 0;
        for (String line : plan.toString().lines().toList()) {
            if (line.startsWith("[")) section = line.replace("[[", "[").replace("]]", "]");
            sectionOfLine.put(++number, section);
        }
        int seen = 0;
        List<String> missing = new ArrayList<>();
        for (String line : said(plan.toString())) {
            Matcher found = ALLOWED.matcher(line);
            if (!found.find() || found.group(2).contains(" to ")) continue;
            seen++;
            int at = Integer.parseInt(line.replaceAll(".*?line (\\d+):.*", "$1"));
            Set<String> told = words(told(page, sectionOfLine.get(at)));
            // Words that another section has told are pointed to.
            if (told.contains("loadout") && found.group(1).equals("carry")) told.addAll(words(told(page, "[loadout]")));
            for (String word : found.group(2).split(", "))
                if (!told.contains(word) && !found.group(1).equals("model"))
                    missing.add(sectionOfLine.get(at) + " " + found.group(1) + " " + word);
        }
        assertTrue(seen >= 15, "" + seen);
        assertEquals(List.of(), missing);
    }
}
