package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people who had only the pages and the program stumbled over, each as they typed it. */
class S23StrangerTest {
    private static final String SWEEP = "elevation-samples/invented-bench/quarter-wave-whip.s1p";

    @TempDir
    Path folder;

    private String plan(String... swaps) throws IOException {
        String plan =
                """
                title = "Stranger"
                [channel]
                frequency_mhz = 155.16
                [target]
                odds = 0.8
                [ground]
                tiles = "%s"
                [[radio]]
                name = "handheld"
                power_w = 5
                sensitivity_dbm = -119
                [[antenna]]
                name = "stub"
                control = true
                length_cm = 15
                mass_g = 20
                [[antenna]]
                name = "dipole"
                gain_dbd = 0
                [[loadout]]
                name = "stub at belt"
                antenna = "stub"
                carry = "belt"
                [[loadout]]
                name = "mast"
                antenna = "dipole"
                carry = "mast"
                [area]
                radius_km = 1
                [reach]
                bearing_step_deg = 90
                cell_m = 200
                model = "handheld"
                [relay]
                count = 1
                [[position]]
                name = "base"
                at = "36.2874, -84.2090"
                loadout = "mast"
                base = true
                [[position]]
                name = "crew"
                at = "36.2800, -84.2050"
                loadout = "stub at belt"
                """.formatted(Path.of("elevation-samples/forest-hills/tiles").toAbsolutePath());
        for (int i = 0; i < swaps.length; i += 2) {
            assertTrue(plan.contains(swaps[i]), swaps[i]);
            plan = plan.replace(swaps[i], swaps[i + 1]);
        }
        return Files.writeString(folder.resolve("plan.toml"), plan).toString();
    }

    private static CommandRun refused(String... words) {
        CommandRun run = CommandRun.of(words);
        assertEquals(2, run.code(), run.out());
        return run;
    }

    private static CommandRun answered(String... words) {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return run;
    }

    @ParameterizedTest
    @CsvSource({
        "'155,16', '\"155,16\" has a comma, a number with a point is expected: 155.16.'",
        "abc, '\"abc\" is not a number.'",
        "155160, It looks like kilohertz. Write it in megahertz.",
        "155160000, It looks like hertz. Write it in megahertz."
    })
    void aNumberOfAnOptionIsRefusedInPlainWords(String typed, String said) {
        CommandRun run = refused("pattern", "--radiator", "quarter-wave", "--frequency-mhz", typed);
        assertTrue(run.err().contains(said), run.err());
    }

    @Test
    void wordsAndCountsOfOptionsAreRefusedInPlainWords() {
        CommandRun word = refused("walk", "x", "--next", "--decision", "banana");
        assertTrue(word.err().contains("\"banana\", allowed is loadout, relay."), word.err());
        CommandRun count = refused("walk", "x", "--next", "--reports", "few");
        assertTrue(count.err().contains("\"few\" is not a whole number."), count.err());
    }

    @Test
    void aNameWithoutQuotesIsToldSo() {
        CommandRun run = refused("path", "--plan", "x", "--from", "Team", "1", "--to", "base");
        assertTrue(run.err().contains("\"1\" is one word too many. Put a name with blanks in quotes."), run.err());
        CommandRun mistyped = refused("raech", "x");
        assertTrue(mistyped.err().contains("there is no command \"raech\". Did you mean reach?"), mistyped.err());
    }

    /** Lines 3, 16, 29 and 30 of the plan, and what stands above in the file is told first. */
    @Test
    void faultsOfAPlanComeInTheOrderOfItsLinesAndNameTheKeyMeant() throws IOException {
        CommandRun run = refused(
                "reach",
                plan(
                        "frequency_mhz = 155.16", "frequency_mhz = 155160",
                        "length_cm = 15", "length = 15",
                        "gain_dbd = 0", "gain_db = 0",
                        "radius_km", "radius"));
        List<String> lines = run.err().strip().lines().toList();
        assertTrue(lines.get(0).endsWith("It looks like kilohertz. Write it in megahertz."), run.err());
        assertTrue(
                lines.stream()
                        .anyMatch(line -> line.contains("unknown key length in [antenna]. Did you mean length_cm?")),
                run.err());
        assertTrue(
                lines.stream().anyMatch(line -> line.contains("unknown key radius in [area]. Did you mean radius_km?")),
                run.err());
        assertFalse(run.err().contains("swr, gain_db,"), run.err());
        List<Integer> numbers = lines.stream()
                .map(line -> Integer.valueOf(line.replaceFirst("plan.toml line (\\d+): .*", "$1")))
                .toList();
        assertEquals(numbers.stream().sorted().toList(), numbers);
    }

    @ParameterizedTest
    @CsvSource({
        "control = true, control = yes, 'control is yes, true or false is expected. Write true.'",
        "carry = \"mast\", carry = mast, 'carry is mast, a text in quotes is expected. Write carry = \"mast\".'"
    })
    void aBareWordInAPlanIsToldAsSuch(String was, String typed, String said) throws IOException {
        CommandRun run = refused("reach", plan(was, typed));
        assertTrue(run.err().contains(said), run.err());
    }

    @Test
    void nobodyWearsAMast() throws IOException {
        CommandRun run = answered("reach", plan("tiles = ", "cover = \"forest\"\ntiles = "), "--out", folder + "/out");
        String row = run.out()
                .lines()
                .filter(line -> line.startsWith("mast  "))
                .findFirst()
                .orElseThrow();
        assertTrue(row.contains("not worn"), row);
        assertFalse(run.out().contains(" cm more"), run.out());
        String classes = Files.readString(folder.resolve("out/least-loadout.tif.aux.xml"));
        assertTrue(classes.indexOf("stub at belt") < classes.indexOf(">mast<"), classes);
        assertTrue(run.out().contains("Channel: 155.1600 MHz, fm-12.5"), run.out());
    }

    @Test
    void aSheetWithReadingsIsNotWrittenOver() throws IOException {
        Path sheet = folder.resolve("session.csv");
        String[] words = {"bench", "--template", sheet.toString(), "--antenna", "stub", "--antenna", "whip"};
        answered(words);
        answered(words);
        String filled = Files.readString(sheet).replaceFirst("received_level,,", "received_level,-42.5,");
        Files.writeString(sheet, filled);
        CommandRun run = refused(words);
        assertTrue(run.err().contains("is there already and holds more than a blank sheet."), run.err());
        assertEquals(filled, Files.readString(sheet));
    }

    /** The plan named the sheet that was still to be written, and the readings said nothing of the control. */
    @Test
    void aSheetIsWrittenForThePlanThatNamesItAndThePlansControlIsTaken() throws IOException {
        String plan = plan(
                "[[radio]]",
                "[bench]\nfile = \"session.csv\"\ncontrol = \"stub\"\nmount = \"in hand\"\n[[radio]]",
                "[[loadout]]\nname = \"stub",
                "[[antenna]]\nname = \"whip\"\n[[loadout]]\nname = \"stub");
        Path sheet = folder.resolve("session.csv");
        assertTrue(refused("reach", plan).err().contains("there is no such file beside the plan"));
        answered("bench", "--template", sheet.toString(), "--plan", plan);
        assertTrue(Files.readString(sheet).contains("whip,in hand,"), Files.readString(sheet));
        Files.writeString(
                sheet, "antenna,mount,trial 1 (dBm),trial 2 (dBm)\nstub,in hand,-45,-46\nwhip,in hand,-40,-42\n");
        assertTrue(refused("bench", sheet.toString()).err().contains("names no control"));
        String out = answered("bench", sheet.toString(), "--plan", plan).out();
        assertTrue(out.contains("strongest of one antenna is whip, +4.5 dB over stub"), out);
        Files.writeString(sheet, Files.readString(sheet).replace("whip,", "whipp,"));
        assertTrue(answered("bench", sheet.toString(), "--plan", plan)
                .err()
                .contains("\"whipp\" of the readings is no antenna of the plan, which has \"whip\"."));
    }

    /** Neither the sheet nor the readings need a name where the plan has one, nor a mounting where nobody says which. */
    @Test
    void aPlanThatNamesItsReadingsNeedsNoOtherName() throws IOException {
        String plan = plan(
                "[[radio]]",
                "[bench]\nfile = \"turns.csv\"\ncontrol = \"stub\"\n[[radio]]",
                "[[loadout]]\nname = \"stub",
                "[[antenna]]\nname = \"whip\"\n[[loadout]]\nname = \"stub");
        answered("bench", "--plan", plan, "--template");
        Path sheet = folder.resolve("turns.csv");
        assertTrue(Files.readString(sheet).contains("whip,in the hand,"), Files.readString(sheet));
        Files.writeString(sheet, "antenna,mount,trial 1 (dBm),trial 2 (dBm)\nstub,hand,-45,-46\nwhip,hand,-40,-42\n");
        assertTrue(answered("bench", "--plan", plan).out().contains("+4.5 dB over stub"));
    }

    @Test
    void aFileIsOfTheKindThatItsNameSays() throws IOException {
        CommandRun run = refused("card", plan(), "--out", folder + "/card.html");
        assertTrue(
                run.err().contains("would hold another kind of file than its name says. Name it card.pdf."), run.err());
        answered("card", plan(), "--paper", "Letter", "--out", folder + "/card.pdf");
        assertTrue(refused("match", "elevation-samples/invented-bench/bench.csv", "--channel-mhz", "155.16")
                .err()
                .contains("is a table with column heads, no sweep. Give readings to bench."));
    }

    @Test
    void whatAllModelsHaveInCommonIsSaidOnce() throws IOException {
        CommandRun run = answered(
                "path",
                "--plan",
                plan("tiles = ", "cover = \"woodland\"\ntiles = "),
                "--from",
                "base",
                "--to",
                "crew",
                "--model",
                "all");
        assertEquals(
                1,
                run.err()
                        .lines()
                        .filter(line -> line.contains("clutter heights"))
                        .count(),
                run.err());
    }

    @Test
    void feetAndInchesAreKeptTo() throws IOException {
        String out = answered("relay", plan("title", "units = \"imperial\"\ntitle", "odds = 0.8", "odds = 0.99"))
                .out();
        assertFalse(out.matches("(?s).*\\d (m|km|cm|g)\\b.*"), out);
        assertFalse(out.matches("(?s).*antenna, (cm|g)\\b.*"), out);
    }

    @Test
    void longNamesOfTilesKeepTheTableWithinTheTerminal() throws IOException {
        Path tile = Path.of("elevation-samples/forest-hills/tiles").toAbsolutePath();
        try (var files = Files.list(tile)) {
            Path first = files.filter(file -> file.toString().endsWith(".tif"))
                    .findFirst()
                    .orElseThrow();
            Files.copy(
                    first, folder.resolve("a-long-name-of-a-tile-with-date-and-datum-and-spacing-utm16-nad27-30m.tif"));
        }
        CommandRun run = answered("tiles", folder.toString());
        for (String line : run.out().lines().toList()) assertTrue(line.codePointCount(0, line.length()) <= 100, line);
    }

    /** A relay of a hundredth of a watt among parties that none of them reaches. */
    @Test
    void aRelayThatHelpsNobodyIsNotAdvised() throws IOException {
        String plan = plan(
                "count = 1", "count = 1\npower_w = 0.01",
                "36.2800, -84.2050", "36.2100, -84.1200",
                "radius_km = 1", "radius_km = 3");
        String out = answered("relay", plan).out();
        assertTrue(out.contains("No such relay helps"), out);
        assertFalse(out.contains("Where a relay should stand") || out.contains("recommended"), out);
        assertTrue(out.contains("Where a relay was tried"), out);
        JsonNode json =
                new ObjectMapper().readTree(answered("relay", plan, "--json").out());
        assertEquals(0, json.at("/sites/0/share").asDouble(-1));
        answered("card", plan, "--relay", "--out", folder + "/card.pdf");
        try (PDDocument card = Loader.loadPDF(folder.resolve("card.pdf").toFile())) {
            String text = new PDFTextStripper().getText(card).replaceAll("\\s+", " ");
            assertTrue(text.contains("No such relay helps"), text);
        }
    }
}
