package handreach.cartography;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;

/**
 * Where names stand beside their marks: at the first of eight places round the mark that covers nothing, or where all are taken at
 * the one that covers least. Whoever asks first chooses first, so the same questions get the same places. All in pixels, y
 * downwards; the boxes of all marks, and of what else lies on the map, are given before the first name is placed.
 */
public final class LabelPlacement {
    /** Clear ground between a mark and its name beside it, px. */
    private static final double BESIDE_PX = 5;
    /** The same above and below, where a line of text brings room of its own. */
    private static final double ABOVE_PX = 2;

    private static final double NOTHING_PX2 = 1e-6;
    /** Share of a lesser name that may lie over marks and lines. */
    private static final double LESSER_OVER = 0.2;
    /** How much farther off, in heights of a name, it is tried where all places beside a mark are taken. */
    private static final double FARTHER = 0.8;
    /** The same where each place so near is crossed by a line. */
    private static final double FARTHEST = 1.8;
    /** How wide a line is that is kept free, px. */
    private static final double LINE_PX = 6;

    /** In the order in which they are tried, by the way from the mark: 1 is right or down. */
    private enum Side {
        RIGHT(1, 0),
        UPPER_RIGHT(1, -1),
        LOWER_RIGHT(1, 1),
        LEFT(-1, 0),
        UPPER_LEFT(-1, -1),
        LOWER_LEFT(-1, 1),
        ABOVE(0, -1),
        BELOW(0, 1);

        private final int right;
        private final int down;

        Side(int right, int down) {
            this.right = right;
            this.down = down;
        }

        Envelope box(Envelope mark, double widthPx, double heightPx) {
            double x = beside(mark.getMinX(), mark.getMaxX(), widthPx, right, down == 0 ? BESIDE_PX : 0);
            double y = beside(mark.getMinY(), mark.getMaxY(), heightPx, down, right == 0 ? ABOVE_PX : 0);
            return new Envelope(x, x + widthPx, y, y + heightPx);
        }

        /** Lower end of a length beside, or in the middle of, a mark that goes from low to high. */
        private static double beside(double low, double high, double length, int way, double gap) {
            if (way == 0) return (low + high - length) / 2;
            return way > 0 ? high + gap : low - gap - length;
        }
    }

    private final Envelope window;
    private final List<Envelope> taken = new ArrayList<>();
    private final List<Envelope> closed = new ArrayList<>();
    private final List<Line> lines = new ArrayList<>();

    private record Line(double fromX, double fromY, double toX, double toY) {
        /** How much of it lies in a box, px: clipped to each pair of sides in turn. */
        double within(Envelope box) {
            double[] part = {0, 1};
            double dx = toX - fromX;
            double dy = toY - fromY;
            clip(part, -dx, fromX - box.getMinX());
            clip(part, dx, box.getMaxX() - fromX);
            clip(part, -dy, fromY - box.getMinY());
            clip(part, dy, box.getMaxY() - fromY);
            return part[0] < part[1] ? (part[1] - part[0]) * Math.hypot(dx, dy) : 0;
        }

        private static void clip(double[] part, double towards, double room) {
            if (towards == 0 && room < 0) part[1] = -1;
            if (towards > 0) part[1] = Math.min(part[1], room / towards);
            if (towards < 0) part[0] = Math.max(part[0], room / towards);
        }
    }

    /** On a map that shows this window. */
    public LabelPlacement(Envelope window) {
        this.window = new Envelope(window);
    }

    /** No name should cover this: a mark, a scale bar, a key that lies on the map. */
    public void keepFree(Envelope box) {
        taken.add(new Envelope(box));
    }

    /** No name should be crossed by this line. */
    public void keepFree(double fromX, double fromY, double toX, double toY) {
        lines.add(new Line(fromX, fromY, toX, toY));
    }

    /** A name that runs under this is left out: a key that lies on the map. */
    public void close(Envelope box) {
        closed.add(new Envelope(box));
    }

    /**
     * Takes the place for a name, beside its mark or a little farther off; none where all of it cannot be read.
     *
     * @shape  as {@link #place}; empty where the name would run off the window, through another name taken so or under what is
     *     closed, or, if it is a lesser one, with more than a fifth of it over marks and lines or crossed by a line
     * @unit   px
     * @valid  as {@link #place}
     * @error  none
     * @source as {@link #place}
     */
    public Optional<Envelope> placeApart(Envelope mark, double widthPx, double heightPx, boolean isLesser) {
        Envelope best = null;
        double least = isLesser ? LESSER_OVER * widthPx * heightPx : Double.POSITIVE_INFINITY;
        for (double heights : new double[] {0, FARTHER, FARTHEST}) {
            if (heights == FARTHEST && best != null && !isCrossed(best)) break;
            Envelope from = new Envelope(mark);
            from.expandBy(heights * heightPx);
            for (Side side : Side.values()) {
                if (best != null && least <= NOTHING_PX2) break;
                Envelope box = side.box(from, widthPx, heightPx);
                if (!isOpen(box) || (isLesser && isCrossed(box))) continue;
                double covered = coveredPx2(box);
                if (covered >= least) continue;
                least = covered;
                best = box;
            }
        }
        if (best != null) close(best);
        return Optional.ofNullable(best);
    }

    private boolean isCrossed(Envelope box) {
        return lines.stream().anyMatch(line -> line.within(box) > 0);
    }

    private boolean isOpen(Envelope box) {
        return window.contains(box) && closed.stream().allMatch(other -> commonPx2(box, other) <= NOTHING_PX2);
    }

    private static double commonPx2(Envelope one, Envelope other) {
        double wide = Math.min(one.getMaxX(), other.getMaxX()) - Math.max(one.getMinX(), other.getMinX());
        double high = Math.min(one.getMaxY(), other.getMaxY()) - Math.max(one.getMinY(), other.getMinY());
        return wide > 0 && high > 0 ? wide * high : 0;
    }

    /**
     * Takes the place for a name.
     *
     * @shape  the box of a mark and the size of its name in, the box of the name out; O(boxes kept free), remembers the place
     * @unit   px
     * @valid  width and height of at least 0; outside: IllegalArgumentException. A mark off the window is named where least of the
     *     name is lost
     * @error  none; what is covered is measured by area, what lies off the window counts as covered
     * @source eight places: Christensen, Marks and Shieber, ACM Transactions on Graphics 14 (1995) 203 (from memory); right of the
     *     mark first, after Imhof, The American Cartographer 2 (1975) 128 (from memory)
     */
    public Envelope place(Envelope mark, double widthPx, double heightPx) {
        if (!(widthPx >= 0) || !(heightPx >= 0))
            throw new IllegalArgumentException("a name of " + widthPx + " by " + heightPx + " px");
        Envelope best = null;
        double least = Double.POSITIVE_INFINITY;
        for (Side side : Side.values()) {
            Envelope box = side.box(mark, widthPx, heightPx);
            double covered = coveredPx2(box);
            if (covered >= least) continue;
            least = covered;
            best = box;
            if (covered <= NOTHING_PX2) break;
        }
        keepFree(best);
        return best;
    }

    private double coveredPx2(Envelope box) {
        double covered = box.getArea() - window.intersection(box).getArea();
        for (Envelope other : taken) covered += commonPx2(other, box);
        for (Line line : lines) covered += LINE_PX * line.within(box);
        return covered;
    }
}
