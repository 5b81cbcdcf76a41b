package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.reach.CellGrid;
import java.nio.IntBuffer;
import java.util.Optional;
import java.util.stream.IntStream;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/**
 * Relief with a layer laid on it, in the pixels of the relief: one opaque picture that the screen need only copy. Composed away
 * from the screen thread, then never changed.
 */
final class MapSheet {
    /** Steps of strength and opacity. */
    private static final int FULL = 256;

    private final MapFrame frame;
    private final int[] argb;

    private MapSheet(MapFrame frame, int[] argb) {
        this.frame = frame;
        this.argb = argb;
    }

    /**
     * Lays a layer on the relief.
     *
     * @param strength 0 leaves the relief alone, 1 lays the layer on in full
     * @param darkens whether the layer darkens the relief as ink does paper, so that its shade stays visible; else it covers it
     */
    static MapSheet of(Relief relief, Optional<Overlay> overlay, double strength, boolean darkens) {
        MapFrame frame = relief.frame();
        int[] argb = relief.copy();
        if (overlay.isEmpty()) return new MapSheet(frame, argb);
        CellGrid grid = overlay.get().grid();
        int share = (int) Math.round(FULL * strength);
        int[] column = new int[frame.widthPx()];
        for (int x = 0; x < column.length; x++) column[x] = column(grid, frame.longitudeDeg(x + 0.5));
        IntStream.range(0, frame.heightPx()).parallel().forEach(y -> {
            int row = (int) Math.floor((grid.northDeg() - frame.latitudeDeg(y + 0.5)) / grid.latitudeStepDeg());
            if (row < 0 || row >= grid.rows()) return;
            int first = y * column.length;
            for (int x = 0; x < column.length; x++) {
                if (column[x] < 0) continue;
                int ink = overlay.get().argb(row * grid.columns() + column[x]);
                if (ink == 0) continue;
                argb[first + x] =
                        darkens ? darkened(argb[first + x], ink, share) : covered(argb[first + x], ink, share);
            }
        });
        return new MapSheet(frame, argb);
    }

    private static int column(CellGrid grid, double longitudeDeg) {
        double east = (longitudeDeg - grid.westDeg()) % 360;
        if (east < 0) east += 360;
        double column = Math.floor(east / grid.longitudeStepDeg());
        return column < grid.columns() ? (int) column : -1;
    }

    /** Ink is premultiplied; paper times one less what the ink takes away. */
    private static int darkened(int paper, int ink, int share) {
        int opacity = ink >>> 24;
        int out = 0xFF000000;
        for (int shift = 0; shift <= 16; shift += 8) {
            int taken = share * (opacity - (ink >> shift & 0xFF)) / 255;
            out |= ((paper >> shift & 0xFF) * (FULL - taken) / FULL) << shift;
        }
        return out;
    }

    private static int covered(int paper, int ink, int share) {
        int opacity = ink >>> 24;
        int out = 0xFF000000;
        for (int shift = 0; shift <= 16; shift += 8) {
            int left = (paper >> shift & 0xFF) * (FULL * 255 - share * opacity) / 255;
            out |= ((left + share * (ink >> shift & 0xFF)) / FULL) << shift;
        }
        return out;
    }

    MapFrame frame() {
        return frame;
    }

    int argb(int xPx, int yPx) {
        return argb[yPx * frame.widthPx() + xPx];
    }

    Image image() {
        return new WritableImage(new PixelBuffer<>(
                frame.widthPx(), frame.heightPx(), IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance()));
    }
}
