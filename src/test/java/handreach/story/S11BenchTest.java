package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A bench session with a field meter, from the readings to the terminal, the report and a plan: the same answer on all. */
class S11BenchTest {
    private static final Path VALLEY = Path.of("elevation-samples/invented-valley");
    private static final String HEADER = "antenna,mount,quantity,value,unit,frequency_mhz,trial,note\n";
    /** Figures are printed to two digits. */
    private static final double PRINTED = 0.005;

    @TempDir
    Path folder;

    /** Five turns; by hand whip over helical 10 log of 2 = 3.01 dB in each, stub 1.76 dB below. */
    private Path session(String declaration, boolean withLevels) throws IOException {
        StringBuilder text = new StringBuilder(declaration).append(HEADER);
        double[] turn = {20, 21, 19, 20.5, 20.2};
        for (int t = 1; t <= turn.length; t++) {
            double wobble = 1 + 0.01 * (t % 3);
            row(text, "factory helical", "field_meter", turn[t - 1], "uA", t);
            row(text, "quarter-wave whip", "field_meter", 2 * turn[t - 1] * wobble, "uA", t);
            row(text, "stub", "field_meter", turn[t - 1] / 1.5 / wobble, "uA", t);
            if (!withLevels) continue;
            row(text, "factory helical", "received_level", -42 - 0.1 * (t % 2), "dBm", t);
            row(text, "quarter-wave whip", "received_level", -39 + 0.1 * (t % 3), "dBm", t);
            row(text, "stub", "received_level", -44 + 0.1 * (t % 4), "dBm", t);
        }
        text.append(
                "quarter-wave whip,in hand,swr,1.37,:1,155,,\nquarter-wave whip,in hand,return_loss,17.5,dB,150,,\n");
        Path file = folder.resolve("bench.csv");
        Files.writeString(file, text);
        return file;
    }

    private static void row(StringBuilder text, String antenna, String quantity, double value, String unit, int trial) {
        text.append(
                String.format(Locale.ROOT, "%s,in hand,%s,%.3f,%s,155,%d,%n", antenna, quantity, value, unit, trial));
    }

    @Test
    void decibelsOfADeclaredLawStandOnEveryFace() throws IOException {
        for (String law :
                new String[] {"detector_law = square", "meter_calibration = 5:-40, 10:-37, 20:-34, 40:-31, 80:-28"}) {
            Path file = session("# " + law + "\n", true);
            Path report = folder.resolve("bench.html");
            CommandRun run = CommandRun.of(
                    "bench", file.toString(), "--control", "factory helical", "--report", report.toString());
            assertEquals(0, run.code(), run.err());
            JsonNode node = new ObjectMapper()
                    .readTree(CommandRun.of("bench", file.toString(), "--control", "factory helical", "--json")
                            .out());
            JsonNode whip = node.at("/field_meter/0/deltas/0");
            assertEquals("quarter-wave whip", whip.get("antenna").asText());
            assertEquals(3.05, whip.get("delta_db").asDouble(), 0.06);
            assertTrue(whip.get("told_apart").asBoolean());
            String html = Files.readString(report).replaceAll("</?span[^>]*>", "");
            String meter = run.out().substring(run.out().indexOf("Field meter, in hand"));
            String delta =
                    String.format(Locale.ROOT, " %+.1f ", whip.get("delta_db").asDouble());
            String interval = String.format(
                    Locale.ROOT,
                    "%+.1f to %+.1f",
                    whip.at("/interval_95_db/0").asDouble(),
                    whip.at("/interval_95_db/1").asDouble());
            assertTrue(meter.contains(delta) && meter.contains(interval), meter);
            assertTrue(html.contains(delta.strip()) && html.contains(interval), "the report says the same");
            assertFalse(run.out().contains("between, dB"), run.out());
            assertFalse(node.at("/field_meter/0/ranks/1").has("bracket_db"));
            String kendall = String.format(
                    Locale.ROOT,
                    "Kendall %+.2f",
                    node.at("/field_meter/0/agreement/kendall").asDouble());
            assertTrue(
                    plain(run.out()).contains("Kendall +1.0") && plain(html).contains("Kendall +1.0"), kendall + meter);
            assertTrue(html.contains("Field meter, in hand, 155 MHz"));
            assertTrue(html.contains("41.2"), "the median of the whip, microamps");
            assertTrue(html.contains("Match explains a delta") && html.contains("1.37") && html.contains("17.5"));
        }
    }

    /** What should be known of the readings, and which antennas are told apart, come before the figures and not behind them. */
    @Test
    void notesAndVerdictsComeFirst() throws IOException {
        Path file = session("", true);
        Files.writeString(file, Files.readString(file) + "quarter-wave whip,in hand,return_loss,-17.5,dB,151,,\n");
        Path report = folder.resolve("early.html");
        CommandRun run =
                CommandRun.of("bench", file.toString(), "--control", "factory helical", "--report", report.toString());
        assertEquals(0, run.code(), run.err());
        String html = Files.readString(report);
        int notes = html.indexOf("A negative return loss was taken");
        assertTrue(notes > 0 && notes < html.indexOf("over control, dB"), "notes at " + notes);
        assertTrue(html.indexOf(">verdict<") < html.indexOf("over control, dB"), "the verdict stands beside the name");
    }

    private static String plain(String text) {
        return text.replace('\u2212', '-');
    }

    @Test
    void withoutALawThereIsTheSpanAndTheRankOnly() throws IOException {
        Path file = session("", true);
        CommandRun run = CommandRun.of("bench", file.toString(), "--control", "factory helical");
        assertTrue(run.out().contains("between, dB over control"), run.out());
        assertTrue(run.out().contains("Microamps only rank"), run.out());
        assertTrue(plain(run.out()).contains("Kendall +1.0"), run.out());
    }

    /** u of the law: 3.1 dB of difference, half of the way to the other law is 1.5 dB, over √3 0.9 dB. */
    @Test
    void aPlanTakesMicroampsWhereThereIsNoLevel() throws IOException {
        session("# detector_law = square\n", false);
        Path plan = plan();
        CommandRun run = CommandRun.of("path", "--plan", plan.toString(), "--from", "camp", "--to", "pass", "--json");
        assertEquals(0, run.code(), run.err());
        String out = run.out();
        assertTrue(out.contains("bench, field meter, declared law square: current follows power, 5 readings"), out);
        assertTrue(out.contains("doubt of the law 0.8") || out.contains("doubt of the law 0.9"), out);
    }

    @Test
    void microampsWithoutALawAreNoDelta() throws IOException {
        session("", false);
        CommandRun run = CommandRun.of("path", "--plan", plan().toString(), "--from", "camp", "--to", "pass");
        assertEquals(2, run.code());
        assertTrue(
                run.err().contains("nor field_meter readings with a detector_law or meter_calibration declared"),
                run.err());
    }

    /** The means lie 68.05 dB apart: one clear line instead of a defect. */
    @Test
    void aDifferenceThatNoAntennaMakesIsOneClearLine() throws IOException {
        StringBuilder text = new StringBuilder(HEADER);
        for (int t = 1; t <= 4; t++) {
            row(text, "factory helical", "received_level", -42 - 0.1 * (t % 2), "dBm", t);
            row(text, "quarter-wave whip", "received_level", -110 - 0.2 * (t % 2), "dBm", t);
        }
        Files.writeString(folder.resolve("bench.csv"), text);
        CommandRun run = CommandRun.of("path", "--plan", plan().toString(), "--from", "camp", "--to", "pass");
        assertEquals(2, run.code(), run.err());
        assertTrue(
                run.err().contains("\"quarter-wave whip\" in mounting \"in hand\" lies -68.05 dB over the control"),
                run.err());
        assertFalse(run.err().contains("defect"), run.err());
    }

    /** The valley with two antennas and two loadouts, read on the bench beside it. */
    private Path plan() throws IOException {
        String text = Files.readString(VALLEY.resolve("plan.toml"));
        String head = text.substring(0, text.indexOf("[[antenna]]"))
                .replace(
                        "tiles = \"tiles\"",
                        "tiles = \"" + VALLEY.toAbsolutePath().resolve("tiles") + "\"")
                .replace("../invented-bench/bench.csv", "bench.csv");
        String kit = """
                [[antenna]]
                name = "factory helical"
                control = true
                radiator = "short-helical"
                length_cm = 15

                [[antenna]]
                name = "quarter-wave whip"
                radiator = "quarter-wave"
                length_cm = 46

                [[loadout]]
                name = "helical"
                antenna = "factory helical"
                carry = "face"

                [[loadout]]
                name = "whip"
                antenna = "quarter-wave whip"
                carry = "face"

                [area]
                centre = "camp"
                radius_km = 8

                [[position]]
                name = "camp"
                at = "44.4773, -29.5217"
                loadout = "whip"
                base = true

                [[position]]
                name = "pass"
                at = "44.5640, -29.3766"
                loadout = "helical"

                [reach]
                from = "camp"
                """;
        Path plan = folder.resolve("plan.toml");
        Files.writeString(plan, head + kit);
        return plan;
    }

    @Test
    void aPlanSaysWhatTheDeltasOfTheBoxComeToInTheHand() {
        String bench = "elevation-samples/invented-bench/bench.csv";
        CommandRun run = CommandRun.of("bench", bench, "--control", "factory helical", "--plan", VALLEY.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("expected in"), run.out());
        assertTrue(run.out().contains("no measurement. A delta read in the"), run.out());
        CommandRun alone = CommandRun.of("bench", bench, "--control", "factory helical");
        assertFalse(alone.out().contains("expected in"), alone.out());
    }

    /** Three trials give no verdict, and then antennas on opposite sides of the control were listed as alike. */
    @Test
    void withoutAVerdictNothingIsCalledAlike(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(
                folder.resolve("b.csv"),
                "antenna,mount,trial 1 (dBm),trial 2 (dBm),trial 3 (dBm)\nstub,box,-45,-45.2,-44.9\nwhip,box,-40,-40.1,-40.2\n"
                        + "mini,box,-50,-50.3,-49.9\n");
        String out =
                CommandRun.of("bench", file.toString(), "--control", "stub").out();
        assertTrue(out.contains("No verdict from fewer than four trials."), out);
        assertFalse(out.contains("Cannot be told from one another"), out);
    }

    /** Every cell of the frequency was empty, and nothing said so. */
    @Test
    void aSheetWithoutFrequencySaysSoAndCommasPartMountings(@TempDir Path folder) throws IOException {
        String sheet = folder.resolve("s.csv").toString();
        CommandRun run = CommandRun.of("bench", "--template", sheet, "--mount", "in hand, on box,windowsill");
        assertEquals(0, run.code(), run.err());
        assertTrue(run.err().contains("The column frequency_mhz is empty"), run.err());
        assertTrue(run.err().contains("--frequency-mhz"), run.err());
        String rows = Files.readString(folder.resolve("s.csv"));
        for (String mount : new String[] {",in hand,", ",on box,", ",windowsill,"})
            assertTrue(rows.contains(mount), rows);
        String said = run.err().replaceAll("\\s+", " ");
        assertTrue(said.contains("\"windowsill\" is not a known word"), said);
        assertTrue(said.contains("body (body, worn, belt, hip,"), said);
        assertFalse(said.contains("\"on box\""), said);
        CommandRun told =
                CommandRun.of("bench", "--template", folder.resolve("t.csv").toString(), "--frequency-mhz", "155.16");
        assertEquals("", told.err());
    }

    /** The sheet was refused for a walk that nobody had walked yet, or for tiles that it does not need. */
    @Test
    void aSheetNeedsNoneOfTheFilesThatThePlanNames(@TempDir Path folder) throws IOException {
        String plan = Files.readString(VALLEY.resolve("plan.toml")).replace("../invented-bench/bench.csv", "later.csv")
                + "\n[[walk]]\nname = \"first\"\ntrack = \"t.gpx\"\nreports = \"r.csv\"\n"
                + "base = \"valley camp\"\nloadout = \"factory at face\"\n";
        Files.writeString(folder.resolve("plan.toml"), plan);
        CommandRun run = CommandRun.of("bench", "--template", "--plan", folder.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(Files.readString(folder.resolve("later.csv")).contains("155.16"));
        CommandRun reach = CommandRun.of("reach", folder.toString());
        assertEquals(2, reach.code());
        assertTrue(reach.err().contains("t.gpx"), reach.err());
    }

    /** Three turns gave no verdict, and beside it stood that two would settle it. */
    @Test
    void fewerTrialsThanAVerdictNeedsSettleNothing(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(
                folder.resolve("b.csv"),
                "antenna,mount,trial 1 (dBm),trial 2 (dBm),trial 3 (dBm)\nstub,box,-45,-45.2,-44.9\nwhip,box,-40,-40.1,-40.2\n");
        String[] command = {"bench", file.toString(), "--control", "stub", "--settle-db", "20"};
        String out = CommandRun.of(command).out();
        assertTrue(
                out.lines()
                        .anyMatch(
                                line -> line.startsWith("whip") && line.strip().endsWith(" 4")),
                out);
        assertTrue(out.replaceAll("\\s+", " ").contains("rounded means may differ by other than the delta"), out);
    }

    /** A plan whose [bench] calls the control by another name than its [[antenna]], with readings of both candidates. */
    private Path namedOtherwise(Path folder, String control) throws IOException {
        session("", true);
        Path plan = plan();
        Files.writeString(
                plan,
                Files.readString(plan)
                        .replaceFirst("control = \"factory helical\"", "control = \"" + control + "\"")
                        .replace("name = \"factory helical\"", "name = \"factory\"")
                        .replace("antenna = \"factory helical\"", "antenna = \"factory\""));
        return plan;
    }

    /** Rows stood for both names: one antenna would have been read twice and compared with itself. */
    @Test
    void theControlIsOneAntennaUnderWhicheverNameTheBenchHasIt() throws IOException {
        Path plan = namedOtherwise(folder, "factory helical");
        Path sheet = folder.resolve("new.csv");
        CommandRun blank = CommandRun.of("bench", "--template", sheet.toString(), "--plan", plan.toString());
        assertEquals(0, blank.code(), blank.err());
        String rows = Files.readString(sheet);
        assertTrue(rows.contains("\r\nfactory helical,"), rows);
        assertFalse(rows.contains("\r\nfactory,"), rows);
        CommandRun run = CommandRun.of("bench", "--plan", plan.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().lines().anyMatch(line -> line.matches("factory +control .*")), run.out());
    }

    /** Reach refused the misspelt control, and bench took that of the sheet and turned the typo round. */
    @Test
    void aMisspeltControlIsRefusedAlikeByReachAndBenchWithItsLine() throws IOException {
        Path plan = namedOtherwise(folder, "factroy helical");
        Path bench = folder.resolve("bench.csv");
        Files.writeString(bench, "# control = factory helical\n" + Files.readString(bench));
        int line = Files.readAllLines(plan).indexOf("control = \"factroy helical\"") + 1;
        assertTrue(line > 0, Files.readString(plan));
        CommandRun reach = CommandRun.of("reach", plan.toString());
        CommandRun run = CommandRun.of("bench", "--plan", plan.toString());
        assertEquals(2, run.code(), run.out());
        assertEquals(reach.err(), run.err());
        assertTrue(
                run.err()
                        .startsWith("plan.toml line " + line
                                + ": control is \"factroy helical\", but bench.csv has no reading of it. Did you mean factory"
                                + " helical? Antennas read: "),
                run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        CommandRun asked = CommandRun.of("bench", "--plan", plan.toString(), "--control", "factory helical");
        assertEquals(0, asked.code(), asked.err());
        assertFalse(asked.err().contains("Did you mean factroy"), asked.err());
    }

    /** The headline told to take an interval that no table showed. */
    @Test
    void theIntervalThatTheHeadlineTakesStandsInTheTable() throws IOException {
        Path file = session("", true);
        String out = CommandRun.of("bench", file.toString(), "--control", "factory helical")
                .out();
        String said = out.replaceAll("\\s+", " ");
        java.util.regex.Matcher take = java.util.regex.Pattern.compile("take (\\S+ to \\S+) dB, the interval")
                .matcher(said);
        assertTrue(take.find(), said);
        assertTrue(out.contains("for all"), out);
        assertTrue(
                out.lines().anyMatch(line -> line.startsWith("quarter-wave whip") && line.contains(take.group(1))),
                out);
    }

    /** Of one mounting the pair was said to be alike; of the other, where it was told apart, nothing was. */
    @Test
    void thatAllCanBeToldFromOneAnotherIsSaidToo() throws IOException {
        Path file = session("", true);
        String out = CommandRun.of("bench", file.toString(), "--control", "factory helical")
                .out()
                .replaceAll("\\s+", " ");
        assertFalse(out.contains("Cannot be told from one another"), out);
        assertTrue(out.contains("All of them are told apart, from one another and from the control."), out);
    }

    /** Reach, card and relay take the folder of a plan; bench called it no file. */
    @Test
    void theFolderOfAPlanIsAPlan() throws IOException {
        Path plan = namedOtherwise(folder, "factory helical");
        String whole = CommandRun.of("bench", "--plan", plan.toString()).out();
        for (Path word : new Path[] {folder, plan}) {
            CommandRun run = CommandRun.of("bench", word.toString());
            assertEquals(0, run.code(), run.err());
            assertEquals(whole, run.out());
        }
        CommandRun twice = CommandRun.of("bench", folder.toString(), "--plan", plan.toString());
        assertEquals(2, twice.code());
        assertTrue(twice.err().contains("a plan as a word of its own"), twice.err());
    }
}
