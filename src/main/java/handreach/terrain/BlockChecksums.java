package handreach.terrain;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * The checksum behind each block that is packed by Deflate (RFC 1950, Adler-32). The library that unpacks an image stops when it has all
 * pixels, which is before the checksum, so that single turned bits were taken for ground. ZSTD blocks are checked by their own library
 * where they carry one.
 */
final class BlockChecksums {
    private final Path file;
    private final double[] offsets;
    private final double[] counts;
    private final int blockWidth;
    private final int blockHeight;
    private final int across;
    private final long blockBytes;

    /** @param blockBytes size of a whole block, unpacked */
    BlockChecksums(
            Path file, double[][] offsetsAndCounts, long blockWidth, long blockHeight, int width, long blockBytes) {
        this.file = file;
        this.offsets = offsetsAndCounts[0];
        this.counts = offsetsAndCounts[1];
        this.blockWidth = (int) Math.min(Integer.MAX_VALUE, blockWidth);
        this.blockHeight = (int) Math.min(Integer.MAX_VALUE, blockHeight);
        this.across = (int) ((width + blockWidth - 1) / blockWidth);
        this.blockBytes = blockBytes;
    }

    /** Number of the first block under a part of the image whose checksum does not match what it holds, from 1; 0 if all do. */
    int firstBroken(int x, int y, int columns, int rows) throws IOException {
        try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
            for (int row = y / blockHeight; row <= (y + rows - 1) / blockHeight; row++)
                for (int column = x / blockWidth; column <= (x + columns - 1) / blockWidth; column++) {
                    int block = row * across + column;
                    if (isBroken(in, block)) return block + 1;
                }
        }
        return 0;
    }

    /** A block that is not there at all, as sparse files have them, is left to the library. */
    private boolean isBroken(RandomAccessFile in, int block) throws IOException {
        long left = (long) counts[block];
        if (left == 0) return false;
        in.seek((long) offsets[block]);
        byte[] packed = new byte[(int) Math.min(left, 1 << 16)];
        byte[] unpacked = new byte[1 << 16];
        Inflater inflater = new Inflater();
        try {
            while (!inflater.finished()) {
                // Some writers fill the last strip up to its full height; far more is no block of this image.
                if (inflater.getBytesWritten() > 4 * blockBytes + unpacked.length) return true;
                if (inflater.needsInput()) {
                    int got = left <= 0 ? -1 : in.read(packed, 0, (int) Math.min(left, packed.length));
                    if (got <= 0) return true;
                    left -= got;
                    inflater.setInput(packed, 0, got);
                }
                if (inflater.inflate(unpacked) == 0 && inflater.needsDictionary()) return true;
            }
            return false;
        } catch (DataFormatException e) {
            return true;
        } finally {
            inflater.end();
        }
    }
}
