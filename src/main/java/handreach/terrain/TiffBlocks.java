package handreach.terrain;

import java.awt.Rectangle;

/** Where the blocks of an image, tiles or strips, stand in its file and on its plane; numbered row by row from 0. */
final class TiffBlocks {
    private final double[] offsets;
    private final double[] counts;
    private final int width;
    private final int blockWidth;
    private final int blockHeight;
    private final int across;

    /** @param width of the image, pixels, as are the sides of a block */
    TiffBlocks(double[] offsets, double[] counts, long blockWidth, long blockHeight, int width) {
        this.offsets = offsets;
        this.counts = counts;
        this.width = width;
        this.blockWidth = (int) Math.min(Integer.MAX_VALUE, blockWidth);
        this.blockHeight = (int) Math.min(Integer.MAX_VALUE, blockHeight);
        this.across = (int) ((width + blockWidth - 1) / blockWidth);
    }

    /** First byte of a block in the file. */
    long offset(int block) {
        return (long) offsets[block];
    }

    /** Bytes of a block in the file; 0 where it is not there at all, as in sparse files. */
    long bytes(int block) {
        return (long) counts[block];
    }

    int count(int height) {
        return across * ((height - 1) / blockHeight + 1);
    }

    /** Columns and rows of blocks under a part of the image. */
    Rectangle under(Rectangle part) {
        int left = part.x / blockWidth;
        int top = part.y / blockHeight;
        return new Rectangle(
                left,
                top,
                (part.x + part.width - 1) / blockWidth - left + 1,
                (part.y + part.height - 1) / blockHeight - top + 1);
    }

    int number(int column, int row) {
        return row * across + column;
    }

    /** The pixels of a rectangle of blocks; the last ones may reach beyond the image below. */
    Rectangle pixels(Rectangle some) {
        long x = (long) some.x * blockWidth;
        long y = (long) some.y * blockHeight;
        return new Rectangle((int) x, (int) y, (int) Math.min(width - x, (long) some.width * blockWidth), (int)
                Math.min(Integer.MAX_VALUE - y, (long) some.height * blockHeight));
    }
}
