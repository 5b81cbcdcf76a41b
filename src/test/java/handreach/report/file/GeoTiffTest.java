package handreach.report.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.Sources;
import handreach.reach.CellGrid;
import java.awt.geom.Point2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.geotools.api.parameter.GeneralParameterValue;
import org.geotools.coverage.grid.GridCoverage2D;
import org.geotools.coverage.util.CoverageUtilities;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GeoTiffTest {
    private static final CellGrid GRID = CellGrid.around(new Position(46.5, 8.1), 3000, 25);

    private static final Georaster.Layer PLAIN = Georaster.Layer.of("x", "", Map.of());

    @TempDir
    Path folder;

    private static double value(int cell) {
        return GRID.rowOf(cell) * 1000 + GRID.columnOf(cell) + 0.25;
    }

    private static Georaster raster() {
        return new Georaster(
                GRID,
                Georaster.Layer.of("loss <&>", "dB", Map.of("PLAN", "a & b")),
                cell -> GRID.rowOf(cell) == 7 ? Double.NaN : value(cell));
    }

    private static byte[] bytes(Georaster raster) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        GeoTiff.content(raster).writeTo(out);
        return out.toByteArray();
    }

    /** Fields of the first directory as OGC 19-008r4 and TIFF 6.0 lay them out: tag to type, count, offset of the values. */
    private static Map<Integer, int[]> fields(ByteBuffer file) {
        file.order(file.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        assertEquals(42, file.getShort(2));
        int at = file.getInt(4);
        Map<Integer, int[]> fields = new HashMap<>();
        int count = file.getShort(at);
        for (int i = 0; i < count; i++) {
            int entry = at + 2 + 12 * i;
            int type = file.getShort(entry + 2);
            int n = file.getInt(entry + 4);
            int bytes = n * (type == 12 ? 8 : type == 3 ? 2 : type == 2 ? 1 : 4);
            int where = bytes <= 4 ? entry + 8 : file.getInt(entry + 8);
            fields.put(file.getShort(entry) & 0xFFFF, new int[] {type, n, where});
        }
        return fields;
    }

    @Test
    void tagsAreThoseOfTheStandard() throws IOException { // OGC GeoTIFF 1.1 (19-008r4), tags and keys by number
        ByteBuffer file = ByteBuffer.wrap(bytes(raster()));
        Map<Integer, int[]> fields = fields(file);
        int scale = fields.get(33550)[2];
        assertEquals(GRID.longitudeStepDeg(), file.getDouble(scale));
        assertEquals(GRID.latitudeStepDeg(), file.getDouble(scale + 8));
        int tie = fields.get(33922)[2];
        double[] expected = {0, 0, 0, GRID.westDeg(), GRID.northDeg(), 0};
        for (int i = 0; i < 6; i++) assertEquals(expected[i], file.getDouble(tie + 8 * i), "tie point " + i);
        int[] keys = fields.get(34735);
        Map<Integer, Integer> geoKeys = new HashMap<>();
        for (int i = 4; i < keys[1]; i += 4)
            geoKeys.put((int) file.getShort(keys[2] + 2 * i), (int) file.getShort(keys[2] + 2 * i + 6));
        assertEquals(Map.of(1024, 2, 1025, 1, 2048, 4326), geoKeys);
        int[] none = fields.get(42113);
        assertEquals(
                "-9999", new String(file.array(), none[2], none[1] - 1, java.nio.charset.StandardCharsets.US_ASCII));
        assertEquals(3, file.getShort(fields.get(339)[2]));
        assertEquals(32, file.getShort(fields.get(258)[2]));
    }

    @Test
    void aGeneralReaderFindsEveryCellWhereItBelongs() throws Exception { // oracle: the geographic library's reader
        Path file = folder.resolve("loss.tif");
        AnswerFile.write(file, GeoTiff.content(raster()), Sources.NONE);
        GeoTiffReader reader = new GeoTiffReader(file.toFile());
        GridCoverage2D coverage = reader.read((GeneralParameterValue[]) null);
        try {
            assertEquals(GRID.columns(), coverage.getGridGeometry().getGridRange2D().width);
            for (int cell = 0; cell < GRID.count(); cell += 997) {
                Position at = GRID.positionOf(cell);
                double[] found =
                        coverage.evaluate(new Point2D.Double(at.longitudeDeg(), at.latitudeDeg()), new double[1]);
                double expected = GRID.rowOf(cell) == 7 ? Georaster.NO_DATA : (float) value(cell);
                assertEquals(expected, found[0], "cell " + cell);
            }
            assertEquals(
                    Georaster.NO_DATA,
                    CoverageUtilities.getNoDataProperty(coverage).getAsSingleValue(),
                    0);
        } finally {
            coverage.dispose(true);
            reader.dispose();
        }
    }

    @Test
    void aGridOverThe180thMeridianBeginsInTheEast() throws IOException {
        CellGrid grid = CellGrid.around(new Position(-17, -179.999), 2000, 50);
        ByteBuffer file = ByteBuffer.wrap(bytes(new Georaster(grid, PLAIN, cell -> 1)));
        double west = file.getDouble(fields(file).get(33922)[2] + 24);
        assertTrue(west > 179 && west < 180, "west edge " + west);
    }

    @Test
    void theSameGridIsTheSameFile() throws IOException {
        assertEquals(ByteBuffer.wrap(bytes(raster())), ByteBuffer.wrap(bytes(raster())));
    }

    @Test
    void aValueThatMeansNothingIsRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> bytes(new Georaster(GRID, PLAIN, cell -> Double.POSITIVE_INFINITY)));
        assertThrows(IllegalArgumentException.class, () -> bytes(new Georaster(GRID, PLAIN, cell -> -9999)));
    }

    @Test
    void aFaultInTheValuesLeavesNoFile() throws IOException {
        Path file = folder.resolve("bad.tif");
        assertThrows(
                IllegalArgumentException.class,
                () -> AnswerFile.write(
                        file,
                        GeoTiff.content(new Georaster(GRID, PLAIN, cell -> Double.NEGATIVE_INFINITY)),
                        Sources.NONE));
        try (var files = Files.list(folder)) {
            assertEquals(0, files.count());
        }
    }

    @Test
    void numbersAreRoundedToTheStepAndNoFarther() {
        Georaster stepped = new Georaster(GRID, PLAIN, cell -> 100 + cell / 3.0, Georaster.STEP_DB);
        for (int cell = 0; cell < 300; cell++) {
            double written = stepped.written(cell);
            assertEquals(100 + cell / 3.0, written, 0.5 / 128 + 1e-9);
            assertEquals(0, written * 128 % 1);
        }
        assertEquals(Georaster.NO_DATA, new Georaster(GRID, PLAIN, cell -> Double.NaN, Georaster.STEP_DB).written(0));
    }

    private static String text(Georaster raster, int tag) throws IOException {
        byte[] file = bytes(raster);
        int[] field = fields(ByteBuffer.wrap(file)).get(tag);
        return new String(file, field[2], field[1] - 1, java.nio.charset.StandardCharsets.UTF_8);
    }

    /** A raster is handed on alone: unit, classes and origin must be in it. Form: the metadata tag of general raster tools. */
    @Test
    void aRasterSaysItsUnitAndWhereItComesFrom() throws IOException {
        assertEquals(
                "<GDALMetadata><Item name=\"PLAN\">a &amp; b</Item>"
                        + "<Item name=\"DESCRIPTION\" sample=\"0\" role=\"description\">loss &lt;&amp;&gt;</Item>"
                        + "<Item name=\"UNITTYPE\" sample=\"0\" role=\"unittype\">dB</Item></GDALMetadata>",
                text(raster(), 42112));
        assertTrue(!text(new Georaster(GRID, PLAIN, cell -> 1), 42112).contains("UNITTYPE"), "no unit, none said");
    }

    @Test
    void classesHaveNamesAndColours() throws IOException {
        List<Georaster.Layer.Kind> kinds =
                List.of(new Georaster.Layer.Kind("none", 0xFFFFFF), new Georaster.Layer.Kind("whip <&>", 0x0072B2));
        Georaster raster = new Georaster(GRID, new Georaster.Layer("least", "", kinds, Map.of()), cell -> 1);
        assertTrue(text(raster, 42112).contains("<Item name=\"CLASS_1\" sample=\"0\">whip &lt;&amp;&gt;</Item>"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        GeoTiff.classes(raster).writeTo(out);
        String beside = out.toString(java.nio.charset.StandardCharsets.UTF_8).replace("\n", "");
        assertTrue(beside.startsWith("<PAMDataset>"), "a declaration before it and the file is passed over");
        assertTrue(beside.contains("<Category>none</Category><Category>whip &lt;&amp;&gt;</Category>"), beside);
        // by hand: 0x0072B2 is 0, 114, 178
        assertTrue(beside.contains("c1=\"0\" c2=\"114\" c3=\"178\" c4=\"255\""), beside);
    }

    /** The layout by the rules of the trade's checker of such files: directories first and in order, the tiles of the smallest picture next. */
    @Test
    void forReadingPieceByPieceDirectoriesStandFirstAndTheSmallestPictureNext() throws Exception {
        CellGrid grid = CellGrid.around(new Position(46.5, 8.1), 3000, 10);
        assertTrue(grid.columns() > 512, "three pictures");
        Georaster raster = new Georaster(
                grid,
                PLAIN,
                cell -> grid.rowOf(cell) == 0 ? Double.NaN : grid.rowOf(cell) * 1000.0 + grid.columnOf(cell));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        GeoTiff.cloud(raster).writeTo(out);
        ByteBuffer file = ByteBuffer.wrap(out.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);
        int at = file.getInt(4);
        assertEquals(8, at);
        int columns = grid.columns();
        int firstTileBefore = Integer.MAX_VALUE;
        int pictures = 0;
        int lastDirectory = 0;
        while (at != 0) {
            assertTrue(at > lastDirectory && at % 2 == 0, "directory at " + at);
            lastDirectory = at;
            ByteBuffer view = file.duplicate().order(ByteOrder.LITTLE_ENDIAN);
            view.putInt(4, at);
            Map<Integer, int[]> fields = fields(view);
            file.putInt(4, 8);
            assertEquals(columns, file.getInt(fields.get(256)[2]));
            assertEquals(pictures > 0, fields.containsKey(254));
            int[] offsets = fields.get(324);
            int firstTile = file.getInt(offsets[2]);
            assertTrue(firstTile < firstTileBefore, "tiles of the smaller picture come first");
            firstTileBefore = firstTile;
            if (pictures == 1) {
                float[] cells = cells(out.toByteArray(), firstTile);
                // by hand: row 0 is not known, so the mean is that of row 1 alone; next, of rows 2 and 3, columns 2 and
                // 3
                assertEquals(1000.5f, cells[0]);
                assertEquals(2502.5f, cells[256 + 1]);
            }
            columns = (columns + 1) / 2;
            pictures++;
            at = file.getInt(at + 2 + 12 * file.getShort(at));
        }
        assertEquals(3, pictures);
        assertTrue(firstTileBefore > lastDirectory, "tiles stand behind all directories");
        Path saved = folder.resolve("cloud.tif");
        AnswerFile.write(saved, GeoTiff.cloud(raster), Sources.NONE);
        GeoTiffReader reader = new GeoTiffReader(saved.toFile());
        GridCoverage2D coverage = reader.read((GeneralParameterValue[]) null);
        try {
            Position place = grid.positionOf(grid.index(100, 333));
            double[] found =
                    coverage.evaluate(new Point2D.Double(place.longitudeDeg(), place.latitudeDeg()), new double[1]);
            assertEquals(100_333, found[0]);
        } finally {
            coverage.dispose(true);
            reader.dispose();
        }
    }

    private static float[] cells(byte[] file, int at) throws IOException {
        var in = new java.util.zip.InflaterInputStream(new java.io.ByteArrayInputStream(file, at, file.length - at));
        float[] cells = new float[256 * 256];
        ByteBuffer.wrap(in.readNBytes(4 * cells.length))
                .order(ByteOrder.LITTLE_ENDIAN)
                .asFloatBuffer()
                .get(cells);
        return cells;
    }
}
