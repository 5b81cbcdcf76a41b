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
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented walk of a sample, from the log to the calibration that reach uses. */
class S07WalkTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills");

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
        for (String name : List.of("walk.txt", "walk.json", "walk-residuals.csv", "walk-odds.gpx", "calibration.toml"))
            assertTrue(Files.size(out.resolve(name)) > 100, name);
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
}
