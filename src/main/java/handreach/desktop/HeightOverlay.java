package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.study.Scene;
import java.util.function.Supplier;

/** How high the heavier contours run, and the summits that stand out. */
final class HeightOverlay implements MapOverlay {
    private static final double SCALE_WIDE_PX = 280;
    /** In the upper right corner stands the arrow to the north. */
    private static final double NORTH_PX = 90;

    /** A number so near to a position would run through its mark or its name. */
    private static final double BESIDE_PX = 26;

    private final Supplier<Relief> painted;
    private final Supplier<Scene> scene;

    HeightOverlay(Supplier<Relief> painted, Supplier<Scene> scene) {
        this.painted = painted;
        this.scene = scene;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        Relief relief = painted.get();
        // While the hand zooms, the lines below are another scale's: their numbers come back with them.
        if (relief == null || relief.frame().metresPerPx() != frame.metresPerPx()) return;
        for (Relief.Spot spot : relief.spots())
            if (frame.contains(spot.at()) && !isTaken(pen, frame, spot.at()))
                pen.spot(spot.words(), pen.x(spot.at()), pen.y(spot.at()));
        for (Relief.Height height : relief.heights())
            if (frame.contains(height.at())
                    && !isTaken(pen, frame, height.at())
                    && !isBesideAPosition(pen, height.at()))
                pen.along(
                        height.words(),
                        pen.x(height.at()),
                        pen.y(height.at()),
                        height.turnDeg(),
                        pen.palette().grid());
    }

    private boolean isBesideAPosition(MapPen pen, Position at) {
        return scene.get() != null
                && scene.get().plan().places().positions().stream()
                        .anyMatch(entry ->
                                Math.hypot(pen.x(entry.at()) - pen.x(at), pen.y(entry.at()) - pen.y(at)) < BESIDE_PX);
    }

    /** In the lower left corner stand scale and channel, in the upper right the arrow. */
    private static boolean isTaken(MapPen pen, MapFrame frame, Position at) {
        return pen.x(at) < SCALE_WIDE_PX && pen.y(at) > frame.heightPx() - 5 * pen.linePx()
                || pen.x(at) > frame.widthPx() - NORTH_PX && pen.y(at) < NORTH_PX;
    }
}
