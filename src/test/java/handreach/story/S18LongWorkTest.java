package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.SourceText;
import handreach.profile.ProfileFile;
import handreach.propagation.Atmosphere;
import handreach.propagation.Climate;
import handreach.propagation.Ground;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.terrain.TileFolder;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;

/** Work that is long by right says so before it starts, and can be stopped. */
class S18LongWorkTest {
    private static final Path TILES = Path.of("elevation-samples/high-mountains/tiles");

    private static class SaidFirst extends RuntimeException {
        private static final long serialVersionUID = 1L;

        SaidFirst(String message) {
            super(message);
        }
    }

    /** 200 km at 3 GHz took 157 s without a word. */
    @Test
    void aMarchOfMinutesSaysSoBeforeItStarts() {
        StringBuilder rows = new StringBuilder("distance_km,height_m\n");
        for (int i = 0; i <= 2000; i++)
            rows.append(i / 10.0).append(',').append(500 + 3 * (i % 7)).append('\n');
        var profile = ProfileFile.read(SourceText.of("p.csv", rows.toString()));
        PathConditions conditions = new PathConditions(
                new Frequency(3000),
                Polarization.VERTICAL,
                new Ground(15, 0.005),
                Atmosphere.ofGradient(45, 325),
                new Climate(50, 50, 45, 500, 500));
        var model = LossModels.sayingFirst(LossModels.FULL_WAVE, cost -> {
            throw new SaidFirst(cost);
        });
        SaidFirst said = assertThrows(SaidFirst.class, () -> model.loss(profile, new Terminals(1.5, 1.5), conditions));
        assertTrue(said.getMessage().matches("Marching the field along this path takes some \\d{2,} s on one core.*"));
    }

    @Test
    void aShortMarchSaysNothing() {
        CommandRun run = CommandRun.of(
                "path",
                "--plan",
                "elevation-samples/forest-hills",
                "--from",
                "spike camp",
                "--to",
                "north spur",
                "--model",
                "full-wave");
        assertEquals(0, run.code(), run.err());
        assertTrue(!run.err().contains("Marching"), run.err());
    }

    @Test
    void readingAllTilesTellsItsShareAndStopsWhenAsked() {
        TileFolder tiles = TileFolder.open(TILES);
        List<Double> shares = new ArrayList<>();
        tiles.survey(share -> {
            shares.add(share);
            return true;
        });
        assertTrue(shares.size() > 1, shares.toString());
        assertEquals(1, shares.get(shares.size() - 1));
        assertThrows(CancellationException.class, () -> tiles.survey(share -> false));
    }
}
