package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.UtmZone;
import handreach.input.InputFault;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Map pictures: every pixel stands where its file says, and a bad file is one clear line. */
class GroundPictureTest {
    private static final Runnable ON = () -> {};
    /** Colours are mixed in 256ths, and rounded down. */
    private static final double MIXED = 1.3;

    @TempDir
    private Path folder;

    /** Red tells the column, green the row, in steps of four: half a pixel is two. */
    private static int told(double column, double row) {
        return (int) column * 4 << 16 | (int) row * 4 << 8 | 0x40;
    }

    private Path file(String name) {
        return folder.resolve(name);
    }

    private static void assertTold(double column, double row, int argb, String where) {
        assertEquals(0xFF, argb >>> 24, where);
        assertEquals(4 * (column - 0.5), argb >> 16 & 0xFF, MIXED, where + ", column");
        assertEquals(4 * (row - 0.5), argb >> 8 & 0xFF, MIXED, where + ", row");
    }

    @Test
    void aPictureInDegreesStandsPixelByPixelWhereItsFileSays() throws IOException {
        Path tif = new PaperTiff(60, 50, (x, y) -> (double) told(x, y))
                .colours()
                .at(8, 46.5, 0.001, 0.001)
                .strips(7)
                .deflated()
                .tag(33432, "Invented Survey 2026")
                .write(file("map.tif"));
        GroundPicture picture = GroundPicture.open(tif);
        assertEquals("Invented Survey 2026", picture.attribution());
        assertTrue(picture.bounds().holds(46.47, 8.05));
        assertFalse(picture.bounds().holds(46.3, 8.05));
        PictureWindow window = new PictureWindow(46.51, 7.99, 0.001, 0.001, 120, 100);
        int[] argb = picture.argb(window, ON);
        for (int row = 0; row < 100; row++)
            for (int column = 0; column < 120; column++) {
                int x = column - 10;
                int y = row - 10;
                int seen = argb[row * 120 + column];
                boolean isInside = x >= 0 && y >= 0 && x < 60 && y < 50;
                if (isInside) assertTold(x + 0.5, y + 0.5, seen, x + ", " + y);
                else assertEquals(0, seen, x + ", " + y);
            }
    }

    @Test
    void aPictureOnAGridOfMetresStandsThereToo() throws IOException {
        Path tif = new PaperTiff(60, 60, (x, y) -> (double) told(x, y))
                .colours()
                .keys(1024, 1, 3072, 32632)
                .at(500_000, 5_150_000, 100, 100)
                .write(file("utm.tif"));
        GroundPicture picture = GroundPicture.open(tif);
        PictureWindow window = new PictureWindow(46.49, 9.005, 0.0003, 0.0004, 150, 150);
        int[] argb = picture.argb(window, ON);
        double[] xy = new double[2];
        int seen = 0;
        for (int i = 0; i < argb.length; i++) {
            // Oracle: the projection itself at every pixel, where the picture joins every sixteenth.
            new UtmZone(32, false).project(window.latitudeDeg(i / 150 + 0.5), window.longitudeDeg(i % 150 + 0.5), xy);
            double column = (xy[0] - 500_000) / 100;
            double row = (5_150_000 - xy[1]) / 100;
            if (column < 1 || row < 1 || column > 59 || row > 59) continue;
            assertTold(column, row, argb[i], column + ", " + row);
            seen++;
        }
        assertTrue(seen > 5000, seen + " pixels");
    }

    @Test
    void farOffEveryPixelOfTheWindowIsAMeanAndNotASpot() throws IOException {
        Path tif = new PaperTiff(800, 800, (x, y) -> (x + y) % 2 == 0 ? (double) 0xFFFFFF : 0.0)
                .colours()
                .at(8, 47, 0.001, 0.001)
                .strips(64)
                .write(file("fine.tif"));
        int[] argb = GroundPicture.open(tif).argb(new PictureWindow(46.9, 8.1, 0.002, 0.002, 200, 200), ON);
        for (int each : argb) assertEquals(0x80, each & 0xFF, MIXED);
    }

    @Test
    void tilesStandWhereTheSphericalProjectionPutsThem() {
        PaperMbTiles tiles = new PaperMbTiles()
                .say("attribution", "&copy; <a href=\"https://example.org\">Invented Survey</a>\n2026")
                .say("bounds", "7.9,46.2,8.6,46.8");
        for (int column = 4278; column <= 4284; column++)
            for (int row = 2890; row <= 2900; row++) {
                int own = (column % 16 * 16 + row % 16) & 0xFF;
                tiles.tile(13, column, row, (x, y) -> own << 16 | x / 2 << 8 | y / 2);
            }
        GroundPicture picture = GroundPicture.open(tiles.write(file("map.mbtiles")));
        assertEquals("\u00A9 Invented Survey 2026", picture.attribution());
        PictureWindow window = new PictureWindow(46.5, 8.1, 0.00012, 0.00017, 300, 300);
        int[] argb = picture.argb(window, ON);
        int seen = 0;
        for (int i = 0; i < argb.length; i++) {
            // By the formula of the tiling: x from the longitude, y from the inverse Gudermann function of the
            // latitude.
            double latitude = Math.toRadians(window.latitudeDeg(i / 300 + 0.5));
            double x = (window.longitudeDeg(i % 300 + 0.5) + 180) / 360 * 8192;
            double y = (1 - Math.log(Math.tan(latitude) + 1 / Math.cos(latitude)) / Math.PI) / 2 * 8192;
            double pxX = (x - Math.floor(x)) * 256;
            double pxY = (y - Math.floor(y)) * 256;
            if (pxX < 2 || pxY < 2 || pxX > 254 || pxY > 254) continue;
            int own = ((int) x % 16 * 16 + (int) y % 16) & 0xFF;
            assertEquals(own, argb[i] >> 16 & 0xFF, 1, "tile at " + x + ", " + y);
            assertEquals((pxX - 0.5) / 2, argb[i] >> 8 & 0xFF, 1.6, "column");
            assertEquals((pxY - 0.5) / 2, argb[i] & 0xFF, 1.6, "row");
            seen++;
        }
        assertTrue(seen > 50_000, seen + " pixels");
    }

    @Test
    void whereATileIsMissingOrDamagedTheOneAboveItStandsIn() {
        Path file = new PaperMbTiles()
                .tile(3, 4, 2, (x, y) -> 0x2040F0)
                .tile(5, 16, 10, (x, y) -> 0xF04020)
                .packed(5, 17, 10, "\u0089PNG damaged".getBytes(StandardCharsets.ISO_8859_1))
                .write(file("sparse.mbtiles"));
        GroundPicture picture = GroundPicture.open(file);
        int[] argb = picture.argb(new PictureWindow(55.7, 0.1, 0.05, 0.05, 700, 20), ON);
        assertEquals(0xFFF04020, argb[5 * 700 + 100]);
        assertEquals(0xFF2040F0, argb[5 * 700 + 300]);
        assertEquals(0xFF2040F0, argb[5 * 700 + 600]);
    }

    @Test
    void aBadFileIsOneLineThatSaysWhatToDo() throws IOException {
        byte[] webp = "RIFF....WEBPVP8 ".getBytes(StandardCharsets.US_ASCII);
        byte[] vector = {0x1F, (byte) 0x8B, 8, 0, 0, 0};
        Path cut = new PaperMbTiles().tile(5, 16, 10, (x, y) -> x * y).write(file("cut.mbtiles"));
        Files.write(cut, Arrays.copyOf(Files.readAllBytes(cut), 5000));
        String[][] rows = {
            {"nothing.tif", "there is no such file"},
            {Files.writeString(file("note.txt"), "x").toString(), "no map picture"},
            {Files.writeString(file("no.mbtiles"), "<html>not found</html>").toString(), "no SQLite file"},
            {cut.toString(), "cannot be read as MBTiles"},
            {new PaperMbTiles().write(file("empty.mbtiles")).toString(), "holds no tile"},
            {
                new PaperMbTiles()
                        .packed(5, 16, 10, webp)
                        .write(file("webp.mbtiles"))
                        .toString(),
                "WebP tiles"
            },
            {
                new PaperMbTiles()
                        .packed(5, 16, 10, vector)
                        .write(file("pbf.mbtiles"))
                        .toString(),
                "vector tiles"
            },
            {
                new PaperMbTiles()
                        .packed(5, 16, 10, PaperMbTiles.png(2100, (x, y) -> 0))
                        .write(file("wide.mbtiles"))
                        .toString(),
                "2100 by 2100 pixels"
            },
            {
                new PaperTiff(4, 4, (x, y) -> 7.0)
                        .at(8, 46, 1, 1)
                        .write(file("heights.tif"))
                        .toString(),
                "is no picture"
            },
            {
                new PaperTiff(4, 4, (x, y) -> 7.0)
                        .colours()
                        .nowhere()
                        .write(file("lost.tif"))
                        .toString(),
                "does not tell where it lies"
            },
            {Files.writeString(file("text.tif"), "what is this").toString(), "is not a TIFF file"}
        };
        for (String[] row : rows) {
            InputFault fault = assertThrows(InputFault.class, () -> GroundPicture.open(Path.of(row[0])), row[0]);
            assertTrue(fault.getMessage().contains(row[1]), fault.getMessage());
            assertFalse(fault.getMessage().contains("\n"), fault.getMessage());
            assertTrue(fault.getMessage().endsWith("."), fault.getMessage());
        }
    }

    @Test
    void aFileThatAsksForEndlessWorkIsStopped() throws Exception {
        Path file = file("trap.mbtiles");
        try (var database = java.sql.DriverManager.getConnection("jdbc:sqlite:" + file)) {
            database.createStatement().execute("CREATE TABLE metadata (name text, value text)");
            database.createStatement()
                    .execute("CREATE VIEW tiles AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n)"
                            + " SELECT i AS zoom_level, 0 AS tile_column, 0 AS tile_row, 'x' AS tile_data FROM n");
        }
        InputFault fault = assertThrows(InputFault.class, () -> GroundPicture.open(file));
        assertTrue(fault.getMessage().contains("cannot be read as MBTiles"), fault.getMessage());
    }

    @Test
    void aPictureIsToldFromATileByItsHead() throws IOException {
        assertTrue(GroundPicture.isOne(
                new PaperTiff(4, 4, (x, y) -> 7.0).colours().at(8, 46, 1, 1).write(file("colours.tif"))));
        assertFalse(GroundPicture.isOne(
                new PaperTiff(4, 4, (x, y) -> 7.0).at(8, 46, 1, 1).write(file("heights.tif"))));
        assertTrue(GroundPicture.isOne(file("any.mbtiles")));
        assertFalse(GroundPicture.isOne(file("N46E008.hgt")));
    }
}
