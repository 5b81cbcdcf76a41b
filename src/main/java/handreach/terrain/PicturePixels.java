package handreach.terrain;

import java.awt.image.BufferedImage;

/** Pixels of a picture in memory, asked between their centres. */
final class PicturePixels {
    private static final int SEEN = 0x80;

    private final int width;
    private final int height;
    private final int[] argb;

    private PicturePixels(int width, int height, int[] argb) {
        this.width = width;
        this.height = height;
        this.argb = argb;
    }

    static PicturePixels of(BufferedImage image) {
        int width = image.getWidth();
        int height = image.getHeight();
        return new PicturePixels(width, height, image.getRGB(0, 0, width, height, null, 0, width));
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** The colour at a place, whole numbers being the corners of pixels; 0 where the nearest pixel is clear. The edge goes on outside. */
    int at(double x, double y) {
        double left = Math.max(0, Math.min(width - 1.0, x - 0.5));
        double top = Math.max(0, Math.min(height - 1.0, y - 0.5));
        int column = Math.min(width - 2, (int) left);
        int row = Math.min(height - 2, (int) top);
        if (column < 0 || row < 0) return opaque(argb[0]);
        int first = row * width + column;
        int nw = argb[first];
        int ne = argb[first + 1];
        int sw = argb[first + width];
        int se = argb[first + width + 1];
        int right = (int) (256 * (left - column));
        int down = (int) (256 * (top - row));
        boolean isWhole = (nw >>> 24 & ne >>> 24 & sw >>> 24 & se >>> 24) >= SEEN;
        if (!isWhole) return opaque(down < 128 ? right < 128 ? nw : ne : right < 128 ? sw : se);
        int out = 0xFF000000;
        for (int shift = 0; shift <= 16; shift += 8) {
            int upper = (nw >> shift & 0xFF) * (256 - right) + (ne >> shift & 0xFF) * right;
            int lower = (sw >> shift & 0xFF) * (256 - right) + (se >> shift & 0xFF) * right;
            out |= (upper * (256 - down) + lower * down >> 16) << shift;
        }
        return out;
    }

    private static int opaque(int colour) {
        return colour >>> 24 >= SEEN ? 0xFF000000 | colour : 0;
    }
}
