package handreach.report.figure;

import handreach.cartography.Contour;
import handreach.cartography.MapFrame;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.LineString;

/** Chooses where numbers stand on index contours: on straight pieces, away from the edge and from each other. */
public final class ContourLabels {
    private static final double APART_PX = 130;
    private static final double FROM_EDGE_PX = 34;
    private static final double HALF_LENGTH_PX = 16;

    private final Rectangle2D window;
    private final List<Spot> taken = new ArrayList<>();

    /** Where a number stands, base line middle, and how it is turned to follow the line, degrees counter-clockwise. */
    public record Spot(double x, double y, double turnDeg) {}

    public ContourLabels(Rectangle2D window) {
        this.window = window;
    }

    public Optional<Spot> place(Contour contour, MapFrame frame, double left, double top) {
        LineString line = contour.line();
        int n = line.getNumPoints();
        if (n < 12) return Optional.empty();
        Spot best = null;
        double straightest = 0.93;
        for (int i = 0; i < n; i += 3) {
            double x = left + frame.xPx(line.getCoordinateN(i).getX());
            double y = top + frame.yPx(line.getCoordinateN(i).getY());
            if (!isFree(x, y)) continue;
            int a = step(line, frame, i, -1);
            int b = step(line, frame, i, 1);
            if (a < 0 || b < 0) continue;
            double dx = frame.xPx(line.getCoordinateN(b).getX())
                    - frame.xPx(line.getCoordinateN(a).getX());
            double dy = frame.yPx(line.getCoordinateN(b).getY())
                    - frame.yPx(line.getCoordinateN(a).getY());
            double straight = Math.hypot(dx, dy) / (2 * HALF_LENGTH_PX);
            if (straight <= straightest) continue;
            straightest = straight;
            double turn = Math.toDegrees(Math.atan2(-dy, dx));
            if (turn > 90) turn -= 180;
            if (turn < -90) turn += 180;
            double down = Math.toRadians(turn);
            best = new Spot(x + 4.2 * Math.sin(down), y + 4.2 * Math.cos(down), turn);
        }
        if (best != null) taken.add(best);
        return Optional.ofNullable(best);
    }

    private boolean isFree(double x, double y) {
        if (x < window.getMinX() + FROM_EDGE_PX || x > window.getMaxX() - FROM_EDGE_PX) return false;
        if (y < window.getMinY() + FROM_EDGE_PX || y > window.getMaxY() - FROM_EDGE_PX) return false;
        for (Spot spot : taken) if (Math.hypot(spot.x() - x, spot.y() - y) < APART_PX) return false;
        return true;
    }

    /** Index of the vertex half a label's length away along the line, or −1 at its end. */
    private static int step(LineString line, MapFrame frame, int from, int way) {
        double walked = 0;
        int i = from;
        while (walked < HALF_LENGTH_PX) {
            int next = i + way;
            if (next < 0 || next >= line.getNumPoints()) return -1;
            walked += Math.hypot(
                    frame.xPx(line.getCoordinateN(next).getX())
                            - frame.xPx(line.getCoordinateN(i).getX()),
                    frame.yPx(line.getCoordinateN(next).getY())
                            - frame.yPx(line.getCoordinateN(i).getY()));
            i = next;
        }
        return i;
    }
}
