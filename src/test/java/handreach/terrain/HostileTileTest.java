package handreach.terrain;

import static handreach.terrain.TileFolderTest.height;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One bad file beside a good one: one line, and the good one answers. The bound is no measurement; what these files did before was not
 * done after a hundred seconds.
 */
@Timeout(value = 60, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class HostileTileTest {
    private static final double STEP = 1 / 1200.0;
    private static final double GROUND_M = 1500;
    private static final double FLOAT_M = 1e-3;

    @TempDir
    Path folder;

    @BeforeEach
    void aGoodTileBeside() throws IOException {
        new PaperTiff(60, 60, (x, y) -> GROUND_M).at(8, 47, STEP, STEP).write(folder.resolve("ground.tif"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"<Item ", "<Item role=\"scale\" ", "<Item>", "</Item>", "<Item role=\"scale\">1"})
    void metadataOfFourMegabytesOfOneWordCostsNoMoreThanItsLength(String word) throws IOException {
        String xml = word.repeat((4 << 20) / word.length() - 1);
        new PaperTiff(60, 60, (x, y) -> 700)
                .at(8.2, 47, STEP, STEP)
                .metadata(xml)
                .write(folder.resolve("a.tif"));
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(700, height(tiles, 46.99, 8.21), FLOAT_M);
        assertEquals("", String.join("\n", tiles.warnings()));
    }

    @ParameterizedTest
    @CsvSource({"true, 4000, has tag 270 twice", "false, 4000, more than 32 MiB of tags", "false, 2, more than 32 MiB"})
    void tagsThatNameTheSameMegabytesOverAndOverAreRefused(boolean isOneTag, int entries, String part)
            throws IOException {
        int tagBytes = 31 << 20;
        int table = 8 + 2 + 12 * entries + 4;
        ByteBuffer head = ByteBuffer.allocate(table).order(ByteOrder.LITTLE_ENDIAN);
        head.putShort((short) 0x4949).putShort((short) 42).putInt(8).putShort((short) entries);
        for (int i = 0; i < entries; i++)
            head.putShort((short) (isOneTag ? 270 : 40_000 + i))
                    .putShort((short) 1)
                    .putInt(isOneTag ? 4096 : tagBytes)
                    .putInt(table);
        Path file = folder.resolve("a.tif");
        Files.write(file, head.array());
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(table + (long) tagBytes);
        }
        assertRefused(part);
    }

    /** The library behind takes metadata apart as XML. */
    @Test
    void metadataWithADocumentTypeIsRefused() throws IOException {
        new PaperTiff(60, 60, (x, y) -> 700)
                .at(8.2, 47, STEP, STEP)
                .metadata(
                        "<!DOCTYPE g [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><GDALMetadata><Item name=\"a\">&x;</Item></GDALMetadata>")
                .write(folder.resolve("a.tif"));
        assertRefused("document type declaration");
    }

    /** Single bits turned in a packed block gave other heights in silence, 29 of 400. */
    @Test
    void aBitTurnedInAPackedBlockIsTold() throws IOException {
        java.util.Random random = new java.util.Random(7);
        Path file = folder.resolve("b/a.tif");
        Files.createDirectories(file.getParent());
        new PaperTiff(60, 60, (x, y) -> 700 + x % 7 + y % 5)
                .deflated()
                .at(8.2, 47, STEP, STEP)
                .write(file);
        byte[] whole = Files.readAllBytes(file);
        TileFolder sound = TileFolder.open(file);
        assertEquals(1, sound.survey(share -> true).size());
        assertEquals("", String.join("\n", sound.warnings()));
        TiffHeader header = TiffHeader.read(file);
        int from = (int) header.number(TiffHeader.STRIP_OFFSETS, 0);
        int bytes = (int) header.number(TiffHeader.STRIP_BYTE_COUNTS, 0);
        int silent = 0;
        for (int i = 0; i < 200; i++) {
            byte[] turned = whole.clone();
            turned[from + random.nextInt(bytes)] ^= (byte) (1 << random.nextInt(8));
            Files.write(file, turned);
            TileFolder tiles = TileFolder.open(file);
            tiles.survey(share -> true);
            // A bit that no height hangs on may pass: those behind the end of the packed stream.
            for (int k = 1; k < 58 && tiles.warnings().isEmpty(); k++)
                if (height(tiles, 47 - k * STEP, 8.2 + k * STEP) != height(sound, 47 - k * STEP, 8.2 + k * STEP)) {
                    silent++;
                    break;
                }
        }
        assertEquals(0, silent);
    }

    @Test
    void aProjectionOf65000LettersIsRefused() throws IOException {
        Files.writeString(folder.resolve("a.asc"), "ncols 2\nnrows 2\nxllcorner 1\nyllcorner 2\ncellsize 1\n1 2 3 4\n");
        Files.writeString(folder.resolve("a.prj"), "w".repeat(65_000));
        assertRefused("not understood");
    }

    @Test
    void aProjectionWithANumberThatIsNoneIsRefused() throws IOException {
        Files.writeString(folder.resolve("a.asc"), "ncols 2\nnrows 2\nxllcorner 1\nyllcorner 2\ncellsize 1\n1 2 3 4\n");
        Files.writeString(folder.resolve("a.prj"), "PROJCS[\"WGS -Infinity / UTM zone 32N\",GEOGCS[\"WGS 84\"]]");
        assertRefused("'Infinity', where a number is expected");
    }

    /** An easting that carries its zone number, a slip of national data; a northing beyond the pole. */
    @ParameterizedTest
    @CsvSource({"32430941, 5150000", "430941, 90000000", "-99000000, 5150000", "430941, -90000000"})
    void aPlaceOutsideItsUtmZoneIsOneLineAndTheOthersWork(double easting, double northing) throws IOException {
        new PaperTiff(20, 20, (x, y) -> 700)
                .keys(1024, 1, 3072, 32632)
                .at(easting, northing, 25, 25)
                .write(folder.resolve("a.tif"));
        assertRefused("not in its UTM zone");
        Files.delete(folder.resolve("a.tif"));
        Files.writeString(
                folder.resolve("a.asc"),
                "ncols 2\nnrows 2\nxllcorner " + easting + "\nyllcorner " + northing + "\ncellsize 25\n1 2\n3 4\n");
        Files.writeString(folder.resolve("a.prj"), "PROJCS[\"WGS_1984_UTM_Zone_32N\",GEOGCS[\"GCS_WGS_1984\"]]");
        assertRefused("not in its UTM zone");
    }

    @ParameterizedTest
    @ValueSource(doubles = {500, 361, -400, 1e6})
    void aLongitudeThatIsNotOnEarthIsOneLineAndTheOthersWork(double longitude) throws IOException {
        new PaperTiff(20, 20, (x, y) -> 700).at(longitude, 47, STEP, STEP).write(folder.resolve("a.tif"));
        assertRefused("not on earth");
    }

    @ParameterizedTest
    @ValueSource(doubles = {181, 350, -181})
    void longitudesRoundTheOtherWayAreUnderstood(double longitude) throws IOException {
        new PaperTiff(20, 20, (x, y) -> 700).at(longitude, 47, STEP, STEP).write(folder.resolve("a.tif"));
        TileFolder tiles = TileFolder.open(folder);
        double lon = Math.IEEEremainder(longitude + 0.01, 360);
        assertEquals(700, height(tiles, 46.99, lon), FLOAT_M);
    }

    @ParameterizedTest
    @ValueSource(ints = {32767, -32767, -9999, 9001, -501})
    void whatIsNoHeightOfGroundIsVoidInEveryFormat(int value) throws IOException {
        Files.delete(folder.resolve("ground.tif"));
        PaperHgt.write(
                folder,
                "N10E020.hgt",
                PaperHgt.bytes(10, 20, PaperHgt.SIDE, (lat, lon) -> lon > 20.5 ? (double) value : 100));
        new PaperTiff(60, 60, (x, y) -> x > 30 ? value : 100)
                .at(30, 11, STEP, STEP)
                .write(folder.resolve("a.tif"));
        new PaperTiff(60, 60, (x, y) -> x > 30 ? value : 100)
                .sample(32, 3)
                .at(40, 11, STEP, STEP)
                .write(folder.resolve("b.tif"));
        StringBuilder text = new StringBuilder("ncols 40\nnrows 4\nxllcorner 50\nyllcorner 10\ncellsize 0.01\n");
        for (int i = 0; i < 160; i++) text.append(i % 40 > 20 ? value : 100).append(i % 40 == 39 ? '\n' : ' ');
        Files.writeString(folder.resolve("c.asc"), text.append('\n'));
        TileFolder tiles = TileFolder.open(folder);
        for (double lon : new double[] {20.4, 30.01, 40.01, 50.1}) {
            double lat = lon > 50 ? 10.02 : 10.99;
            assertEquals(100, tiles.at(new Position(lat, lon)).heightM().orElseThrow(), FLOAT_M);
        }
        for (double lon : new double[] {20.9, 30.045, 40.045, 50.3}) {
            double lat = lon > 50 ? 10.02 : 10.99;
            assertTrue(tiles.at(new Position(lat, lon)).isVoid(), "at " + lon);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {9000, -500})
    void theEndsOfTheRangeAreHeights(int value) throws IOException {
        PaperHgt.write(folder, "N10E020.hgt", PaperHgt.bytes(10, 20, PaperHgt.SIDE, (lat, lon) -> (double) value));
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(value, tiles.at(new Position(10.3, 20.3)).heightM().orElseThrow(), FLOAT_M);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "class [C cannot be cast to class [Ljava.lang.String; (x are in module java.base)|its inside does not fit together",
                "java.util.zip.DataFormatException: oversubscribed dynamic bit lengths tree|oversubscribed dynamic bit lengths tree",
                "disk N46E008.SRTMGL1.hgt is gone|disk N46E008.SRTMGL1.hgt is gone"
            })
    void reasonsSpeakNoJava(String said, String told) {
        Exception failure = said.startsWith("class") ? new ClassCastException(said) : new IOException(said);
        assertEquals(told, TileFiles.reason(failure));
        assertFalse(TileFiles.reason(new NullPointerException("because \"<local4>\" is null"))
                .contains("local4"));
    }

    private void assertRefused(String part) {
        TileFolder tiles = TileFolder.open(folder);
        assertEquals(GROUND_M, height(tiles, 46.99, 8.01), FLOAT_M);
        assertEquals(1, tiles.survey(share -> true).size());
        assertEquals(1, tiles.warnings().size(), String.join("\n", tiles.warnings()));
        String told = tiles.warnings().get(0);
        assertTrue(told.startsWith("a.") && told.contains(part), told.substring(0, Math.min(300, told.length())));
        assertEquals(1, told.lines().count());
    }
}
