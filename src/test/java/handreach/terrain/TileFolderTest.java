package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.Memory;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class TileFolderTest {
    private static final Path SAMPLES = Path.of("elevation-samples");
    private static final double ROUNDING_M = 0.0011;

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvFileSource(resources = "heights-samples.csv", useHeadersInDisplayName = true)
    void heightsAgreeWithAnotherReader(String file, double lat, double lon, double heightM) {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve(file));
        GroundHeight reading = tiles.at(new Position(lat, lon));
        assertEquals(heightM, reading.heightM().orElseThrow(), ROUNDING_M);
        assertEquals(Path.of(file).getFileName().toString(), reading.tile());
        assertEquals(reading.heightM().getAsDouble(), bulk(tiles, lat, lon), 0);
    }

    /** By hand: posts of 100, 200, 300 and 500 m; a quarter east and half south of the first is 187.5 + (350 − 125)/2. */
    @Test
    void betweenFourPostsTheHeightIsBilinear() throws IOException {
        double step = 1 / 1200.0;
        byte[] tile = PaperHgt.bytes(10, 20, PaperHgt.SIDE, (lat, lon) -> {
            boolean isNorth = lat > 10.5 + step / 2;
            boolean isWest = lon < 20.5 + step / 2;
            return isNorth ? (isWest ? 100 : 200) : isWest ? 300 : 500;
        });
        PaperHgt.write(folder, "N10E020.hgt", tile);
        double lat = 10.5 + step / 2;
        double lon = 20.5 + step / 4;
        double north = 100 + (200 - 100) * 0.25;
        double south = 300 + (500 - 300) * 0.25;
        assertEquals((north + south) / 2, height(TileFolder.open(folder), lat, lon), 1e-6);
    }

    @Test
    void thePostsOfAWholeTileLieOnWholeDegrees() throws IOException {
        PaperHgt.write(folder, "s01w078.hgt", PaperHgt.bytes(-1, -78, PaperHgt.SIDE, TileFolderTest::slope));
        TileFolder tiles = TileFolder.open(folder);
        for (double[] corner : new double[][] {{0, -78}, {-1, -78}, {0, -77}, {-1, -77}, {-0.5, -77.25}})
            assertEquals(Math.rint(slope(corner[0], corner[1])), height(tiles, corner[0], corner[1]), 1e-6);
        assertTrue(tiles.at(new Position(0.001, -77.5)).isVoid());
        assertTrue(tiles.at(new Position(-0.5, -76.999)).isVoid());
    }

    @ParameterizedTest
    @ValueSource(strings = {"N37W105.hgt", "n37w105.hgt", "N37W105.SRTMGL1.hgt", "N37W105.HGT"})
    void namesAreReadInTheirUsualForms(String name) throws IOException {
        byte[] tile = PaperHgt.bytes(37, -105, PaperHgt.SIDE, TileFolderTest::slope);
        PaperHgt.write(folder, name, tile);
        PaperHgt.write(
                folder,
                name.replace("105", "106") + ".gz",
                PaperHgt.gzipped(PaperHgt.bytes(37, -106, PaperHgt.SIDE, TileFolderTest::slope)));
        PaperHgt.write(folder, name.replace("105", "107") + ".zip", PaperHgt.zipped(name.replace("105", "107"), tile));
        PaperHgt.write(folder, "download.zip", PaperHgt.zipped(name.replace("105", "108"), tile));
        PaperHgt.write(folder, "notes.txt", new byte[] {1});
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(List.of(), tiles.warnings());
        assertEquals(4, tiles.tiles().size());
        for (double lon : new double[] {-104.3, -105.3, -106.3, -107.3})
            assertFalse(tiles.at(new Position(37.7, lon)).isVoid());
        assertEquals(height(tiles, 37.7, -104.3), height(tiles, 37.7, -106.3), 0);
    }

    /** Two real tiles share their column at 105 W; here also with the eastern half as a tile of its own. */
    @Test
    void aSharedColumnIsCrossedWithoutAStep() {
        TileFolder tiles = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        for (double lat = 37.0001; lat < 38; lat += 0.0137) {
            double west = height(tiles, lat, -105 - 1e-9);
            double on = height(tiles, lat, -105);
            double east = height(tiles, lat, -105 + 1e-9);
            assertEquals(on, west, 1e-3);
            assertEquals(on, east, 1e-3);
        }
    }

    @Test
    void theFinestTileWinsWhereTilesOverlap() throws IOException {
        PaperHgt.write(folder, "N10E020.hgt", PaperHgt.bytes(10, 20, 1201, (lat, lon) -> 300));
        new PaperTiff(101, 101, (x, y) -> 700)
                .point()
                .at(20.5, 10.5, 1 / 3600.0, 1 / 3600.0)
                .write(folder.resolve("a-fine.tif"));
        new PaperTiff(11, 11, (x, y) -> 50).point().at(20.2, 10.5, 0.01, 0.01).write(folder.resolve("a-coarse.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertEquals("a-fine.tif", tiles.at(new Position(10.49, 20.51)).tile());
        assertEquals(700, height(tiles, 10.49, 20.51));
        assertEquals(300, height(tiles, 10.49, 20.6));
        assertEquals(300, height(tiles, 10.45, 20.25), "finer than the third");
        double[] lat = {10.49, 10.49, 10.49, 10.49};
        double[] lon = {20.45, 20.51, 20.52, 20.6};
        double[] h = new double[4];
        tiles.heights(lat, lon, 4, h, new boolean[4]);
        assertEquals(300, h[0]);
        assertEquals(700, h[1]);
        assertEquals(700, h[2]);
        assertEquals(300, h[3]);
        assertEquals(30.4, tiles.postSpacingM(10.49, 20.51, 99), 0.2);
        assertEquals(91.2, tiles.postSpacingM(10.49, 20.6, 99), 0.6);
        assertEquals(99, tiles.postSpacingM(12, 20.6, 99));
    }

    @Test
    void whereTheFinestIsVoidACoarserTileAnswers() throws IOException {
        PaperHgt.write(folder, "N10E020.hgt", PaperHgt.bytes(10, 20, 1201, (lat, lon) -> 300));
        new PaperTiff(101, 101, (x, y) -> x > 50 ? -32768 : 700)
                .point()
                .at(20.5, 10.5, 1 / 3600.0, 1 / 3600.0)
                .write(folder.resolve("a-fine.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(700, height(tiles, 10.49, 20.505));
        assertEquals("N10E020.hgt", tiles.at(new Position(10.49, 20.52)).tile());
        assertEquals(300, height(tiles, 10.49, 20.52));
    }

    /** As the global one-arc-second product comes: the south row and east column of each tile belong to the neighbour. */
    @Test
    void tilesWithoutSharedPostsMeetWithoutAStep() throws IOException {
        double step = 1 / 3600.0;
        PaperTiff whole = new PaperTiff(41, 41, (x, y) -> wavy(x, y))
                .sample(32, 3)
                .point()
                .at(20, 50, step, step);
        Path other = Files.createDirectory(folder.resolve("whole"));
        whole.write(other.resolve("whole.tif"));
        Path parts = Files.createDirectory(folder.resolve("parts"));
        for (int px = 0; px < 2; px++)
            for (int py = 0; py < 2; py++) {
                int x0 = 20 * px;
                int y0 = 20 * py;
                new PaperTiff(px == 0 ? 20 : 21, py == 0 ? 20 : 21, (x, y) -> wavy(x + x0, y + y0))
                        .sample(32, 3)
                        .point()
                        .at(20 + x0 * step, 50 - y0 * step, step, step)
                        .write(parts.resolve("part-" + px + py + ".tif"));
            }
        TileFolder one = TileFolder.open(other);
        TileFolder four = TileFolder.open(parts);
        Random random = new Random(20260107);
        for (int i = 0; i < 5000; i++) {
            double lat = 50 - (i % 2 == 0 ? 18.5 + 2 * random.nextDouble() : 40 * random.nextDouble()) * step;
            double lon = 20 + (i % 3 == 0 ? 18.5 + 2 * random.nextDouble() : 40 * random.nextDouble()) * step;
            assertEquals(height(one, lat, lon), height(four, lat, lon), 1e-6);
            assertEquals(height(one, lat, lon), bulk(four, lat, lon), 1e-6);
        }
        assertTrue(four.at(new Position(50 + step / 2, 20.001)).isVoid(), "outside there is no neighbour");
    }

    @Test
    void tilesOfDifferentSpacingMeetWithoutAHole() throws IOException {
        double fine = 1 / 3600.0;
        double coarse = 1 / 1200.0;
        new PaperTiff(180, 301, (x, y) -> 1000 + 2 * x)
                .sample(32, 3)
                .point()
                .at(42.95, 40.55, fine, fine)
                .write(folder.resolve("left.tif"));
        new PaperTiff(61, 101, (x, y) -> 1360 + 6 * x)
                .sample(32, 3)
                .point()
                .at(43, 40.55, coarse, coarse)
                .write(folder.resolve("right.tif"));
        TileFolder tiles = TileFolder.open(folder);
        for (double lon = 42.99; lon < 43.01; lon += fine / 7)
            assertEquals(1000 + 2 * (lon - 42.95) * 3600, height(tiles, 40.51234, lon), 1e-4);
    }

    @Test
    void theDateLineIsASeamLikeAnyOther() throws IOException {
        byte[] east = PaperHgt.bytes(-17, 179, PaperHgt.SIDE, (lat, lon) -> 100 + 100 * (lon - 179));
        byte[] west = PaperHgt.bytes(-17, -180, PaperHgt.SIDE, (lat, lon) -> 200 + 100 * (lon + 180));
        PaperHgt.write(folder, "S17E179.hgt", east);
        PaperHgt.write(folder, "S17W180.hgt", west);
        TileFolder tiles = TileFolder.open(folder);
        for (double off = -0.01; off < 0.01; off += 0.00037) {
            double lon = off < 0 ? 180 + off : -180 + off;
            assertEquals(200 + 100 * off, height(tiles, -16.5, lon), 0.51);
        }
        Files.delete(folder.resolve("S17W180.hgt"));
        assertEquals(200, height(TileFolder.open(folder), -16.5, -180), 0);
    }

    @Test
    void openingAHundredTilesReadsNone() throws IOException {
        for (int i = 0; i < 100; i++)
            try (RandomAccessFile sparse = new RandomAccessFile(
                    folder.resolve(String.format("N%02dE%03d.hgt", i / 10, i % 10))
                            .toFile(),
                    "rw")) {
                sparse.setLength(2L * 1201 * 1201);
            }
        TileFolder tiles = TileFolder.open(folder, 9_000_000);
        assertEquals(100, tiles.tiles().size());
        assertEquals(0, tiles.cache().heldBytes());
        assertEquals(0, height(tiles, 3.5, 4.5));
        assertEquals(2L * 1201 * 1201, tiles.cache().heldBytes());
        IntStream.range(0, 100).parallel().forEach(i -> assertEquals(0, bulk(tiles, i / 10 + 0.5, i % 10 + 0.5)));
        assertTrue(
                tiles.cache().heldBytes() <= 9_000_000, "held " + tiles.cache().heldBytes());
    }

    @Test
    void severalThreadsGetTheSameAnswers() {
        TileFolder calm = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"));
        TileFolder busy = TileFolder.open(SAMPLES.resolve("high-mountains/tiles"), 3_000_000);
        IntStream.range(0, 8).parallel().forEach(k -> {
            Random random = new Random(k);
            for (int i = 0; i < 6; i++) {
                double lat = 37 + random.nextDouble();
                double lon = -106 + 2 * random.nextDouble();
                assertEquals(bulk(calm, lat, lon), bulk(busy, lat, lon), 0);
            }
        });
    }

    @Test
    void voidsStayVoidUnlessTheyAreSmall() throws IOException {
        double step = 1 / 1200.0;
        byte[] tile = PaperHgt.bytes(10, 20, PaperHgt.SIDE, (lat, lon) -> {
            boolean isSmall = Math.abs(lat - 10.5) < 0.6 * step && Math.abs(lon - 20.5) < 1.6 * step;
            boolean isLarge = Math.abs(lat - 10.7) < 3.6 * step && Math.abs(lon - 20.5) < 1.6 * step;
            return isSmall || isLarge ? -32768 : 400;
        });
        PaperHgt.write(folder, "N10E020.hgt", tile);
        TileFolder tiles = TileFolder.open(folder);
        GroundHeight small = tiles.at(new Position(10.5, 20.5));
        assertEquals(400, small.heightM().orElseThrow());
        assertTrue(small.isFilled());
        assertTrue(tiles.at(new Position(10.7, 20.5)).isVoid());
        assertEquals("N10E020.hgt", tiles.at(new Position(10.7, 20.5)).tile());
        assertFalse(tiles.at(new Position(10.6, 20.5)).isFilled());
        double[] h = {7};
        boolean[] v = {false};
        tiles.heights(new double[] {10.7}, new double[] {20.5}, 1, h, v);
        assertTrue(v[0]);
        assertEquals(0, h[0], "never −32768");
        assertEquals(1, tiles.countFilled(new double[] {10.5, 10.6, 10.7}, new double[] {20.5, 20.5, 20.5}, 3));
        TileSurvey survey = tiles.survey(share -> true).get(0);
        assertEquals(3, survey.filledPosts());
        assertEquals(21, survey.voidPosts());
        assertEquals(1201L * 1201, survey.posts());
        assertEquals(400, survey.lowestM().orElseThrow());
    }

    @Test
    void aPostBesideAVoidIsStillKnown() throws IOException {
        byte[] tile = PaperHgt.bytes(10, 20, PaperHgt.SIDE, (lat, lon) -> lon > 20.5 + 1e-9 ? -32768 : 400);
        PaperHgt.write(folder, "N10E020.hgt", tile);
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(400, height(tiles, 10.25, 20.5));
        assertTrue(tiles.at(new Position(10.25, 20.5 + 1e-5)).isVoid());
    }

    @Test
    void aBrokenTileDoesNotStopTheOthers() throws IOException {
        byte[] good = PaperHgt.bytes(10, 20, PaperHgt.SIDE, (lat, lon) -> 300);
        PaperHgt.write(folder, "N10E020.hgt", good);
        PaperHgt.write(folder, "N11E020.hgt", java.util.Arrays.copyOf(good, 1000));
        byte[] zip = PaperHgt.zipped("N12E020.hgt", PaperHgt.bytes(12, 20, PaperHgt.SIDE, TileFolderTest::slope));
        zip[zip.length / 2] ^= 0x55;
        zip[zip.length / 2 + 1] ^= 0x55;
        PaperHgt.write(folder, "N12E020.hgt.zip", zip);
        new PaperTiff(9, 9, (x, y) -> 1).nowhere().write(folder.resolve("nowhere.tif"));
        Files.writeString(folder.resolve("grid.asc"), "hello");
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(300, height(tiles, 10.5, 20.5));
        assertTrue(tiles.at(new Position(11.5, 20.5)).isVoid());
        assertTrue(tiles.at(new Position(12.5, 20.5)).isVoid(), "broken inside");
        String all = String.join("\n", tiles.warnings());
        assertEquals(4, tiles.warnings().size(), all);
        assertTrue(all.contains("N11E020.hgt: holds 1000 bytes"), all);
        assertTrue(all.matches("(?s).*N12E020.hgt.zip: [^\n]* Its ground is unknown.*"), all);
        assertTrue(all.contains("nowhere.tif: does not tell where it lies"), all);
        assertTrue(all.contains("grid.asc line 1: begins with 'hello'"), all);
        assertEquals(2, tiles.tiles().size());
    }

    @Test
    void aFolderWithoutTilesIsExplained() throws IOException {
        assertTrue(said(folder.resolve("none")).contains("there is no such folder"));
        Files.writeString(folder.resolve("readme.txt"), "x");
        assertTrue(said(folder).contains("holds no elevation tile"));
        Path inner = Files.createDirectories(folder.resolve("area/tiles"));
        PaperHgt.write(inner, "N10E020.hgt", new byte[4]);
        assertTrue(said(folder).contains("There are tiles in " + inner));
        assertTrue(said(inner).contains("holds 4 bytes"));
        // Rasters that the program wrote are no ground; their folder came first and was proposed.
        Path answer = Files.createDirectories(folder.resolve("answer"));
        Files.writeString(answer.resolve("loss.tif"), "x");
        Files.writeString(answer.resolve("reach-files.json"), "{}");
        Files.writeString(Files.createDirectories(folder.resolve("a")).resolve("note.txt"), "x");
        assertTrue(said(folder).contains("There are tiles in " + inner + ": name that one."), said(folder));
    }

    @Test
    void whatTheNameTellsIsKept() throws IOException {
        byte[] tile = PaperHgt.bytes(10, 20, PaperHgt.SIDE, (lat, lon) -> 300);
        PaperHgt.write(folder, "N10E020.hgt", tile);
        TileSummary hgt = TileFolder.open(folder).tiles().get(0);
        assertEquals("HGT", hgt.format());
        assertEquals(3, hgt.spacing().northSouth(), 1e-12);
        assertEquals(Surface.RADAR, hgt.nature().surface().orElseThrow());
        assertEquals(new TileBounds(10, 20, 11, 21), hgt.bounds());
        assertEquals(
                Surface.SURFACE_MODEL,
                TileProvenance.of("Copernicus_DSM_COG_10_N46_00_E008_00_DEM.tif")
                        .surface()
                        .orElseThrow());
        assertEquals(
                Surface.BARE_EARTH,
                TileProvenance.of("USGS_13_n41w112.tif").surface().orElseThrow());
        assertTrue(TileProvenance.of("mine.tif").surface().isEmpty());
    }

    /** An .hgt run must not pay for the start of the projection library or the TIFF reader. */
    @Test
    void hgtTilesNeedNoHeavyLibrary() throws IOException, InterruptedException {
        Process run = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xshare:auto",
                        "-verbose:class",
                        "-cp",
                        System.getProperty("java.class.path"),
                        HgtOnly.class.getName())
                .redirectErrorStream(true)
                .start();
        String loaded = new String(run.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertEquals(0, run.waitFor(), loaded.substring(Math.max(0, loaded.length() - 2000)));
        assertTrue(loaded.contains("handreach.terrain.TileFolder "), "the listing shows what was loaded");
        assertFalse(loaded.contains("org.geotools."));
        assertFalse(loaded.contains("it.geosolutions."));
    }

    /** Run by {@link #hgtTilesNeedNoHeavyLibrary}. */
    static final class HgtOnly {
        private HgtOnly() {}

        public static void main(String[] arguments) {
            GroundHeight reading =
                    TileFolder.open(SAMPLES.resolve("high-mountains/tiles")).at(new Position(37.5, -105));
            if (reading.heightM().orElse(0) != 2183) System.exit(3);
        }
    }

    private static String said(Path path) {
        return assertThrows(InputFault.class, () -> TileFolder.open(path)).getMessage();
    }

    private static double slope(double lat, double lon) {
        return 500 + 300 * (lat - Math.floor(lat)) + 200 * (lon - Math.floor(lon)) + 10 * Math.sin(40 * lat);
    }

    private static double wavy(int x, int y) {
        return 100 + 30 * Math.sin(x * 0.7) + 20 * Math.cos(y * 1.1) + x * y * 0.05;
    }

    static double height(Elevation tiles, double lat, double lon) {
        if (tiles instanceof TileFolder folder)
            return folder.at(new Position(lat, lon)).heightM().orElse(Double.NaN);
        return bulk(tiles, lat, lon);
    }

    static double bulk(Elevation tiles, double lat, double lon) {
        double[] h = new double[1];
        boolean[] v = new boolean[1];
        tiles.heights(new double[] {lat}, new double[] {lon}, 1, h, v);
        return v[0] ? Double.NaN : h[0];
    }

    /** What a map may take, what tiles may fill and what the program takes itself are together what there is. */
    @Test
    void tilesFillNoMemoryThatWasPromisedToTheMap() {
        long maps = Memory.most(Long.MAX_VALUE, 1);
        assertTrue(
                maps + TileCache.defaultLimitBytes() + (96 << 20)
                        <= Runtime.getRuntime().maxMemory(),
                maps + " and " + TileCache.defaultLimitBytes());
    }
}
