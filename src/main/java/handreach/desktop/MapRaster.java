package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.reach.CellGrid;
import java.nio.IntBuffer;
import java.util.Optional;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/**
 * Relief with a layer laid on it, in the pixels of the relief: one opaque picture that the screen need only copy. Composed away
 * from the screen thread, then never changed.
 */
final class MapRaster {
    /** Steps of strength and opacity. */
    private static final int FULL = 256;

    private static final float EDGE_PX = 1.2f;

    private final MapFrame frame;
    private final int[] argb;
    private final int widthPx;

    private MapRaster(MapFrame frame, int[] argb) {
        this.frame = frame;
        this.argb = argb;
        this.widthPx = frame.widthPx();
    }

    /**
     * How a layer is laid on the relief.
     *
     * @param strength 0 leaves the relief alone, 1 lays the layer on in full
     * @param darkens whether the layer darkens the relief as ink does paper, so that its shade stays visible; else it covers it
     * @param edgeArgb colour of the layer's outline
     * @param backdrop how strongly a map picture stands against the relief, 0 to 1
     */
    record Manner(double strength, boolean darkens, int edgeArgb, double backdrop) {
        /** A pixel of the ground with ink on it, 0xAARRGGBB. */
        int laid(int paper, int ink) {
            if (ink == 0) return paper;
            int share = (int) Math.round(FULL * strength);
            return darkens ? darkened(paper, ink, share) : covered(paper, ink, share);
        }
    }

    /** Lays a layer on the relief, and its outline on both. */
    static MapRaster of(Relief relief, Optional<LayerRaster> overlay, Manner manner) {
        MapFrame frame = relief.frame();
        try (RasterPen pen = new RasterPen(frame)) {
            relief.copyTo(pen.argb(), manner.backdrop());
            overlay.ifPresent(layer -> {
                lay(layer, frame, manner, pen.argb());
                layer.outline().ifPresent(edge -> pen.rim(edge, manner.edgeArgb(), EDGE_PX));
            });
            return new MapRaster(frame, pen.argb());
        }
    }

    private static void lay(LayerRaster layer, MapFrame frame, Manner manner, int[] argb) {
        CellGrid grid = layer.grid();
        int share = (int) Math.round(FULL * manner.strength());
        int[] column = new int[frame.widthPx()];
        for (int x = 0; x < column.length; x++) column[x] = column(grid, frame.longitudeDeg(x + 0.5));
        for (int y = 0; y < frame.heightPx(); y++) {
            int row = (int) Math.floor((grid.northDeg() - frame.latitudeDeg(y + 0.5)) / grid.latitudeStepDeg());
            if (row < 0 || row >= grid.rows()) continue;
            int first = y * column.length;
            for (int x = 0; x < column.length; x++) {
                if (column[x] < 0) continue;
                int ink = layer.argb(row * grid.columns() + column[x]);
                if (ink == 0) continue;
                int paper = argb[first + x];
                argb[first + x] = manner.darkens() ? darkened(paper, ink, share) : covered(paper, ink, share);
            }
        }
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
        return argb[yPx * widthPx + xPx];
    }

    Image image() {
        return new WritableImage(new PixelBuffer<>(
                frame.widthPx(), frame.heightPx(), IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance()));
    }
}
