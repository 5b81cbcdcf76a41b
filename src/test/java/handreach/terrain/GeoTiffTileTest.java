package handreach.terrain;

import static handreach.terrain.TileFolderTest.bulk;
import static handreach.terrain.TileFolderTest.height;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.geodesy.UtmZone;
import handreach.input.InputFault;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.ImageWriteParam;
import org.geotools.api.parameter.GeneralParameterValue;
import org.geotools.api.parameter.ParameterValue;
import org.geotools.coverage.grid.GridCoverage2D;
import org.geotools.coverage.grid.GridCoverageFactory;
import org.geotools.coverage.grid.io.AbstractGridFormat;
import org.geotools.gce.geotiff.GeoTiffFormat;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.geotools.gce.geotiff.GeoTiffWriteParams;
import org.geotools.gce.geotiff.GeoTiffWriter;
import org.geotools.geometry.jts.ReferencedEnvelope;
import org.geotools.referencing.CRS;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GeoTiffTileTest {
    private static final double STEP = 1 / 1200.0;
    private static final double FLOAT_M = 1e-3;

    @TempDir
    Path folder;

    /** A tilted plane: a reader that is off by half a pixel errs by 15 m here. */
    private static double plane(double lat, double lon) {
        return 1000 + 36_000 * (lon - 8) - 18_000 * (47 - lat);
    }

    private static double pixel(int x, int y) {
        return 1000 + 30.0 * x - 15.0 * y;
    }

    /** By hand: with the tie point at the centre of the first pixel, or half a pixel to its north-west corner. */
    @ParameterizedTest
    @CsvSource({"true", "false"})
    void pixelIsPointAndPixelIsAreaDifferByHalfAPixel(boolean isPoint) throws IOException {
        double half = isPoint ? 0 : STEP / 2;
        PaperTiff tiff = new PaperTiff(60, 40, (x, y) -> pixel(x, y)).at(8 - half, 47 + half, STEP, STEP);
        (isPoint ? tiff.point() : tiff).write(folder.resolve("t.tif"));
        TileFolder tiles = TileFolder.open(folder);
        for (double lon = 8; lon < 8.049; lon += 0.00217)
            assertEquals(plane(46.98123, lon), height(tiles, 46.98123, lon), FLOAT_M);
        assertTrue(tiles.at(new Position(46.98, 8 - STEP / 2 - 1e-6)).isVoid());
    }

    @ParameterizedTest
    @CsvSource({"true", "false"})
    void theProjectionLibraryPutsThePixelsAtTheSamePlace(boolean isPoint) throws Exception {
        PaperTiff tiff = new PaperTiff(60, 40, (x, y) -> pixel(x, y))
                .at(8, 47, STEP, STEP)
                .deflated()
                .tiles(16);
        Path file = (isPoint ? tiff.point() : tiff).write(folder.resolve("t.tif"));
        GeoTiffReader reader = new GeoTiffReader(file.toFile());
        double[] centre = {0, 0};
        reader.getOriginalGridToWorld(org.geotools.api.referencing.datum.PixelInCell.CELL_CENTER)
                .transform(centre, 0, centre, 0, 1);
        reader.dispose();
        assertEquals(pixel(0, 0), height(TileFolder.open(folder), centre[1] - 1e-10, centre[0] + 1e-10), FLOAT_M);
    }

    @ParameterizedTest
    @CsvSource({
        "16,2,false,1,0",
        "16,2,true,8,0",
        "32,3,false,8,16",
        "32,3,true,1,16",
        "64,3,false,8,0",
        "16,1,false,8,7",
        "32,2,true,8,7",
        "32,3,false,1,7"
    })
    void everyKindOfSampleAndBlockIsRead(int bits, int format, boolean isBigEndian, int compression, int block)
            throws IOException {
        PaperTiff tiff = new PaperTiff(60, 40, (x, y) -> pixel(x, y))
                .sample(bits, format)
                .point()
                .at(8, 47, STEP, STEP);
        if (isBigEndian) tiff.bigEndian();
        if (compression == 8) tiff.deflated();
        if (block == 16) tiff.tiles(16);
        else if (block > 0) tiff.strips(block);
        tiff.write(folder.resolve("t.tif"));
        assertPlane(TileFolder.open(folder));
    }

    @Test
    void bigTiffAndOverviewsAreUnderstood() throws IOException {
        new PaperTiff(60, 40, (x, y) -> pixel(x, y))
                .bigTiff()
                .overviewFirst()
                .deflated()
                .tiles(16)
                .point()
                .at(8, 47, STEP, STEP)
                .write(folder.resolve("t.tif"));
        assertPlane(TileFolder.open(folder));
    }

    @Test
    void aTransformationMatrixIsAsGoodAsATiePoint() throws IOException {
        new PaperTiff(60, 40, (x, y) -> pixel(x, y))
                .point()
                .matrix(STEP, 0, 0, 8, 0, -STEP, 0, 47, 0, 0, 0, 0, 0, 0, 0, 1)
                .write(folder.resolve("t.tif"));
        assertPlane(TileFolder.open(folder));
    }

    /** Written by the GeoTools library: its own compressions, predictors and tiles. */
    @ParameterizedTest
    @CsvSource({"LZW,false,short", "Deflate,true,short", "Deflate,false,float", "LZW,true,float", "PackBits,false,short"
    })
    void whatAnotherLibraryWroteIsRead(String compression, boolean isTiled, String type) throws Exception {
        boolean isShort = type.equals("short");
        int kind = isShort ? java.awt.image.DataBuffer.TYPE_SHORT : java.awt.image.DataBuffer.TYPE_FLOAT;
        WritableRaster raster =
                java.awt.image.Raster.createWritableRaster(new java.awt.image.BandedSampleModel(kind, 60, 40, 1), null);
        for (int y = 0; y < 40; y++) for (int x = 0; x < 60; x++) raster.setSample(x, y, 0, pixel(x, y));
        ReferencedEnvelope bounds = new ReferencedEnvelope(
                8 - STEP / 2, 8 + 59.5 * STEP, 47 - 39.5 * STEP, 47 + STEP / 2, CRS.decode("EPSG:4326", true));
        GridCoverage2D coverage = new GridCoverageFactory().create("t", raster, bounds);
        GeoTiffWriteParams params = new GeoTiffWriteParams();
        params.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        params.setCompressionType(compression);
        if (isTiled) {
            params.setTilingMode(ImageWriteParam.MODE_EXPLICIT);
            params.setTiling(16, 16);
        }
        ParameterValue<Object> value = valueOf(params);
        GeoTiffWriter writer = new GeoTiffWriter(folder.resolve("t.tif").toFile());
        writer.write(coverage, new GeneralParameterValue[] {value});
        writer.dispose();
        assertPlane(TileFolder.open(folder));
    }

    @SuppressWarnings("unchecked")
    private static ParameterValue<Object> valueOf(GeoTiffWriteParams params) {
        ParameterValue<?> value = (ParameterValue<?>) new GeoTiffFormat()
                .getWriteParameters()
                .parameter(AbstractGridFormat.GEOTOOLS_WRITE_PARAMS.getName().toString());
        value.setValue(params);
        return (ParameterValue<Object>) value;
    }

    @ParameterizedTest
    @CsvSource({
        "-9999,-9999,32,3",
        "nan,NaN,32,3",
        "-32767,-32767,16,2",
        ",-32768,16,2",
        ",NaN,32,3",
        ",-3.4e38,32,3",
        "0,0,16,2",
        "-3.4028234663852886e+38,-3.4028234663852886e38,32,3"
    })
    void noDataIsVoidAndNeverZero(String tag, double stored, int bits, int format) throws IOException {
        PaperTiff tiff = new PaperTiff(60, 40, (x, y) -> x >= 20 && x < 30 ? stored : 500)
                .sample(bits, format)
                .point()
                .at(8, 47, STEP, STEP);
        if (tag != null) tiff.nodata(tag);
        tiff.write(folder.resolve("t.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertTrue(tiles.at(new Position(46.98, 8 + 25 * STEP)).isVoid());
        assertTrue(Double.isNaN(bulk(tiles, 46.98, 8 + 19.5 * STEP)));
        assertEquals(500, height(tiles, 46.98, 8 + 35 * STEP));
        assertEquals(400, tiles.survey(share -> true).get(0).voidPosts());
    }

    @Test
    void scaleOffsetAndFeetBecomeMetres() throws IOException {
        String scaled = "<GDALMetadata><Item name=\"OFFSET\" sample=\"0\" role=\"offset\">100</Item>"
                + "<Item name=\"SCALE\" sample=\"0\" role=\"scale\">0.5</Item></GDALMetadata>";
        new PaperTiff(9, 9, (x, y) -> 600)
                .metadata(scaled)
                .point()
                .at(8, 47, 0.01, 0.01)
                .write(folder.resolve("a.tif"));
        new PaperTiff(9, 9, (x, y) -> 1000)
                .metadata(
                        "<GDALMetadata><Item name=\"UNITTYPE\" sample=\"0\" role=\"unittype\">ft</Item></GDALMetadata>")
                .point()
                .at(9, 47, 0.01, 0.01)
                .write(folder.resolve("b.tif"));
        new PaperTiff(9, 9, (x, y) -> 3937)
                .keys(1024, 2, 2048, 4326, 4099, 9003)
                .point()
                .at(10, 47, 0.01, 0.01)
                .write(folder.resolve("c.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(400, height(tiles, 46.95, 8.05));
        assertEquals(304.8, height(tiles, 46.95, 9.05), 1e-3);
        assertEquals(1200, height(tiles, 46.95, 10.05), 1e-3);
    }

    /** By hand: a tilted plane in UTM; the position of a chosen easting and northing must read back as that plane. */
    @ParameterizedTest
    @CsvSource({"32632,32,false", "32725,25,true", "26916,16,false", "25833,33,false"})
    void utmTilesAreReadInTheirPlane(int code, int number, boolean isSouth) throws IOException {
        double north = isSouth ? 9_120_000 : 5_150_000;
        new PaperTiff(100, 80, (x, y) -> 100 + 3 * x - 2 * y)
                .sample(32, 3)
                .keys(1024, 1, 3072, code, 3076, 9001)
                .at(460_000, north, 30, 30)
                .write(folder.resolve("utm.tif"));
        TileFolder tiles = TileFolder.open(folder);
        UtmZone zone = new UtmZone(number, isSouth);
        Random random = new Random(20260108);
        double[] lat = new double[300];
        double[] lon = new double[300];
        double[] expected = new double[300];
        for (int i = 0; i < lat.length; i++) {
            double x = 15 + random.nextDouble() * 99 * 30;
            double y = 15 + random.nextDouble() * 79 * 30;
            Position place = zone.position(460_000 + x, north - y);
            lat[i] = place.latitudeDeg();
            lon[i] = place.longitudeDeg();
            expected[i] = 100 + 3 * (x / 30 - 0.5) - 2 * (y / 30 - 0.5);
            assertEquals(expected[i], height(tiles, lat[i], lon[i]), FLOAT_M);
        }
        double[] h = new double[300];
        boolean[] v = new boolean[300];
        tiles.heights(lat, lon, 300, h, v);
        for (int i = 0; i < 300; i++) assertEquals(expected[i], h[i], FLOAT_M);
        assertEquals("EPSG:" + code, tiles.tiles().get(0).crs());
        assertEquals(30, tiles.postSpacingM(lat[0], lon[0], 0), 0.1);
    }

    /**
     * Published: EPSG Guidance Note 7-2, worked example of the Lambert azimuthal equal-area projection of Europe: 50 N 5 E is
     * easting 3962799.45, northing 2999718.85. The library reckons it.
     */
    @Test
    void nationalGridsAreReadThroughTheProjectionLibrary() throws IOException {
        new PaperTiff(100, 80, (x, y) -> 100 + 3 * x - 2 * y)
                .sample(32, 3)
                .keys(1024, 1, 3072, 3035, 3076, 9001)
                .point()
                .at(3_962_799.45 - 900, 2_999_718.85 + 600, 30, 30)
                .write(folder.resolve("europe.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(100 + 3 * 30 - 2 * 20, height(tiles, 50, 5), 0.01);
        assertEquals(150, bulk(tiles, 50, 5), 0.01);
    }

    /** A datum of 1927 lies about 100 m off WGS 84 there; the shift for the region is good to 5 m, and the plane falls 1 m in 30 m. */
    @Test
    void olderDatumsAreShifted() throws IOException {
        new PaperTiff(100, 80, (x, y) -> 100 + x)
                .sample(32, 3)
                .keys(1024, 1, 3072, 26710, 3076, 9001)
                .point()
                .at(562_275.445 - 900, 5_115_371.345 + 600, 30, 30)
                .write(folder.resolve("old.tif"));
        assertEquals(130, height(TileFolder.open(folder), 46.19083, -122.19417), 5 / 30.0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "34887|LERC; none, LZW, Deflate, ZSTD and PackBits can be read",
                "7|JPEG;",
                "12345|compression 12345;",
            })
    void unreadableCompressionsAreNamed(int code, String part) throws IOException {
        new PaperTiff(9, 9, (x, y) -> 1).statedCompression(code).write(folder.resolve("t.tif"));
        assertTrue(said().contains(part), said());
    }

    @Test
    void whatCannotBeATileIsExplained() throws IOException {
        assertSaid("has 3 bands", new PaperTiff(9, 9, (x, y) -> 1).samples(3));
        assertSaid("sample format 1", new PaperTiff(9, 9, (x, y) -> 1).sample(32, 1));
        assertSaid("does not tell where it lies", new PaperTiff(9, 9, (x, y) -> 1).nowhere());
        assertSaid("does not tell its coordinate reference system", new PaperTiff(9, 9, (x, y) -> 1).keys());
        assertSaid("beyond all maps", new PaperTiff(9, 9, (x, y) -> 1).at(8, 47, 1e-300, 0.01));
        assertSaid("beyond all maps", new PaperTiff(9, 9, (x, y) -> 1).at(8e300, 47, 0.01, 0.01));
        assertSaid("is not on earth", new PaperTiff(9, 9, (x, y) -> 1).at(461_000, 5_148_000, 30, 30));
        assertSaid(
                "is turned against north",
                new PaperTiff(9, 9, (x, y) -> 1).matrix(1, 0.5, 0, 8, 0.5, -1, 0, 47, 0, 0, 0, 0, 0, 0, 0, 1));
        assertSaid(
                "rows must run from north to south",
                new PaperTiff(9, 9, (x, y) -> 1).matrix(1, 0, 0, 8, 0, 1, 0, 47, 0, 0, 0, 0, 0, 0, 0, 1));
        assertSaid(
                "coordinate reference system that is not understood",
                new PaperTiff(9, 9, (x, y) -> 1).keys(1024, 1, 3072, 1));
    }

    @Test
    void aTruncatedFileIsFoundWithoutUnpackingIt() throws IOException {
        byte[] whole = Files.readAllBytes(Path.of("elevation-samples/forest-hills/tiles/cumberland-forest-3s.tif"));
        Path file = folder.resolve("t.tif");
        Files.write(file, Arrays.copyOf(whole, whole.length * 2 / 3));
        assertTrue(said().contains("is cut off") || said().contains("ends inside its own header"), said());
        Files.write(file, Arrays.copyOf(whole, 6));
        assertTrue(said().contains("ends inside its own header"), said());
        Files.write(file, new byte[100]);
        assertTrue(said().contains("is not a TIFF file"), said());
    }

    @Test
    void hugeStatedSizesAreRefused() throws IOException {
        byte[] tiff =
                new PaperTiff(9, 9, (x, y) -> 1).point().at(8, 47, 0.01, 0.01).bytes();
        java.nio.ByteBuffer buffer = java.nio.ByteBuffer.wrap(tiff).order(java.nio.ByteOrder.LITTLE_ENDIAN);
        int changed = 0;
        for (int i = 8; i + 12 < tiff.length; i += 2)
            if ((buffer.getShort(i) == 256 || buffer.getShort(i) == 257 || buffer.getShort(i) == 278)
                    && buffer.getInt(i + 4) == 1) {
                buffer.putInt(i + 8, 900_000);
                changed++;
            }
        assertEquals(3, changed);
        Files.write(folder.resolve("t.tif"), tiff);
        assertTrue(said().contains("at most 512 MiB can be unpacked at once"), said());
    }

    /** Larger than one part: 4200 by 4100 pixels in tiles; the seams between its parts are no seams. */
    @Test
    void largeFilesAreReadInParts() throws IOException {
        double step = 1 / 10_800.0;
        new PaperTiff(4200, 4100, (x, y) -> 1000 + (x * 7 + y * 3) % 2000)
                .tiles(512)
                .deflated()
                .point()
                .at(8, 47, step, step)
                .write(folder.resolve("large.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(1, tiles.tiles().size());
        assertEquals(0, tiles.cache().heldBytes());
        Random random = new Random(20260109);
        for (int i = 0; i < 400; i++) {
            int x = i % 2 == 0 ? 2046 + random.nextInt(4) : random.nextInt(4199);
            int y = i % 3 == 0 ? 2046 + random.nextInt(4) : random.nextInt(4099);
            double fx = random.nextDouble();
            double fy = random.nextDouble();
            double expected = Lattice.bilinear(at(x, y), at(x + 1, y), at(x, y + 1), at(x + 1, y + 1), fx, fy);
            assertEquals(expected, bulk(tiles, 47 - (y + fy) * step, 8 + (x + fx) * step), 1e-4);
        }
        assertTrue(tiles.cache().heldBytes() < 4200L * 4100 * 2 + 100_000);
    }

    private static double at(int x, int y) {
        return 1000 + (x * 7 + y * 3) % 2000;
    }

    private static void assertPlane(TileFolder tiles) {
        Random random = new Random(20260110);
        for (int i = 0; i < 100; i++) {
            double lat = 47 - random.nextDouble() * 38.9 * STEP;
            double lon = 8 + random.nextDouble() * 58.9 * STEP;
            assertEquals(plane(lat, lon), height(tiles, lat, lon), FLOAT_M);
        }
    }

    private void assertSaid(String part, PaperTiff tiff) throws IOException {
        tiff.write(folder.resolve("t.tif"));
        assertTrue(said().contains(part), said());
    }

    private String said() {
        return assertThrows(InputFault.class, () -> TileFolder.open(folder)).getMessage();
    }
}
