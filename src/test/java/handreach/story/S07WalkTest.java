package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.input.SourceText;
import handreach.plan.CalibrationFile;
import handreach.plan.PlanFile;
import handreach.reach.ReachLink;
import handreach.study.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented walk of a sample, from the log to the calibration that reach uses. */
class S07WalkTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills");

    /** Six shares and their sum, each rounded to a whole per cent: half of one each. */
    private static final double ROUNDED_WORTHS = 3.5;

    @TempDir
    Path folder;

    /** The sample's plan beside its files, with lines added and words replaced. */
    private Path plan(String more, String from, String to) throws IOException {
        try (Stream<Path> files = Files.list(SAMPLE)) {
            for (Path file : files.filter(Files::isRegularFile).toList())
                Files.copy(file, folder.resolve(file.getFileName()), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        }
        Path sample = SAMPLE.toAbsolutePath();
        String text = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = \"" + sample.resolve("tiles") + "\"")
                .replace(
                        "../invented-bench",
                        sample.resolveSibling("invented-bench").toString())
                .replace(from, to);
        Path plan = folder.resolve("plan.toml");
        Files.writeString(plan, text + more);
        return plan;
    }

    @Test
    void theSampleWalkIsComparedLearnedFromAndUsed() throws IOException {
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("walk", SAMPLE.toString(), "--json", "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        JsonNode node = new ObjectMapper().readTree(run.out());
        JsonNode copies = node.get("all").get("copies");
        int total = copies.get("kept").asInt()
                + copies.get("false_hopes").asInt()
                + copies.get("false_fears").asInt()
                + copies.get("rightly_doubted").asInt();
        assertEquals(node.get("reports").size(), total);
        assertTrue(total > 50, run.err());
        assertFalse(node.get("held_back").isNull());
        for (String name : List.of(
                "walk.html", "walk.txt", "walk.json", "walk-residuals.csv", "walk-odds.gpx", "calibration.toml"))
            assertTrue(Files.size(out.resolve(name)) > 100, name);
        String map = Files.readString(out.resolve("walk.html"));
        map = map.substring(map.indexOf(">Walked against predicted</title>"));
        for (String said : List.of("155.1600 MHz", "Called: spike camp, ", "Walked with ", "Made on ", "not a promise"))
            assertTrue(map.substring(0, map.indexOf("</svg>")).contains(said), said);
        assertEquals(
                total + 1, Files.readAllLines(out.resolve("walk-residuals.csv")).size());

        Files.copy(out.resolve("calibration.toml"), folder.resolve("learned.toml"));
        Path plan = plan("\n[calibration]\nfile = \"learned.toml\"\n", "", "");
        Scene before = Scene.open(PlanFile.open(SAMPLE));
        Scene after = Scene.open(PlanFile.open(plan));
        CalibrationFile learned = after.calibration().orElseThrow();
        assertTrue(after.warnings().stream().anyMatch(w -> w.startsWith("Calibrated by round the camp")));
        ReachLink plain = before.link(before.loadout("factory at face"));
        ReachLink shifted = after.link(after.loadout("factory at face"));
        double shift = learned.site().lossShiftDb(handreach.terrain.Cover.WOODLAND, "face", "face");
        assertEquals(
                plain.marginDb(120, 0, 0, handreach.terrain.Cover.WOODLAND) - shift,
                shifted.marginDb(120, 0, 0, handreach.terrain.Cover.WOODLAND),
                1e-9);
        assertEquals(learned.site().spreadDb(), shifted.spreadDb());
        assertTrue(shifted.commonDoubtDb() <= plain.commonDoubtDb());
    }

    /** Were calls without an answer logged? The plan says yes, nothing, or no; and a log from which most of them are gone. */
    @Test
    void silentCallsAreAskedForAndALogWithoutThemIsRefused() throws IOException {
        String logged = "silent_calls_logged = true";
        double sure = walked(false, "", "", true)
                .at("/learned/bias/standard_uncertainty_db")
                .asDouble();

        JsonNode unknown = walked(false, logged, "", true);
        assertEquals("unknown", unknown.at("/silent_calls/said").asText());
        assertTrue(
                unknown.at("/learned/bias/standard_uncertainty_db").asDouble() > sure + 0.5,
                unknown.get("learned").toString());
        assertTrue(unknown.get("warnings").toString().contains("Were calls without an answer logged?"));

        JsonNode leftOut = walked(false, logged, "silent_calls_logged = false", false);
        assertTrue(leftOut.get("learned").isNull() && leftOut.get("held_back").isNull());
        assertTrue(
                leftOut.get("refused").asText().contains("nothing is learned"),
                leftOut.get("refused").asText());

        JsonNode few = walked(true, logged, "", false);
        assertTrue(few.at("/silent_calls/too_few").asBoolean());
        assertTrue(
                few.get("refused").asText().contains("fewer than chance leaves"),
                few.get("refused").asText());

        JsonNode sworn = walked(true, "", "", true);
        assertTrue(sworn.get("refused").isNull());
        assertTrue(
                sworn.get("warnings").toString().contains("fewer than chance leaves"),
                sworn.get("warnings").toString());
    }

    /** The sample's walk with words of its plan replaced, with or without the calls that were not understood. */
    private JsonNode walked(boolean isShort, String from, String to, boolean learns) throws IOException {
        Path plan = plan("", from, to);
        if (isShort) {
            Path reports = folder.resolve("walk-reports.csv");
            Files.write(
                    reports,
                    Files.readAllLines(reports).stream()
                            .filter(line -> !line.matches(".*Z,([012],|,no,).*"))
                            .toList());
        }
        Path out = folder.resolve("out-" + learns + isShort + from.length() + to.length());
        CommandRun run = CommandRun.of("walk", plan.toString(), "--json", "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        assertEquals(learns, Files.exists(out.resolve("calibration.toml")));
        String text = Files.readString(out.resolve("walk.txt"));
        assertEquals(!learns, text.contains("nothing is") && text.contains("Walk again and log every call"), text);
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void aCalibrationReadsBackAsWritten() throws IOException {
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("walk", SAMPLE.toString(), "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("false hopes"), run.out());
        String text = Files.readString(out.resolve("calibration.toml"));
        CalibrationFile file = CalibrationFile.of(SourceText.of("calibration.toml", text));
        assertEquals(text, file.text());
        CommandRun broken = CommandRun.of(
                "reach", calibratedWith(text.replace("spread_db", "sprade_db")).toString());
        assertEquals(2, broken.code());
        assertTrue(broken.err().contains("unknown key sprade_db"), broken.err());
    }

    private Path calibratedWith(String calibration) throws IOException {
        Path plan = plan("\n[calibration]\nfile = \"learned.toml\"\n", "", "");
        Files.writeString(folder.resolve("learned.toml"), calibration);
        return plan;
    }

    /** Every walk from the base told of one report without a prediction, in words of a program. */
    @Test
    void aReportFromTheBaseItselfIsLeftOutInPlainWords() throws IOException {
        Path plan = plan("", "", "");
        Path reports = Files.list(folder)
                .filter(file -> String.valueOf(file.getFileName()).contains("report"))
                .findFirst()
                .orElseThrow();
        String log = Files.readString(reports);
        int first = log.indexOf("2026-05-04T08:39:13Z");
        Files.writeString(
                reports,
                log.substring(0, first) + "2026-05-04T08:30:00Z,3,,to-walker,quarter-wave with wire at face,,\n"
                        + log.substring(first));
        CommandRun run = CommandRun.of("walk", plan.toString());
        assertEquals(0, run.code(), run.err());
        String said = run.err().replaceAll("\\s+", " ");
        assertTrue(
                said.contains(
                        "the report of line 3 was made at the base or within 50 m of it, nearer than any path is reckoned,"
                                + " and is left out."),
                said);
        assertFalse(said.contains("both ends"), said);
        assertTrue(run.out().matches("(?s).* \\d+ of \\d+\\n.*"), run.out());
    }

    @Test
    void aLogInLocalTimeIsNamedAndNothingIsGuessed() throws IOException {
        CommandRun run = CommandRun.of(
                "walk",
                plan("", "clock_offset_s = 47", "clock_offset_s = 28847").toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("clock_offset_s = 47"), run.err());
    }

    @Test
    void anUnknownLoadoutInTheLogIsToldWithItsLine() throws IOException {
        Path plan = plan("", "", "");
        Path reports = folder.resolve("walk-reports.csv");
        Files.writeString(reports, Files.readString(reports).replaceFirst("factory at face", "factory at fcae"));
        CommandRun run = CommandRun.of("walk", plan.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("Did you mean factory at face?"), run.err());
        assertTrue(run.err().startsWith("walk-reports.csv line "), run.err());
    }

    @Test
    void aNextWalkIsProposedAlongAGivenTrack() throws IOException {
        Path out = folder.resolve("out");
        String track = SAMPLE.resolve("walk-track.gpx").toString();
        CommandRun run = CommandRun.of(
                "walk", SAMPLE.toString(), "--next", track, "--reports", "4", "--json", "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        JsonNode node = new ObjectMapper().readTree(run.out());
        assertEquals("loadout", node.get("decision").asText());
        assertEquals(4, node.get("stops").size());
        double lastM = -1;
        double worth = 0;
        for (JsonNode stop : node.get("stops")) {
            assertTrue(stop.get("along_m").asDouble() >= lastM);
            lastM = stop.get("along_m").asDouble();
            worth += stop.get("adds_db").asDouble();
            double odds = stop.get("odds_of_copy").asDouble();
            assertTrue(odds > 0.1 && odds < 0.9, "a certain outcome teaches little: " + odds);
        }
        assertEquals(node.get("value_db").asDouble(), worth, 1e-9);
        assertTrue(worth > 0 && worth < node.get("perfect_value_db").asDouble());
        for (JsonNode question : node.get("questions"))
            assertTrue(question.get("doubt_after_db").asDouble()
                    < question.get("doubt_before_db").asDouble());
        assertEquals(
                4,
                handreach.walk.GpxTrack.read(out.resolve("walk-next.gpx"))
                        .waypoints()
                        .size());
        int rows = Files.readAllLines(out.resolve("walk-next-odds.csv")).size() - 1;
        assertEquals(node.get("places").asInt() * 6, rows);
    }

    @Test
    void aNextWalkWithoutATrackTakesStraightLinesAndSaysSo() throws IOException {
        CommandRun run = CommandRun.of(
                "walk", SAMPLE.toString(), "--next", "--decision", "relay", "--instrument", "level", "--reports", "2");
        assertEquals(0, run.code(), run.err());
        assertTrue(run.err().contains("No track was given"), run.err());
        assertTrue(run.out().contains("spike camp with north spur"), run.out());
    }

    /** What is settled is said before anything else, and then nothing is proposed: not in words, not as waypoints. */
    @Test
    void aSettledQuestionIsCalledSettledFirstAndNoWalkIsProposed() throws IOException {
        String plan = SAMPLE.resolveSibling("forest-hills").toString();
        Path out = folder.resolve("out");
        CommandRun run = CommandRun.of("walk", plan, "--next", "--decision", "relay", "--out", out.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().lines().toList().get(2).startsWith("Settled: "), run.out());
        assertFalse(run.out().contains("Where to call"), run.out());
        assertFalse(run.out().contains("worth"), run.out());
        assertEquals(
                List.of(),
                handreach.walk.GpxTrack.read(out.resolve("walk-next.gpx")).waypoints());
        JsonNode node = new ObjectMapper().readTree(Files.readString(out.resolve("walk-next.json")));
        assertEquals("settled", node.get("outlook").asText());
    }

    @Test
    void callsStandInOrderOfWorthAndTheirWorthsAddUp() throws IOException {
        CommandRun run =
                CommandRun.of("walk", SAMPLE.resolveSibling("invented-valley").toString(), "--next");
        assertEquals(0, run.code(), run.err());
        String together = run.out().replaceAll("\\s+", " ").replaceAll(".*?worth ([0-9]+) % of what.*", "$1");
        List<Integer> worths = run.out()
                .lines()
                .dropWhile(line -> !line.startsWith("Where to call"))
                .takeWhile(line -> !line.startsWith("What is at stake"))
                .filter(line -> line.matches(" +[0-9].* [0-9]+ % +[0-9]+ %"))
                .map(line -> Integer.valueOf(line.replaceAll(".* ([0-9]+) %", "$1")))
                .toList();
        assertEquals(6, worths.size(), run.out());
        assertEquals(worths.stream().sorted(Comparator.reverseOrder()).toList(), worths, run.out());
        int sum = worths.stream().mapToInt(Integer::intValue).sum();
        assertEquals(Integer.parseInt(together), sum, ROUNDED_WORTHS, run.out());
    }

    @Test
    void aNextWalkAskedForWronglyIsToldSo() {
        CommandRun tracks = CommandRun.of("walk", SAMPLE.toString(), "some.gpx");
        assertEquals(2, tracks.code());
        assertTrue(tracks.err().contains("tracks are for --next"), tracks.err());
        CommandRun missing = CommandRun.of("walk", SAMPLE.toString(), "--next", "some.gpx");
        assertEquals(2, missing.code());
        assertTrue(missing.err().contains("some.gpx: there is no such file"), missing.err());
        CommandRun many = CommandRun.of("walk", SAMPLE.toString(), "--next", "--reports", "400");
        assertEquals(2, many.code());
        assertTrue(many.err().contains("allowed is 1 to 40"), many.err());
    }

    /** The walk stands in the plan's report, drawn and told, and nothing is fetched from elsewhere. */
    @Test
    void theReportShowsTheWalkOfThePlan() throws IOException {
        Path plan = plan("", "radius_km = 5", "radius_km = 1");
        Path report = folder.resolve("report.html");
        CommandRun run = CommandRun.of("report", plan.toString(), "--out", report.toString());
        assertEquals(0, run.code(), run.err());
        String html = Files.readString(report);
        for (String words : List.of(
                "Walked against predicted",
                "Where the walk differed",
                "Were the odds honest",
                "Farthest from the prediction",
                "What the walk teaches",
                "Brier score",
                "as predicted, no copy")) assertTrue(html.contains(words), words);
        assertFalse(html.contains("src=\"http") || html.contains("href=\"http"), "fetches something");
        Files.writeString(folder.resolve("walk-track.gpx"), "<gpx><trk>");
        CommandRun broken = CommandRun.of("report", plan.toString(), "--out", report.toString());
        assertEquals(2, broken.code());
        assertTrue(broken.err().contains("walk-track.gpx"), broken.err());
    }

    /** Relay uses what the walk taught and says so: margins of the same talks fall by the shift, ledgers stand beside them. */
    @Test
    void relayHopsHoldWhatTheWalkTaught() throws IOException {
        Path out = folder.resolve("out");
        assertEquals(
                0,
                CommandRun.of("walk", SAMPLE.toString(), "--out", out.toString())
                        .code());
        Files.copy(out.resolve("calibration.toml"), folder.resolve("learned.toml"));
        JsonNode before = relay(plan("", "cell_m = 30", "cell_m = 300"));
        JsonNode after = relay(plan("\n[calibration]\nfile = \"learned.toml\"\n", "cell_m = 30", "cell_m = 300"));
        assertTrue(before.get("calibration").isNull());
        assertEquals("round the camp", after.get("calibration").get("source").asText());
        int talks = before.get("direct").get("talks").size();
        assertTrue(talks > 0);
        for (int t = 0; t < talks; t++) {
            JsonNode plain = before.get("direct").get("talks").get(t);
            JsonNode shifted = after.get("direct").get("talks").get(t);
            double shift = shifted.get("site_shift_db").asDouble();
            assertTrue(shift != 0);
            assertEquals(
                    plain.get("margin_db").asDouble() - shift,
                    shifted.get("margin_db").asDouble(),
                    1e-9);
        }
        for (JsonNode hop : after.get("sites").get(0).get("hops")) {
            JsonNode ledger = hop.get("ledger");
            assertTrue(ledger.get("there").get("lines").size() > 5);
            assertTrue(ledger.get("back").get("lines").size() > 5);
        }
    }

    private JsonNode relay(Path plan) throws IOException {
        CommandRun run = CommandRun.of("relay", plan.toString(), "--json");
        assertEquals(0, run.code(), run.err());
        assertEquals(
                Files.readString(plan).contains("[calibration]"), run.err().contains("Calibrated by round the camp"));
        return new ObjectMapper().readTree(run.out());
    }

    /** Hostile and broken tracks: one line that says what to do, exit 2, nothing half done. */
    @Test
    void hostileAndBrokenTracksAreEachToldInOneLine() throws IOException {
        Path plan = plan("", "", "");
        Path track = folder.resolve("walk-track.gpx");
        String whole = Files.readString(track);
        String bomb =
                "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY a \"ha\"><!ENTITY b \"&a;&a;&a;\">]><gpx>&b;</gpx>";
        oneLine(plan, bomb, "document type declaration");
        oneLine(plan, "<!DOCTYPE gpx SYSTEM \"file:///etc/hostname\"><gpx/>", "document type declaration");
        oneLine(plan, whole.substring(0, whole.length() / 2), "is not whole GPX");
        oneLine(plan, "", "is not whole GPX");
        oneLine(plan, whole.replaceAll("<time>[^<]*</time>", ""), "have no time");
        oneLine(plan, whole.replaceAll("lat=(\"[^\"]*\") lon=(\"[^\"]*\")", "lat=$2 lon=$1"), "look exchanged");
        oneLine(plan, "<html><body>please log in</body></html>", "<gpx> is expected");
        oneLine(plan, "<gpx>" + "<a>".repeat(1000) + "</a>".repeat(1000) + "</gpx>", "deep");
        oneLine(plan, "<gpx>" + " ".repeat(70 << 20) + "</gpx>", "at most 64 MiB");
        Files.writeString(track, whole);
        Path zone = plan("", "clock_offset_s = 47", "clock_offset_s = 7247");
        oneLine(zone, whole, "clock_offset_s = 47");
    }

    private void oneLine(Path plan, String track, String words) throws IOException {
        Files.writeString(folder.resolve("walk-track.gpx"), track);
        CommandRun run = CommandRun.of(
                "walk", plan.toString(), "--out", folder.resolve("none").toString());
        assertEquals(2, run.code(), words);
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains(words), run.err());
        assertFalse(Files.exists(folder.resolve("none")));
    }
}
