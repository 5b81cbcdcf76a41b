package handreach.report.draw;

import handreach.cartography.Hatch;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** The lines of an area pattern over a window, anchored to the page so that neighbours match. */
public final class HatchLines {
    public static final double WIDTH_PX = 1.1;

    private HatchLines() {}

    public static Path2D over(Rectangle2D window, Hatch hatch) {
        Path2D lines = new Path2D.Double();
        switch (hatch) {
            case NONE -> {
                return lines;
            }
            case LEVEL -> level(lines, window);
            case UPRIGHT -> upright(lines, window);
            case RISING -> slanted(lines, window, 1);
            case FALLING -> slanted(lines, window, -1);
            case CROSSED -> {
                slanted(lines, window, 1);
                slanted(lines, window, -1);
            }
            case DOTS -> dots(lines, window);
            case GRID -> {
                level(lines, window);
                upright(lines, window);
            }
            case ZIGZAG -> zigzag(lines, window);
            case DASHED -> dashed(lines, window);
        }
        return lines;
    }

    private static double first(double from) {
        return Math.floor(from / Hatch.SPACING_PX) * Hatch.SPACING_PX;
    }

    private static void level(Path2D lines, Rectangle2D w) {
        for (double y = first(w.getMinY()); y <= w.getMaxY(); y += Hatch.SPACING_PX)
            add(lines, w.getMinX(), y, w.getMaxX(), y);
    }

    private static void upright(Path2D lines, Rectangle2D w) {
        for (double x = first(w.getMinX()); x <= w.getMaxX(); x += Hatch.SPACING_PX)
            add(lines, x, w.getMinY(), x, w.getMaxY());
    }

    private static void slanted(Path2D lines, Rectangle2D w, int sense) {
        double h = w.getHeight();
        double start = sense > 0 ? w.getMinX() + w.getMinY() : w.getMinX() - w.getMaxY();
        for (double k = first(start); k <= start + w.getWidth() + h; k += Hatch.SPACING_PX) {
            if (sense > 0) add(lines, k - w.getMinY(), w.getMinY(), k - w.getMaxY(), w.getMaxY());
            else add(lines, k + w.getMinY(), w.getMinY(), k + w.getMaxY(), w.getMaxY());
        }
    }

    private static void dots(Path2D lines, Rectangle2D w) {
        for (double y = first(w.getMinY()); y <= w.getMaxY(); y += Hatch.SPACING_PX)
            for (double x = first(w.getMinX()); x <= w.getMaxX(); x += Hatch.SPACING_PX) add(lines, x, y, x + 1.4, y);
    }

    private static void zigzag(Path2D lines, Rectangle2D w) {
        double half = Hatch.SPACING_PX / 2.0;
        for (double y = first(w.getMinY()); y <= w.getMaxY(); y += Hatch.SPACING_PX)
            for (double x = first(w.getMinX()); x <= w.getMaxX(); x += Hatch.SPACING_PX) {
                add(lines, x, y + half, x + half, y);
                add(lines, x + half, y, x + 2 * half, y + half);
            }
    }

    /** Rows of dashes, every other one moved by half a step. */
    private static void dashed(Path2D lines, Rectangle2D w) {
        double step = 2 * Hatch.SPACING_PX;
        for (double y = first(w.getMinY()); y <= w.getMaxY(); y += Hatch.SPACING_PX) {
            double moved = Math.floorMod(Math.round(y / Hatch.SPACING_PX), 2) * Hatch.SPACING_PX;
            for (double x = Math.floor(w.getMinX() / step) * step - moved; x <= w.getMaxX(); x += step)
                add(lines, x, y, x + Hatch.SPACING_PX + 1, y);
        }
    }

    private static void add(Path2D lines, double x0, double y0, double x1, double y1) {
        lines.moveTo(x0, y0);
        lines.lineTo(x1, y1);
    }
}
