package handreach.terrain;

import static handreach.terrain.TileFolderTest.height;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.ToDoubleBiFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rasters that are no ground, each finer than the real tile beside it, so that it would answer if it were taken for ground. */
class NoGroundTest {
    private static final double STEP = 1 / 1200.0;
    private static final double FINE = 1 / 3600.0;
    private static final int[] CODES = {10, 20, 30, 40, 50, 80, 95};
    private static final Position PLACE = new Position(46.99, 8.01);
    private static final double GROUND_M = 1500;
    /** What a summary of single floats may be off. */
    private static final double FLOAT_M = 1e-3;

    @TempDir
    Path folder;

    @BeforeEach
    void aRealTileBeside() throws IOException {
        new PaperTiff(60, 60, (x, y) -> GROUND_M).at(8, 47, STEP, STEP).write(folder.resolve("ground.tif"));
    }

    private static PaperTiff fine(ToDoubleBiFunction<Integer, Integer> value) {
        return new PaperTiff(150, 150, value).at(8, 47, FINE, FINE);
    }

    private static double code(int x, int y) {
        return CODES[new Random(1000L * (x / 3) + y / 4).nextInt(CODES.length)];
    }

    /** Hills of some 400 m, as in a real tile. */
    private static double hills(int x, int y) {
        return 700 + 200 * Math.sin(x / 17.0) * Math.cos(y / 13.0) + 40 * Math.sin(x / 3.0 + y / 5.0);
    }

    static Stream<Arguments> headers() {
        return Stream.of(
                header("written by Handreach", tiff -> tiff.tag(305, "Handreach")),
                header("written by Handreach", tiff -> tiff.tag(305, "Handreach 1.0")),
                header("colour table", tiff -> tiff.tag(262, new long[] {3}).tag(320, new int[768])),
                header("colour table", tiff -> tiff.tag(320, new int[768])),
                header("8 bits", tiff -> tiff.sample(8, 1)),
                header("land cover", tiff -> tiff.metadata(item("LAYER_TYPE", "", "thematic"))),
                header("land cover", tiff -> tiff.metadata(item("legend", "", "10 Tree cover\n20 Shrubland"))),
                header("land cover", tiff -> tiff.metadata(item("D", "description", "Landcover 2021"))),
                header("undulation", tiff -> tiff.metadata(item("D", "description", "Geoid height above WGS 84"))),
                header("ellipsoid", tiff -> tiff.metadata(item("vertical_datum", "", "WGS84 ellipsoid"))),
                header("ellipsoid", tiff -> tiff.keys(1024, 2, 2048, 4326, 4096, 5030)),
                header("ellipsoid", tiff -> tiff.keyText(4097, "WGS 84 ellipsoid")),
                header("ellipsoid", tiff -> tiff.keys(1024, 2, 2048, 4979)));
    }

    private static Arguments header(String part, UnaryOperator<PaperTiff> how) {
        return Arguments.of(part, how);
    }

    private static String item(String name, String role, String text) {
        return "<GDALMetadata><Item name=\"" + name + "\" sample=\"0\" role=\"" + role + "\">" + text
                + "</Item></GDALMetadata>";
    }

    @ParameterizedTest
    @MethodSource("headers")
    void whatTheHeaderShowsToBeNoGroundIsRefusedByName(String part, UnaryOperator<PaperTiff> how) throws IOException {
        how.apply(fine(NoGroundTest::hills)).write(folder.resolve("a.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(GROUND_M, height(tiles, PLACE.latitudeDeg(), PLACE.longitudeDeg()), FLOAT_M);
        assertEquals(1, tiles.warnings().size(), String.join("\n", tiles.warnings()));
        String told = tiles.warnings().get(0);
        assertTrue(told.startsWith("a.tif: ") && told.contains(part), told);
        assertEquals(1, told.lines().count());
    }

    @Test
    void classNamesInTheFileBesideItAreSeen() throws IOException {
        fine(NoGroundTest::hills).write(folder.resolve("a.tif"));
        Files.writeString(
                folder.resolve("a.tif.aux.xml"),
                "<PAMDataset><PAMRasterBand band=\"1\"><CategoryNames><Category>Wood</Category></CategoryNames>"
                        + "</PAMRasterBand></PAMDataset>");
        assertRefused("class names");
    }

    /** The same files with what real elevation carries in the same places. */
    static Stream<Arguments> harmless() {
        return Stream.of(
                header("", tiff -> tiff.tag(305, "a scanner's program")),
                header("", tiff -> tiff.metadata(item("D", "description", "grdn41w112_1"))),
                header(
                        "",
                        tiff -> tiff.metadata(item("vertical_datum", "", "EGM2008 geoid over the WGS 84 ellipsoid"))),
                header("", tiff -> tiff.metadata(item("ellipsoid", "", "GRS80"))),
                header("", tiff -> tiff.keys(1024, 2, 2048, 4326, 4096, 5773)),
                header("", tiff -> tiff.keys(1024, 2, 2048, 4979, 4096, 5773)),
                header("", tiff -> tiff.keyText(4097, "NAVD88 height")),
                header("", tiff -> tiff.keyText(2049, "Ellipsoid = GRS80")));
    }

    @ParameterizedTest
    @MethodSource("harmless")
    void realElevationIsReadWithWhatItCarriesInThesePlaces(String none, UnaryOperator<PaperTiff> how)
            throws IOException {
        Files.delete(folder.resolve("ground.tif"));
        how.apply(fine(NoGroundTest::hills).sample(32, 3)).write(folder.resolve("a.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertTrue(height(tiles, PLACE.latitudeDeg(), PLACE.longitudeDeg()) > 400);
        assertEquals("", String.join("\n", tiles.warnings()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"10 20 30 40 50 80 95", "11 21 22 41 42 81 90", "112 211 231 311 312 512"})
    void classCodesIn16BitsAreRefused(String legend) throws IOException {
        int[] codes = Stream.of(legend.split(" ")).mapToInt(Integer::parseInt).toArray();
        fine((x, y) -> codes[new Random(1000L * (x / 3) + y / 4).nextInt(codes.length)])
                .write(folder.resolve("a.tif"));
        assertRefused("land cover");
    }

    /** Nodata between the classes is filled from its rim, which gives numbers that are no codes. */
    @Test
    void classCodesWithHolesAreRefused() throws IOException {
        fine((x, y) -> x % 10 == 5 && y % 10 == 5 ? 0 : code(x, y)).nodata("0").write(folder.resolve("a.tif"));
        assertRefused("land cover");
    }

    @Test
    void classCodesAsTextAreRefused() throws IOException {
        StringBuilder text = new StringBuilder("ncols 60\nnrows 60\nxllcorner 8\nyllcorner 46.98\ncellsize 0.0003\n");
        for (int y = 0; y < 60; y++) {
            for (int x = 0; x < 60; x++) text.append((int) code(x, y)).append(' ');
            text.append('\n');
        }
        Files.writeString(folder.resolve("a.asc"), text);
        assertRefused("land cover");
    }

    /** A file so large that it is held in parts, one of which holds one class only: no part of it is ground. */
    @Test
    void noPartOfALargeClassMapIsGround() throws IOException {
        new PaperTiff(
                        4200,
                        4200,
                        (x, y) -> y < 2100 ? 80 : CODES[((x / 3) * (y / 4) * 5 + x / 3 * 3 + y / 4) % CODES.length])
                .tiles(2048)
                .at(8, 47, FINE / 10, FINE / 10)
                .write(folder.resolve("a.tif"));
        assertRefused("land cover");
    }

    @Test
    void groundInStepsOfTenMetresIsNoClassMap() throws IOException {
        assertGround(fine((x, y) -> 10 * Math.rint(1 + (4.4 + 4.4 * Math.sin(x / 40.0) * Math.cos(y / 50.0)))));
    }

    /** 121 to 124 are codes of a legend, too. */
    @Test
    void aPlainWhoseHeightsHappenToBeCodesIsGround() throws IOException {
        Random random = new Random(7);
        assertGround(fine((x, y) -> 121 + random.nextInt(4)));
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 12})
    void levelWaterIsGround(int heightM) throws IOException {
        assertGround(fine((x, y) -> heightM));
        assertGround(fine((x, y) -> heightM + 0.25).sample(32, 3));
    }

    /** Undulation as published, 1 minute of arc: some 5 cm in a kilometre. */
    @ParameterizedTest
    @ValueSource(doubles = {1 / 60.0, 1 / 3600.0})
    void anUndulationGridIsRefusedHoweverFine(double step) throws IOException {
        Files.delete(folder.resolve("ground.tif"));
        new PaperTiff(6, 6, (x, y) -> GROUND_M).at(7, 48, 1, 1).write(folder.resolve("ground.tif"));
        new PaperTiff(60, 60, (x, y) -> {
                    double eastKm = 111 * step * x;
                    double southKm = 111 * step * y;
                    return -35 + 0.05 * eastKm + 0.03 * southKm + 2 * Math.sin(eastKm / 60) * Math.cos(southKm / 80);
                })
                .sample(32, 3)
                .at(8, 47, step, step)
                .write(folder.resolve("a.tif"));
        assertRefused("undulation");
        Files.delete(folder.resolve("ground.tif"));
        GroundHeight alone = TileFolder.open(folder).at(PLACE);
        assertEquals(new GroundHeight(OptionalDouble.empty(), "", false), alone);
    }

    /** A low, flat coast, at 90 m and thinned to 1.5 km: rough at all scales, fractal with an exponent as measured on plains. */
    @ParameterizedTest
    @ValueSource(doubles = {1 / 1200.0, 1 / 60.0})
    void aLowCoastIsGround(double step) throws IOException {
        Random random = new Random(20260118);
        double[] dunes = random.doubles(3600, 0, 6).toArray();
        assertGround(new PaperTiff(60, 60, (x, y) -> Math.max(0, 0.1 * x - 1 + dunes[60 * y + x] - 2))
                .sample(32, 3)
                .at(8, 47, step, step));
    }

    /** Steps below those of the geoid, but no two of them alike: half a centimetre of noise on a level plain. */
    @Test
    void aPlainThatIsLevelButForItsNoiseIsGround() throws IOException {
        double[] noise = new Random(20260119).doubles(3600, -0.005, 0.005).toArray();
        assertGround(new PaperTiff(60, 60, (x, y) -> 12 + 0.001 * x + noise[60 * y + x])
                .sample(32, 3)
                .at(8, 47, STEP, STEP));
    }

    @Test
    void aFolderOfNothingElseIsRefusedWithTheReasons() throws IOException {
        Files.delete(folder.resolve("ground.tif"));
        fine(NoGroundTest::code).sample(8, 1).write(folder.resolve("a.tif"));
        String said =
                assertThrows(InputFault.class, () -> TileFolder.open(folder)).getMessage();
        assertTrue(said.contains("no elevation tile that can be used. a.tif: has values of 8 bits"), said);
    }

    @Test
    void theShippedSamplesAreGround() throws IOException {
        try (Stream<Path> all = Files.walk(Path.of("elevation-samples"))) {
            for (Path tiles : all.filter(path -> path.endsWith("tiles")).toList()) {
                TileFolder open = TileFolder.open(tiles);
                open.survey(share -> true);
                assertEquals("", String.join("\n", open.warnings()), tiles.toString());
            }
        }
    }

    private void assertRefused(String part) {
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(GROUND_M, height(tiles, PLACE.latitudeDeg(), PLACE.longitudeDeg()), FLOAT_M);
        assertEquals(1, tiles.warnings().size(), String.join("\n", tiles.warnings()));
        String told = tiles.warnings().get(0);
        assertTrue(told.startsWith("a.") && told.contains(part), told);
        assertTrue(
                tiles.survey(share -> true).stream()
                        .noneMatch(tile -> tile.tile().name().startsWith("a.")),
                "surveyed");
    }

    private void assertGround(PaperTiff tiff) throws IOException {
        Files.deleteIfExists(folder.resolve("ground.tif"));
        tiff.write(folder.resolve("a.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertTrue(tiles.at(PLACE).heightM().isPresent());
        assertEquals("", String.join("\n", tiles.warnings()));
    }
}
