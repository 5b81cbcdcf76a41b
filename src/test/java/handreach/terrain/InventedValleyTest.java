package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.ZipFile;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;

class InventedValleyTest {
    private static final Path TILE = Path.of("elevation-samples/invented-valley/tiles/N44W030.hgt.zip");

    /** Every 29th row is made anew and held against the bundled tile. */
    @Test
    void theBundledTileIsWhatTheGeneratorMakes() throws IOException {
        try (ZipFile zip = new ZipFile(TILE.toFile());
                DataInputStream in = new DataInputStream(
                        new java.io.BufferedInputStream(zip.getInputStream(zip.getEntry("N44W030.hgt"))))) {
            for (int row = 0; row < 3601; row++) {
                boolean isHeld = row % 29 == 0 && row > 800 && row < 2800;
                for (int column = 0; column < 3601; column++) {
                    short stored = in.readShort();
                    if (isHeld && stored != InventedValley.postM(row, column))
                        assertEquals(InventedValley.postM(row, column), stored, "row " + row + ", column " + column);
                }
            }
            assertEquals(-1, in.read());
        }
    }

    @Test
    void theWholeIslandReadsAsItsTileAndWritesItAgain() throws IOException {
        InventedValley valley = InventedValley.build();
        TileFolder tiles = TileFolder.open(TILE);
        for (double lat = 44.31; lat < 44.7; lat += 0.0373)
            for (double lon = -29.9; lon < -29.1; lon += 0.0391)
                assertEquals(TileFolderTest.bulk(tiles, lat, lon), TileFolderTest.bulk(valley, lat, lon), 0);
        assertTrue(Double.isNaN(TileFolderTest.bulk(valley, 46, -29.5)));
        assertEquals(tiles.postSpacingM(44.5, -29.5, 0), valley.postSpacingM(44.5, -29.5, 0), 0.2);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        valley.writeTile(out);
        try (ZipInputStream again = new ZipInputStream(new ByteArrayInputStream(out.toByteArray()));
                ZipFile bundled = new ZipFile(TILE.toFile());
                InputStream then = bundled.getInputStream(bundled.getEntry("N44W030.hgt"))) {
            assertEquals("N44W030.hgt", again.getNextEntry().getName());
            assertEquals(sha256(then.readAllBytes()), sha256(again.readAllBytes()));
        }
    }

    @Test
    void thePlacesOfItsGuideAreThere() {
        TileFolder tiles = TileFolder.open(TILE);
        assertEquals(238, TileFolderTest.height(tiles, 44.4629, -29.5831), 0.5, "lake");
        assertEquals(971, TileFolderTest.height(tiles, 44.5640, -29.3766), 1, "pass");
        assertEquals(0, TileFolderTest.height(tiles, 44.1, -29.9), "sea");
        for (double t = -0.003; t <= 0.003; t += 0.0005)
            assertEquals(238, TileFolderTest.height(tiles, 44.4629 + t * 0.4, -29.5831 + t), 0.01, "the lake is flat");
        assertTrue(TileFolderTest.height(tiles, 44.5640 + 0.02, -29.3766 - 0.02) > 1000, "a range beside the pass");
        assertEquals(0, tiles.survey(share -> true).get(0).voidPosts());
        assertTrue(tiles.at(new Position(44.5, -29.5)).heightM().isPresent());
    }

    @Test
    void theBundledTilesHaveTheirChecksums() throws IOException, NoSuchAlgorithmException {
        Path samples = Path.of("elevation-samples");
        List<String> lines = Files.readAllLines(samples.resolve("SHA256SUMS"));
        long bytes = 0;
        for (String line : lines) {
            Path file = samples.resolve(line.substring(66));
            assertEquals(line.substring(0, 64), sha256(Files.readAllBytes(file)), file.toString());
            bytes += Files.size(file);
        }
        assertEquals(7, lines.size()); // five tiles and two tracks
        assertTrue(bytes < 8L << 20);
    }

    private static String sha256(byte[] data) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(data));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
