package handreach.cartography;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/** The parts of a line that lie in a window: a dashed line far beyond it would be drawn dash by dash for nobody to see. */
public final class LineClip {
    private LineClip() {}

    /**
     * Cuts a line at the window's edge.
     *
     * @shape  x and y in turn in, the same for each part out, in order; none when nothing lies inside; O(points), pure
     * @unit   any, the same for line and window
     * @valid  finite numbers; fewer than two points give nothing
     * @error  that of double arithmetic
     * @source Liang and Barsky, ACM Transactions on Graphics 3 (1984) 1 (from memory)
     */
    public static List<double[]> inside(Envelope window, double... xy) {
        List<double[]> parts = new ArrayList<>();
        double[] part = new double[xy.length];
        int n = 0;
        for (int i = 0; i + 3 < xy.length; i += 2) {
            double[] share = {0, 1};
            double dx = xy[i + 2] - xy[i];
            double dy = xy[i + 3] - xy[i + 1];
            boolean isSeen = cut(-dx, xy[i] - window.getMinX(), share)
                    && cut(dx, window.getMaxX() - xy[i], share)
                    && cut(-dy, xy[i + 1] - window.getMinY(), share)
                    && cut(dy, window.getMaxY() - xy[i + 1], share);
            boolean goesOn = isSeen && share[0] == 0 && n > 0;
            if (!goesOn) n = keep(parts, part, n);
            if (!isSeen) continue;
            if (n == 0) n = add(part, n, xy[i] + share[0] * dx, xy[i + 1] + share[0] * dy);
            n = add(part, n, xy[i] + share[1] * dx, xy[i + 1] + share[1] * dy);
            if (share[1] < 1) n = keep(parts, part, n);
        }
        keep(parts, part, n);
        return parts;
    }

    /** Narrows the share of a segment that lies on the inner side of one edge; false when nothing is left. */
    private static boolean cut(double outwards, double room, double[] share) {
        if (outwards == 0) return room >= 0;
        double at = room / outwards;
        if (outwards < 0) share[0] = Math.max(share[0], at);
        else share[1] = Math.min(share[1], at);
        return share[0] <= share[1];
    }

    private static int add(double[] part, int n, double x, double y) {
        part[n] = x;
        part[n + 1] = y;
        return n + 2;
    }

    private static int keep(List<double[]> parts, double[] part, int n) {
        if (n >= 4) parts.add(Arrays.copyOf(part, n));
        return 0;
    }
}
