package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GroundWindowTest {
    private static final Path SAMPLES = Path.of("elevation-samples");

    @TempDir
    Path folder;

    @Test
    void itGivesTheSameBitsAsTheFolderAcrossASeam() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        GroundWindow window = GroundWindow.over(tiles, new Position(37.5, -105), 20_000);
        assertTrue(window.isLoaded());
        assertSame(tiles, window, 37.2, 37.8, -105.3, -104.7);
    }

    @Test
    void itGivesTheSameBitsInAGeoTiffOfArea() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("forest-hills/tiles"));
        GroundWindow window = GroundWindow.over(tiles, new Position(36.3, -84.2), 8_000);
        assertTrue(window.isLoaded());
        assertSame(tiles, window, 36.15, 36.45, -84.42, -84.07);
    }

    @Test
    void itAsksTheFolderWhereVoidsAndCoarserTilesAre() throws IOException {
        byte[] coarse =
                PaperHgt.bytes(10, 20, 1201, (lat, lon) -> 300 + 100 * Math.sin(80 * lat) - 50 * Math.cos(90 * lon));
        PaperHgt.write(folder, "N10E020.hgt", coarse);
        new PaperTiff(501, 501, (x, y) -> x > 200 && x < 260 && y > 100 ? -32768 : 700 + x % 13 + y % 7)
                .point()
                .at(20.5, 10.5, 1 / 3600.0, 1 / 3600.0)
                .write(folder.resolve("fine.tif"));
        TileFolder tiles = TileFolder.open(folder);
        GroundWindow window = GroundWindow.over(tiles, new Position(10.45, 20.55), 9_000);
        assertTrue(window.isLoaded());
        assertSame(tiles, window, 10.3, 10.6, 20.4, 20.7);
    }

    @Test
    void tilesThatDisagreeOnASharedPostAreLeftToTheFolder() throws IOException {
        PaperHgt.write(folder, "N10E020.hgt", PaperHgt.bytes(10, 20, 1201, (lat, lon) -> 300));
        PaperHgt.write(folder, "N10E021.hgt", PaperHgt.bytes(10, 21, 1201, (lat, lon) -> 310));
        TileFolder tiles = TileFolder.open(folder);
        assertSame(tiles, GroundWindow.over(tiles, new Position(10.5, 21), 3_000), 10.48, 10.52, 20.98, 21.02);
    }

    @Test
    void withoutAWindowItHandsQuestionsOn() throws IOException {
        TileFolder projected = TileFolder.open(SAMPLES.resolve("urban-coast/tiles"));
        GroundWindow window = GroundWindow.over(projected, new Position(-8, -34.87), 2_000);
        assertFalse(window.isLoaded());
        assertSame(projected, window, -8.05, -7.95, -34.92, -34.82);
        assertFalse(GroundWindow.over(projected, new Position(50, 8), 2_000).isLoaded());
        assertFalse(
                GroundWindow.over(projected, new Position(-8, 179.99), 20_000).isLoaded());
        Files.createDirectory(folder.resolve("x"));
    }

    /** Bit for bit, at random places, on rows and columns, and a hair beside them. */
    private static void assertSame(
            Elevation one, Elevation other, double south, double north, double west, double east) {
        Random random = new Random(20260112);
        int n = 20_000;
        double[] lat = new double[n];
        double[] lon = new double[n];
        for (int i = 0; i < n; i++) {
            lat[i] = south + random.nextDouble() * (north - south);
            lon[i] = west + random.nextDouble() * (east - west);
            if (i % 3 == 1) lat[i] = Math.rint(lat[i] * 1200) / 1200 + (i % 2) * 1e-12;
            if (i % 5 == 1) lon[i] = Math.rint(lon[i] * 10) / 10 - (i % 2) * 1e-13;
            if (i % 7 == 1) lon[i] = Math.rint(lon[i] * 1200) / 1200;
        }
        double[] h = new double[n];
        double[] g = new double[n];
        boolean[] v = new boolean[n];
        boolean[] w = new boolean[n];
        one.heights(lat, lon, n, h, v);
        other.heights(lat, lon, n, g, w);
        assertArrayEquals(v, w);
        assertArrayEquals(h, g, 0.0);
        for (int i = 0; i < n; i += 97)
            assertEquals(one.postSpacingM(lat[i], lon[i], 1), other.postSpacingM(lat[i], lon[i], 1), 0);
    }
}
