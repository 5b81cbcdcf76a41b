package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The largest plan that is said to fit does fit, with every file written; a larger one is refused before any is. The memory is that of
 * {@code -Dhandreach.heap=512m}, by default less, so that the maps are small.
 */
class S17SmallMachineTest {
    private static final String HEAP = "-Xmx" + System.getProperty("handreach.heap", "160m");
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills");
    private static final Pattern FITS = Pattern.compile("take at most ([\\d.]+) km");

    @TempDir
    Path folder;

    private String plan(String radiusKm) throws IOException {
        String text = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("cell_m = 30", "cell_m = 5")
                .replace("radius_km = 5", "radius_km = " + radiusKm);
        for (String named : List.of("tiles", "../invented-bench/bench.csv", "walk-track.gpx", "walk-reports.csv")) {
            Path there = SAMPLE.resolve(named).toAbsolutePath().normalize();
            text = text.replace('"' + named + '"', '"' + there.toString().replace('\\', '/') + '"');
        }
        return Files.writeString(folder.resolve("plan.toml"), text).toString();
    }

    private List<String> run(String command, String plan) throws IOException, InterruptedException {
        return S16SmallFilesTest.child(
                "handreach.Handreach",
                HEAP,
                command,
                plan,
                "--out",
                folder.resolve(command).toString());
    }

    @Test
    void whatIsSaidToFitFits() throws IOException, InterruptedException {
        List<String> refused = run("reach", plan("12"));
        assertEquals(1, refused.size(), refused.toString());
        assertTrue(refused.get(0).startsWith("plan.toml line "), refused.get(0));
        assertTrue(refused.get(0).contains("The memory given to the program, "), refused.get(0));
        assertFalse(Files.exists(folder.resolve("reach")));
        Matcher fits = FITS.matcher(refused.get(0));
        assertTrue(fits.find(), refused.get(0));
        String plan = plan(fits.group(1));
        for (String command : List.of("reach", "report", "card")) {
            List<String> said = run(command, plan);
            assertTrue(said.get(said.size() - 1).startsWith("Written: "), said.toString());
        }
    }
}
