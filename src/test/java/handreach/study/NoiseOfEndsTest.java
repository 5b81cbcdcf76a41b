package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.budget.SiteNoise;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.PlanFile;
import handreach.propagation.NoiseEnvironment;
import handreach.units.Frequency;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Noise by surroundings, as measured, and another at each end. */
class NoiseOfEndsTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();

    @TempDir
    Path folder;

    private Scene scene(String was, String is) throws IOException {
        String text = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = \"" + SAMPLE.resolve("tiles") + "\"")
                .replace(
                        "../invented-bench",
                        SAMPLE.resolveSibling("invented-bench").toString());
        text = text.substring(0, text.indexOf("[[walk]]"));
        assertTrue(text.contains(was), was);
        return Scene.open(PlanFile.open(Files.writeString(folder.resolve("plan.toml"), text.replace(was, is))));
    }

    private static double back(Scene scene) {
        Loadout base = scene.loadouts().get(3);
        return scene.budget(base, scene.loadouts().get(0)).marginBackDb(140, 0, 0);
    }

    /** What the table says, measured, is the same noise. */
    @Test
    void aFloorThatAgreesWithTheTableChangesNothing() throws IOException {
        double table =
                SiteNoise.of(NoiseEnvironment.RURAL, new Frequency(155.16)).medianDb();
        String floor = String.format(Locale.ROOT, "%.9f", table - 173.97522 + 40);
        Scene measured = scene("noise = \"rural\"", "noise_floor_dbm = " + floor + "\nnoise_bandwidth_khz = 10");
        assertEquals(back(scene("noise", "noise")), back(measured), 1e-4);
    }

    @Test
    void aLoadoutInTownHearsTheTownAndTheOtherEndDoesNot() throws IOException {
        String entry = "name = \"quarter-wave with wire at face\"";
        Scene quiet = scene(entry, entry);
        Scene town = scene(entry, entry + "\nnoise = \"city\"");
        Loadout base = town.loadouts().get(3);
        Loadout other = town.loadouts().get(0);
        assertEquals(
                quiet.budget(base, other).marginThereDb(140, 0, 0),
                town.budget(base, other).marginThereDb(140, 0, 0),
                1e-12);
        assertTrue(back(quiet) - back(town) > 1, back(quiet) + " and " + back(town));
    }

    @Test
    void aFloorWithoutItsBandwidthIsRefused() {
        InputFault fault = assertThrows(InputFault.class, () -> scene("noise = \"rural\"", "noise_floor_uv = 0.2"));
        assertTrue(
                fault.getMessage().contains("noise_floor_uv means nothing without the bandwidth it was read in"),
                fault.getMessage());
    }
}
