package handreach.terrain;

import java.awt.Rectangle;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;

/** What the heads of ZSTD frames (RFC 8878) say; the library that unpacks them looks at the checksum of those that have one. */
final class ZstdFrames {
    /** Magic number of a frame, little-endian. */
    private static final int MAGIC = 0xFD2FB528;
    /** Content checksum flag of the frame header descriptor. */
    private static final int CHECKSUM = 1 << 2;

    private static final int HEAD_BYTES = 5;

    private ZstdFrames() {}

    /** Whether the blocks under a part of an image have one: most, as the head of a damaged block may not say so. */
    static boolean areChecked(Path file, TiffBlocks blocks, Rectangle part) {
        Rectangle under = blocks.under(part);
        int checked = 0;
        int others = 0;
        try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
            for (int row = under.y; row < under.y + under.height; row++)
                for (int column = under.x; column < under.x + under.width; column++) {
                    int block = blocks.number(column, row);
                    if (blocks.bytes(block) == 0) continue;
                    if (isChecked(in, blocks.offset(block), blocks.bytes(block))) checked++;
                    else others++;
                }
            return checked > others;
        } catch (IOException e) {
            return false;
        }
    }

    private static boolean isChecked(RandomAccessFile in, long offset, long bytes) throws IOException {
        if (bytes < HEAD_BYTES) return false;
        in.seek(offset);
        return Integer.reverseBytes(in.readInt()) == MAGIC && (in.readUnsignedByte() & CHECKSUM) != 0;
    }
}
