package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bearings are true and say so; magnetic stands beside them where the plan states a declination, and nowhere else. */
class S22BearingsTest {
    @TempDir
    Path folder;

    private String plan(String top) throws IOException {
        Path sample = Path.of("elevation-samples/forest-hills").toAbsolutePath();
        String text = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace(
                        "../invented-bench",
                        sample.resolveSibling("invented-bench").toString())
                .replaceAll("(?s)\\[\\[walk]].*", "");
        return Files.writeString(folder.resolve("plan.toml"), top + "\n" + text).toString();
    }

    private static String said(String... args) {
        CommandRun run = CommandRun.of(args);
        assertEquals(0, run.code(), run.err());
        return (run.out() + run.err()).replaceAll("\\s+", " ");
    }

    /** By hand: spike camp lies 2.79 degrees east of the meridian of zone 16, tan 2.79 × sin 36.27 gives 1.65 degrees. */
    @Test
    void everyFaceWritesTheMagneticBearingOfADeclination() throws IOException {
        String plan = plan("declination_deg = -5");
        String path = said("path", "--plan", plan, "--from", "spike camp", "--to", "north spur");
        assertTrue(path.contains("bearing 022.0° true (027.0° magnetic)"), path);
        assertTrue(
                path.contains(
                        "Bearings are from true north; magnetic = true + 5.0° (declination as the plan states it);"
                                + " grid (UTM) = true − 1.7° at the first end."),
                path);
        String reach = said("reach", plan, "--no-area");
        assertTrue(reach.contains("from true north; magnetic = true + 5.0°"), reach);
        assertTrue(reach.contains("true bearing,"), reach);
        assertTrue(reach.contains("022° (027° M), 3.6 km"), reach);
    }

    @Test
    void withoutADeclinationNoMagneticFigureIsWritten() throws IOException {
        String plan = plan("");
        String all = said("path", "--plan", plan, "--from", "spike camp", "--to", "north spur")
                + said("reach", plan, "--no-area");
        assertTrue(all.contains("bearing 022.0° true,"), all);
        assertTrue(all.contains("022°, 3.6 km"), all);
        assertFalse(all.contains("magnetic"), all);
    }

    @Test
    void aDeclinationThatCannotBeIsRefused() throws IOException {
        CommandRun run = CommandRun.of("reach", plan("declination_deg = 120"), "--no-area");
        assertEquals(2, run.code());
        assertTrue(
                run.err().contains("line 1: declination_deg is 120, allowed is -90 to 90 degrees. East is positive."),
                run.err());
    }
}
