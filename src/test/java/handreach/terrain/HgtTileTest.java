package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HgtTileTest {
    private static final byte[] FLAT = PaperHgt.bytes(10, 20, PaperHgt.SIDE, (lat, lon) -> 300);

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "N34W119.hgt,34,-119",
        "S01E012.hgt,-1,12",
        "n46e008.hgt.zip,46,8",
        "N46E008.SRTMGL1.hgt.zip,46,8",
        "NASADEM_HGT_n37w105.zip,37,-105",
        "S90W180.hgt,-90,-180",
        "N7E12.hgt,7,12"
    })
    void theNameIsTheSouthWestPost(String name, int southDeg, int westDeg) {
        assertEquals(new HgtName(southDeg, westDeg), HgtName.of(name).orElseThrow());
    }

    @ParameterizedTest
    @CsvSource({"N90E000.hgt", "N10E180.hgt", "S91W000.hgt", "tile.hgt", "N10.hgt", "N100E0200.hgt"})
    void namesThatTellNoPlaceAreRefused(String name) {
        assertTrue(HgtName.of(name).isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"0", "2884800", "2884804", "12967201", "25934404"})
    void otherSizesAreRefused(int size) throws IOException {
        PaperHgt.write(folder, "N10E020.hgt", new byte[size]);
        assertTrue(said().contains("holds " + size + " bytes, but an .hgt file has 2884802 bytes"), said());
    }

    @Test
    void anArchiveBombIsNotInflated() throws IOException {
        byte[] bomb = new byte[1 << 20];
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("N10E020.hgt"));
            for (int i = 0; i < 200; i++) zip.write(bomb);
            zip.closeEntry();
        }
        PaperHgt.write(folder, "N10E020.hgt.zip", out.toByteArray());
        assertTrue(said().contains("holds 209715200 bytes"), said());
    }

    /** The directory of the archive claims a right size, but the stream goes on. */
    @Test
    void anArchiveThatLiesAboutItsSizeIsCutOff() throws IOException {
        byte[] zip = PaperHgt.zipped("N10E020.hgt", new byte[40 << 20]);
        replaceInt(zip, 40 << 20, FLAT.length);
        PaperHgt.write(folder, "N10E020.hgt.zip", zip);
        assertBroken("N10E020.hgt.zip");

        byte[] gzip = PaperHgt.gzipped(new byte[40 << 20]);
        ByteBuffer.wrap(gzip).order(ByteOrder.LITTLE_ENDIAN).putInt(gzip.length - 4, FLAT.length);
        PaperHgt.write(folder, "N10E020.hgt.gz", gzip);
        assertBroken("N10E020.hgt.gz");
    }

    @Test
    void aShortStreamIsReported() throws IOException {
        byte[] gzip = PaperHgt.gzipped(new byte[1000]);
        ByteBuffer.wrap(gzip).order(ByteOrder.LITTLE_ENDIAN).putInt(gzip.length - 4, FLAT.length);
        PaperHgt.write(folder, "N10E020.hgt.gz", gzip);
        assertBroken("N10E020.hgt.gz");
    }

    @Test
    void aFlippedBitIsFoundByTheChecksum() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.setLevel(0);
            zip.putNextEntry(new ZipEntry("N10E020.hgt"));
            zip.write(FLAT);
            zip.closeEntry();
        }
        byte[] zip = out.toByteArray();
        zip[zip.length / 2] ^= 1;
        PaperHgt.write(folder, "N10E020.hgt.zip", zip);
        assertBroken("N10E020.hgt.zip");
    }

    @ParameterizedTest
    @CsvSource({"../N10E020.hgt", "/etc/N10E020.hgt", "a/N10E020.hgt", "..\\N10E020.hgt", "C:N10E020.hgt"})
    void entriesWithAPathAreRefused(String entry) throws IOException {
        PaperHgt.write(folder, "N10E020.hgt.zip", PaperHgt.zipped(entry, FLAT));
        assertTrue(said().contains("a plain name is expected"), said());
    }

    @Test
    void archivesWithoutOneTileAreRefused() throws IOException {
        PaperHgt.write(folder, "N10E020.hgt.zip", PaperHgt.zipped("readme.txt", FLAT));
        assertTrue(said().contains("holds no .hgt file"), said());
        PaperHgt.write(folder, "N10E020.hgt.zip", new byte[] {1, 2, 3});
        assertTrue(said().contains("is not a whole zip file"), said());
        byte[] whole = PaperHgt.zipped("N10E020.hgt", FLAT);
        PaperHgt.write(folder, "N10E020.hgt.zip", java.util.Arrays.copyOf(whole, whole.length / 2));
        assertTrue(said().contains("is not a whole zip file"), said());
    }

    private void assertBroken(String name) {
        TileFolder tiles = TileFolder.open(folder.resolve(name));
        assertTrue(tiles.at(new Position(10.5, 20.5)).isVoid());
        assertEquals(1, tiles.warnings().size());
        assertTrue(
                tiles.warnings().get(0).startsWith(name + ": "),
                tiles.warnings().get(0));
        assertTrue(
                tiles.warnings().get(0).endsWith("Its ground is unknown."),
                tiles.warnings().get(0));
    }

    private static void replaceInt(byte[] data, int old, int now) {
        ByteBuffer buffer = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
        int found = 0;
        for (int i = 0; i + 4 <= data.length; i++)
            if (buffer.getInt(i) == old) {
                buffer.putInt(i, now);
                found++;
            }
        assertTrue(found > 0, "the size stands in the archive");
    }

    private String said() {
        return assertThrows(InputFault.class, () -> TileFolder.open(folder)).getMessage();
    }
}
