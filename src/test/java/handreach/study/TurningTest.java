package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.budget.LineEnd;
import handreach.budget.LineKey;
import handreach.input.InputFault;
import handreach.plan.PlanFile;
import handreach.reach.LoadoutReach;
import handreach.reach.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which way people face, from the plan to path, reach and relay. In the sample, lake crew lies 247.4° from valley camp. */
class TurningTest {
    private static final Path SAMPLE =
            Path.of("elevation-samples/invented-valley").toAbsolutePath();
    private static final String CAMP = "base = true\n";
    private static final String LAKE = "at = \"44.4629, -29.5700\"\n";
    private static final double PATH_DEG = 247.4;
    /** The azimuth is taken to a tenth of a degree. */
    private static final double ROUNDING_DB = 0.01;

    @TempDir
    Path folder;

    private Scene scene(String camp, String lake) throws IOException {
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + SAMPLE.resolve("../invented-bench/bench.csv") + "'")
                .replace("radius_km = 8", "radius_km = 2")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 30\nmodel = \"handheld\"")
                .replace(CAMP, CAMP + camp)
                .replace(LAKE, LAKE + lake);
        Path file = folder.resolve("plan.toml");
        Files.writeString(file, plan);
        return Scene.open(PlanFile.open(file));
    }

    private static PathAnswer path(Scene scene) {
        return PathStudy.between(
                scene,
                scene.position("valley camp").at(),
                scene.loadout("factory at face"),
                scene.position("lake crew").at(),
                scene.loadout("factory at face"),
                List.of(scene.model()));
    }

    private static double heading(PathAnswer path, LineEnd end) {
        return path.ledger().orElseThrow().there().lines().stream()
                .filter(line -> line.end() == end && line.key() == LineKey.HEADING)
                .findFirst()
                .orElseThrow()
                .valueDb();
    }

    /** By hand: 3 dB · cos(ψ − 5°) at the face on VHF. */
    private static double byHand(double headingDeg, double pathDeg) {
        return 3 * Math.cos(Math.toRadians(pathDeg - headingDeg - 5));
    }

    @Test
    void aPathCountsTheWayThatBothEndsFace() throws IOException {
        PathAnswer path = path(scene("heading_deg = 100\n", "towards = \"valley camp\"\n"));
        assertEquals(byHand(100, PATH_DEG), heading(path, LineEnd.SENDER), ROUNDING_DB);
        assertEquals(byHand(0, 0), heading(path, LineEnd.RECEIVER), ROUNDING_DB);
        assertEquals(2, path.turnings().size());
        Turning camp = path.turnings().get(0);
        assertEquals(PATH_DEG - 5, camp.bestHeadingDeg(), 0.1);
        assertEquals(3 - byHand(100, PATH_DEG), camp.gainDb(), ROUNDING_DB);
        assertTrue(camp.words().contains("valley camp faces 100°"), camp.words());
        assertTrue(camp.words().contains("turning to 242° true gains"), camp.words());
        Turning lake = path.turnings().get(1);
        assertTrue(lake.words().contains("no other heading is better"), lake.words());
    }

    @Test
    void whoeverTurnsAsToldGainsWhatWasTold() throws IOException {
        PathAnswer away = path(scene("heading_deg = 100\n", ""));
        Turning told = away.turnings().get(0);
        PathAnswer turned = path(scene("heading_deg = " + told.bestHeadingDeg() + "\n", ""));
        assertEquals(
                told.gainDb(),
                turned.ledger().orElseThrow().there().marginDb()
                        - away.ledger().orElseThrow().there().marginDb(),
                1e-9);
    }

    @Test
    void aPlanThatSaysNothingKeepsTheMeanOverHeadings() throws IOException {
        PathAnswer path = path(scene("", ""));
        assertEquals(0, heading(path, LineEnd.SENDER), 0);
        assertEquals(0, heading(path, LineEnd.RECEIVER), 0);
        assertTrue(path.turnings().isEmpty());
    }

    @Test
    void theRoseReachesFartherInFront() throws IOException {
        ReachOptions wish = ReachOptions.ofPlan(false);
        ReachAnswer any = ReachStudy.run(scene("", ""), wish, Progress.SILENT);
        ReachAnswer north = ReachStudy.run(scene("heading_deg = 355\n", ""), wish, Progress.SILENT);
        ReachAnswer south = ReachStudy.run(scene("heading_deg = 175\n", ""), wish, Progress.SILENT);
        double gainedM = 0;
        for (int k = 0; k < any.loadouts().size(); k++) {
            LoadoutReach one = north.loadouts().get(k);
            LoadoutReach other = south.loadouts().get(k);
            assertTrue(one.radial(0).continuousM() >= other.radial(0).continuousM());
            assertTrue(one.radial(6).continuousM() <= other.radial(6).continuousM());
            for (int i : new int[] {10, 11, 0, 1, 2})
                gainedM += one.radial(i).continuousM() - other.radial(i).continuousM();
            for (int i : new int[] {4, 5, 6, 7, 8})
                gainedM += other.radial(i).continuousM() - one.radial(i).continuousM();
        }
        assertTrue(gainedM > 0, gainedM + " m");
        assertEquals(1, Turning.all(north).size());
        assertTrue(Turning.all(any).isEmpty());
    }

    @Test
    void everyFaultOfAHeadingIsTold() {
        for (String[] wrong : new String[][] {
            {"heading_deg = 361\n", "allowed is"},
            {"heading_deg = 10\ntowards = \"lake crew\"\n", "both say which way"},
            {"towards = \"valley camp\"\n", "itself"},
            {"towards = \"lake crow\"\n", "lake crew"}
        }) {
            InputFault fault = assertThrows(InputFault.class, () -> scene(wrong[0], ""));
            assertTrue(fault.getMessage().contains(wrong[1]), fault.getMessage());
        }
    }
}
