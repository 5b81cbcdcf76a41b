package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.study.Scene;
import handreach.units.Lengths;
import java.util.function.Supplier;

/** Points from the edge of the map to every position that lies outside it, with its name and how far it is from the middle. */
final class BeyondOverlay implements MapOverlay {
    private static final double INSET_PX = 22;
    private static final double TOP_PX = 86;
    private static final double LONG_PX = 11;
    private static final double HALF_PX = 6;

    private final Supplier<Scene> scene;

    BeyondOverlay(Supplier<Scene> scene) {
        this.scene = scene;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (scene.get() == null) return;
        Lengths lengths = scene.get().plan().header().lengths();
        for (Places.PositionEntry entry : scene.get().plan().places().positions()) {
            if (frame.contains(entry.at())) continue;
            double middleX = frame.widthPx() / 2.0;
            double middleY = (frame.heightPx() + TOP_PX) / 2.0;
            double dx = pen.x(entry.at()) - middleX;
            double dy = pen.y(entry.at()) - middleY;
            double shrink = Math.min(
                    (middleX - INSET_PX) / Math.max(1e-9, Math.abs(dx)),
                    (middleY - TOP_PX) / Math.max(1e-9, Math.abs(dy)));
            point(pen, middleX + shrink * dx, middleY + shrink * dy, dx, dy);
            pen.name(
                    entry.name() + ", " + away(frame, entry.at(), lengths),
                    middleX + shrink * dx,
                    middleY + shrink * dy,
                    LONG_PX,
                    false);
        }
    }

    private static String away(MapFrame frame, Position at, Lengths lengths) {
        return lengths.text(GeodesicLine.between(frame.centre(), at).lengthM()) + " away";
    }

    private static void point(MapPen pen, double x, double y, double dx, double dy) {
        double length = Math.hypot(dx, dy);
        double ux = dx / length;
        double uy = dy / length;
        pen.shape(
                pen.palette().accent(),
                x + LONG_PX * ux,
                y + LONG_PX * uy,
                x - HALF_PX * uy,
                y + HALF_PX * ux,
                x + HALF_PX * uy,
                y - HALF_PX * ux);
    }
}
