package handreach.terrain;

import java.awt.Rectangle;
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
    private final TiffBlocks blocks;
    private final long blockBytes;

    /** @param blockBytes size of a whole block, unpacked */
    BlockChecksums(Path file, TiffBlocks blocks, long blockBytes) {
        this.file = file;
        this.blocks = blocks;
        this.blockBytes = blockBytes;
    }

    /** The first block under a part of the image whose checksum does not match what it holds; negative if all do. */
    int firstBroken(Rectangle part) throws IOException {
        Rectangle under = blocks.under(part);
        try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
            for (int row = under.y; row < under.y + under.height; row++)
                for (int column = under.x; column < under.x + under.width; column++) {
                    int block = blocks.number(column, row);
                    if (isBroken(in, block)) return block;
                }
        }
        return -1;
    }

    /** A block that is not there at all, as sparse files have them, is left to the library. */
    private boolean isBroken(RandomAccessFile in, int block) throws IOException {
        long left = blocks.bytes(block);
        if (left == 0) return false;
        in.seek(blocks.offset(block));
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
