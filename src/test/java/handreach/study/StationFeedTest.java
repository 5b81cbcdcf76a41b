package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StationFeedTest {
    @TempDir
    Path folder;

    private String feedSource(String more) throws IOException {
        Path sample = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "");
        String station = """

                [[station]]
                name = "hut"
                at = "36.2620, -84.2050"
                power_w = 25
                sensitivity_dbm = -118
                gain_dbd = -1
                """;
        Path file = Files.writeString(folder.resolve("plan.toml"), plan + station + more);
        Scene scene = Scene.open(PlanFile.open(file));
        var line = StationStudy.end(scene, scene.plan().places().stations().get(0))
                .extras()
                .get(0);
        assertTrue(line.label().equals("feed line"), line.toString());
        return line.source();
    }

    /** What the station's line loses was called stated in the plan where it was our own default. */
    @Test
    void theLineOfAStationIsStatedOnlyWhereThePlanStatesIt() throws IOException {
        assertEquals("our suggestion, not in the plan", feedSource(""));
        assertEquals("stated in the plan", feedSource("feed_loss_db = 2\n"));
    }
}
