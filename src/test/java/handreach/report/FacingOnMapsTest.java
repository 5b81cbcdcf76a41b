package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.report.draw.Svg;
import handreach.study.ReachAnswer;
import handreach.study.ReachOptions;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import handreach.study.Turning;
import handreach.units.Decibels;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Maps show which way people face and who should turn, and say nothing of it where the plan does not. */
class FacingOnMapsTest {
    private static final Path SAMPLE =
            Path.of("elevation-samples/invented-valley").toAbsolutePath();
    private static final String CAMP = "base = true\n";
    private static final String LAKE = "at = \"44.4629, -29.5700\"\n";
    private static final String NOW = "faces this way";
    private static final String BETTER = "better to face this way";

    @TempDir
    Path folder;

    private ReachAnswer answer(String camp, String lake) throws IOException {
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + SAMPLE.resolve("../invented-bench/bench.csv") + "'")
                .replace("radius_km = 8", "radius_km = 4.5")
                .replace("cell_m = 30", "cell_m = 200\nmodel = \"handheld\"")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 30")
                .replace(CAMP, CAMP + camp)
                .replace(LAKE, LAKE + lake);
        Path file = Files.writeString(folder.resolve("plan.toml"), plan);
        return ReachStudy.run(Scene.open(PlanFile.open(file)), ReachOptions.ofPlan(true), Progress.SILENT);
    }

    private static String map(ReachAnswer answer) {
        return Svg.file(new ReachMaps(answer).odds(0).figure());
    }

    @Test
    void whoShouldTurnIsShownWithWhatItBuys() throws IOException {
        ReachAnswer answer = answer("", "heading_deg = 250\n");
        Turning lake = Turning.all(answer).get(0);
        assertEquals("lake crew", lake.who());
        String map = map(answer);
        assertTrue(map.contains(NOW), "which way they face");
        assertTrue(map.contains(BETTER), "which way they should");
        assertTrue(map.contains("lake crew, turned +" + Decibels.text(lake.gainDb())), lake.words());
    }

    @Test
    void whoFacesRightOrStandsInTheMiddleIsToldNothingBetter() throws IOException {
        double right = Turning.all(answer("", "heading_deg = 250\n")).get(0).bestHeadingDeg();
        String map = map(answer("heading_deg = 10\n", "heading_deg = " + right + "\n"));
        assertTrue(map.contains(NOW), "which way they face");
        assertFalse(map.contains(BETTER), "nobody should turn");
        assertFalse(map.contains(", turned"), "nobody should turn");
    }

    @Test
    void aPlanThatSaysNothingHasMapsWithoutHeadings() throws IOException {
        String map = map(answer("", ""));
        assertTrue(map.contains("lake crew"), "the place is on the map");
        assertFalse(map.contains(NOW), "nobody is known to face any way");
    }
}
