package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One byte turned inside what is packed: whatever has a checksum tells it, and what is sound beside it stays. */
class DamagedBlocksTest {
    private static final double STEP = 1 / 1200.0;
    private static final int SIDE = 48;
    private static final int BLOCK = 16;

    @TempDir
    Path folder;

    /** Heights without a rule, so that hardly anything can be packed away. */
    private static double rough(int x, int y) {
        return 600 + (x * 7919 + y * 104_729) % 211;
    }

    private static PaperTiff packed(String packing) {
        PaperTiff tiff = new PaperTiff(SIDE, SIDE, DamagedBlocksTest::rough).at(8, 47, STEP, STEP);
        return packing.equals("ZSTD") ? tiff.zstd() : tiff.deflated();
    }

    private static double[] heights(Posts posts) {
        double[] all = new double[posts.rows() * posts.columns()];
        for (int i = 0; i < all.length; i++) all[i] = posts.at(i / posts.columns(), i % posts.columns());
        return all;
    }

    private static PostSource source(Path file) throws IOException {
        return GeoTiffTile.drafts(file).get(0).source();
    }

    /** Every byte of the fifth of nine blocks, each by one bit. */
    @ParameterizedTest
    @ValueSource(strings = {"Deflate", "ZSTD"})
    void aDamagedBlockIsVoidAndTheOthersStand(String packing) throws IOException {
        Path file = packed(packing).tiles(BLOCK).write(folder.resolve("a.tif"));
        double[] sound = heights(source(file).read());
        for (int i = 0; i < sound.length; i++) assertEquals(rough(i % SIDE, i / SIDE), sound[i]);
        byte[] whole = Files.readAllBytes(file);
        TiffHeader header = TiffHeader.read(file);
        int from = (int) header.numbers(TiffHeader.TILE_OFFSETS)[4];
        int bytes = (int) header.numbers(TiffHeader.TILE_BYTE_COUNTS)[4];
        assertTrue(bytes > 100, bytes + " bytes");
        Random random = new Random(3);
        int told = 0;
        for (int at = from; at < from + bytes; at++) {
            byte[] turned = whole.clone();
            turned[at] ^= (byte) (1 << random.nextInt(8));
            Files.write(file, turned);
            PostSource source = source(file);
            double[] now = heights(source.read());
            boolean isLost = source.missing().isPresent();
            if (isLost) told++;
            for (int i = 0; i < now.length; i++) {
                boolean isInside = i % SIDE / BLOCK == 1 && i / SIDE / BLOCK == 1;
                assertEquals(isInside && isLost ? Double.NaN : sound[i], now[i], packing + " byte " + (at - from));
            }
            if (isLost)
                assertEquals(
                        "a.tif: holds other than its checksum says in 1 of 9 blocks (5): it was damaged on the way."
                                + " Fetch it again. What lies there is unknown.",
                        source.missing().get());
        }
        assertTrue(told > bytes * 0.98, told + " of " + bytes);
    }

    @ParameterizedTest
    @CsvSource({"Deflate,3", "Deflate,1", "ZSTD,3"})
    void severalDamagedStripsAreToldInOneLine(String packing, int rows) throws IOException {
        Path file = packed(packing).strips(rows).write(folder.resolve("a.tif"));
        byte[] bytes = Files.readAllBytes(file);
        double[] offsets = TiffHeader.read(file).numbers(TiffHeader.STRIP_OFFSETS);
        for (int strip : new int[] {0, 7, 8}) bytes[(int) offsets[strip] + 20] ^= 4;
        Files.write(file, bytes);
        TileFolder tiles = TileFolder.open(file);
        for (int row = 0; row < SIDE; row++) {
            boolean isLost = List.of(0, 7, 8).contains(row / rows);
            // Two or three rows over the whole width are no small hole.
            assertEquals(isLost, tiles.at(position(row)).isVoid(), "row " + row);
        }
        assertEquals(1, tiles.warnings().size(), tiles.warnings() + "");
        assertTrue(
                tiles.warnings().get(0).contains("in 3 of " + SIDE / rows + " blocks (1, 8, 9)"),
                tiles.warnings() + "");
    }

    private static handreach.geodesy.Position position(int row) {
        return new handreach.geodesy.Position(47 - (row + 0.5) * STEP, 8 + 20.5 * STEP);
    }

    /** Damage all over is told in one line, and looking for what is sound ends. */
    @Test
    void nothingIsTrustedWhereHundredsOfBlocksAreDamaged() throws IOException {
        Path file = new PaperTiff(SIDE, 4000, DamagedBlocksTest::rough)
                .deflated()
                .strips(1)
                .at(8, 47, STEP, STEP / 10)
                .write(folder.resolve("a.tif"));
        byte[] bytes = Files.readAllBytes(file);
        for (double offset : TiffHeader.read(file).numbers(TiffHeader.STRIP_OFFSETS)) bytes[(int) offset + 20] ^= 4;
        Files.write(file, bytes);
        TileFolder tiles = TileFolder.open(file);
        long began = System.nanoTime();
        assertTrue(tiles.at(new handreach.geodesy.Position(46.9, 8.01)).isVoid());
        assertTrue(System.nanoTime() - began < 20e9, "took " + (System.nanoTime() - began) / 1e9 + " s");
        assertEquals(1, tiles.warnings().size());
        assertTrue(tiles.warnings().get(0).endsWith("Its ground is unknown."), tiles.warnings() + "");
    }

    /** Without a checksum nobody can tell what else is damaged, so that what is noticed condemns the whole. */
    @Test
    void zstdWithoutAChecksumIsTrustedAsAWholeOrNotAtAll() throws IOException {
        Path file = packed("ZSTD").tiles(BLOCK).write(folder.resolve("a.tif"));
        TiffHeader header = TiffHeader.read(file);
        byte[] bytes = Files.readAllBytes(file);
        double[] offsets = header.numbers(TiffHeader.TILE_OFFSETS);
        double[] counts = header.numbers(TiffHeader.TILE_BYTE_COUNTS);
        for (int block = 0; block < offsets.length; block++) {
            // A frame without the flag ends four bytes earlier.
            bytes[(int) offsets[block] + 4] &= ~4;
            int countAt = find(bytes, (int) counts[block]);
            assertTrue(countAt > 0);
        }
        Files.write(file, bytes);
        PostSource source = source(file);
        assertFalse(assertFault(source::read).isBlank());
        assertEquals(java.util.Optional.empty(), source.missing());
    }

    private static int find(byte[] bytes, int count) {
        for (int i = 0; i + 4 <= bytes.length; i++)
            if (java.nio.ByteBuffer.wrap(bytes, i, 4)
                            .order(java.nio.ByteOrder.LITTLE_ENDIAN)
                            .getInt()
                    == count) return i;
        return -1;
    }

    private static String assertFault(Runnable read) {
        try {
            read.run();
        } catch (InputFault fault) {
            return fault.getMessage();
        }
        throw new AssertionError("read in silence");
    }

    @ParameterizedTest
    @ValueSource(strings = {"gz", "zip"})
    void aTurnedByteInAPackedTileIsTold(String packing) throws IOException {
        double[] line = new double[PaperHgt.SIDE];
        for (int i = 0; i < line.length; i++) line[i] = 700 + i * 7919 % 211;
        byte[] data = PaperHgt.bytes(46, 8, PaperHgt.SIDE, (lat, lon) -> line[(int) Math.rint((lon - 8) * 1200)]);
        byte[] whole = packing.equals("gz") ? PaperHgt.gzipped(data) : PaperHgt.zipped("N46E008.hgt", data);
        String name = "N46E008.hgt." + packing;
        Path file = PaperHgt.write(folder, name, whole);
        double[] sound = heights(HgtTile.draft(file).source().read());
        Random random = new Random(9);
        // Of the heads hardly a byte belongs to the data.
        int from = packing.equals("gz") ? 10 : 30 + "N46E008.hgt".length();
        int to = packing.equals("gz") ? whole.length : whole.length - 100;
        UnaryOperator<byte[]> turn = bytes -> {
            bytes[from + random.nextInt(to - from)] ^= (byte) (1 << random.nextInt(8));
            return bytes;
        };
        int told = 0;
        for (int i = 0; i < 60; i++) {
            Files.write(file, turn.apply(whole.clone()));
            try {
                assertArrayEquals(sound, heights(HgtTile.draft(file).source().read()), packing + " turn " + i);
            } catch (InputFault fault) {
                told++;
                assertTrue(fault.getMessage().startsWith(name + ": "), fault.getMessage());
                assertEquals(1, fault.getMessage().lines().count());
            }
        }
        assertTrue(told > 55, told + " of 60");
    }

    @Test
    void aDamagedBlockOfALandCoverMapIsUnknownAndTheOthersStand() throws IOException {
        Path file = new PaperTiff(SIDE, SIDE, (x, y) -> (x * 7 + y * 3) % 5 < 2 ? 10 : 50)
                .sample(8, 1)
                .deflated()
                .tiles(BLOCK)
                .at(8, 47, STEP, STEP)
                .write(folder.resolve("c.tif"));
        byte[] bytes = Files.readAllBytes(file);
        bytes[(int) TiffHeader.read(file).numbers(TiffHeader.TILE_OFFSETS)[4] + 20] ^= 4;
        Files.write(file, bytes);
        CoverRaster cover = CoverRaster.open(file, CoverLegend.WORLD_COVER, Cover.OPEN);
        for (int i = 0; i < SIDE * SIDE; i++) {
            int x = i % SIDE;
            int y = i / SIDE;
            Cover there = x / BLOCK == 1 && y / BLOCK == 1
                    ? Cover.OPEN
                    : (x * 7 + y * 3) % 5 < 2 ? Cover.WOODLAND : Cover.SUBURBAN;
            assertEquals(there, cover.coverAt(47 - (y + 0.5) * STEP, 8 + (x + 0.5) * STEP), x + ", " + y);
        }
        assertEquals(1, cover.warnings().size(), cover.warnings() + "");
        assertTrue(cover.warnings().get(0).contains("in 1 of 9 blocks (5)"), cover.warnings() + "");
    }
}
