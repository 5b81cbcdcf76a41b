package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.SourceText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged files in great number: a reader may refuse, or report and go void, but never hangs, never dies of anything else. How many
 * inputs is set by {@code -Dhandreach.fuzz=N} for each reader.
 */
@Timeout(value = 30, unit = TimeUnit.MINUTES)
class ReadersUnderNoiseTest {
    private static final int INPUTS = Integer.getInteger("handreach.fuzz", 500);
    private static final Position PLACE = new Position(46.95, 8.04);

    @TempDir
    Path folder;

    @Test
    void geoTiff() throws IOException {
        byte[][] seeds = {
            new PaperTiff(20, 14, (x, y) -> x * y)
                    .deflated()
                    .tiles(16)
                    .point()
                    .at(8, 47, 0.01, 0.01)
                    .bytes(),
            new PaperTiff(20, 14, (x, y) -> x * y)
                    .sample(32, 3)
                    .strips(5)
                    .bigEndian()
                    .at(8, 47, 0.01, 0.01)
                    .nodata("-9999")
                    .bytes(),
            new PaperTiff(20, 14, (x, y) -> x + y)
                    .bigTiff()
                    .overviewFirst()
                    .sample(64, 3)
                    .at(8, 47, 0.01, 0.01)
                    .bytes(),
        };
        Random random = new Random(20260113);
        Path file = folder.resolve("t.tif");
        for (int i = 0; i < INPUTS; i++) {
            Files.write(file, damaged(seeds[i % seeds.length], random));
            readTile(file);
        }
    }

    @Test
    void esriGrid() throws IOException {
        byte[] seed = ("ncols 5\nnrows 4\nxllcorner 8.0\nyllcorner 46.9\ncellsize 0.02\nNODATA_value -9999\n"
                        + "1 2 3 4 5\n6 7 8 9 10\n-9999 1.5 2e2 -3 4\n1 2 3 4 5\n")
                .getBytes(StandardCharsets.US_ASCII);
        Random random = new Random(20260114);
        Path file = folder.resolve("g.asc");
        for (int i = 0; i < INPUTS; i++) {
            Files.write(file, damaged(seed, random));
            readTile(file);
        }
    }

    @Test
    void packedHgt() throws IOException {
        byte[] flat = new byte[2 * 1201 * 1201];
        byte[] zip = PaperHgt.zipped("N46E008.hgt", flat);
        byte[] gzip = PaperHgt.gzipped(flat);
        Random random = new Random(20260115);
        for (int i = 0; i < INPUTS / 10; i++) {
            Path file = folder.resolve(i % 2 == 0 ? "N46E008.hgt.zip" : "N46E008.hgt.gz");
            Files.write(file, damaged(i % 2 == 0 ? zip : gzip, random));
            readTile(file);
        }
    }

    @Test
    void coverPolygons() {
        String seed =
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"cover\":\"woodland\"},"
                        + "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[8,46],[9,46],[9,47],[8,46]]]}}]}";
        Random random = new Random(20260116);
        for (int i = 0; i < INPUTS; i++) {
            String text =
                    new String(damaged(seed.getBytes(StandardCharsets.US_ASCII), random), StandardCharsets.ISO_8859_1);
            try {
                CoverPolygons.read(SourceText.of("p.geojson", text), LandCover.uniform(Cover.OPEN))
                        .coverAt(46.2, 8.5);
            } catch (InputFault fault) {
                assertFalse(fault.faults().isEmpty());
            }
        }
    }

    @Test
    void coverRaster() throws IOException {
        byte[] seed = new PaperTiff(20, 14, (x, y) -> 10 * (x % 9))
                .sample(8, 1)
                .deflated()
                .tiles(16)
                .at(8, 47, 0.01, 0.01)
                .bytes();
        Random random = new Random(20260117);
        Path file = folder.resolve("c.tif");
        for (int i = 0; i < INPUTS; i++) {
            Files.write(file, damaged(seed, random));
            try {
                CoverRaster.open(file, CoverLegend.WORLD_COVER, Cover.OPEN).coverAt(46.95, 8.04);
            } catch (InputFault fault) {
                assertFalse(fault.faults().isEmpty());
            }
        }
    }

    /** Some bytes changed, a piece cut out or doubled, or the end cut off. */
    private static byte[] damaged(byte[] seed, Random random) {
        byte[] data = seed.clone();
        int changes = 1 + random.nextInt(6);
        for (int k = 0; k < changes; k++) {
            int from = random.nextInt(4) == 0 ? 0 : Math.max(0, data.length - 400);
            int at = from + random.nextInt(data.length - from);
            data[at] = switch (random.nextInt(4)) {
                case 0 -> (byte) random.nextInt();
                case 1 -> (byte) (data[at] ^ 1 << random.nextInt(8));
                case 2 -> (byte) 0xFF;
                default -> (byte) (data[at] + 1);
            };
        }
        if (random.nextInt(5) == 0) return java.util.Arrays.copyOf(data, random.nextInt(data.length));
        if (random.nextInt(7) == 0) {
            int at = random.nextInt(data.length);
            int length = random.nextInt(Math.min(30, data.length - at) + 1);
            byte[] longer = new byte[data.length + length];
            System.arraycopy(data, 0, longer, 0, at + length);
            System.arraycopy(data, at, longer, at + length, data.length - at);
            return longer;
        }
        return data;
    }

    private static void readTile(Path file) {
        try {
            TileFolder tiles = TileFolder.open(file);
            GroundHeight reading = tiles.at(PLACE);
            if (!reading.isVoid()) assertTrue(Double.isFinite(reading.heightM().getAsDouble()));
            tiles.survey(share -> true);
        } catch (InputFault fault) {
            assertFalse(fault.getMessage().isBlank());
            assertFalse(fault.getMessage().contains("Exception in"), fault.getMessage());
        }
    }
}
