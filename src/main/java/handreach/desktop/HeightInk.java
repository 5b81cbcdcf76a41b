package handreach.desktop;

import handreach.cartography.MapFrame;
import java.util.function.Supplier;

/** How high the heavier contours run. */
final class HeightInk implements MapInk {
    private static final double SCALE_WIDE_PX = 280;

    private final Supplier<Relief> painted;

    HeightInk(Supplier<Relief> painted) {
        this.painted = painted;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        Relief relief = painted.get();
        // While the hand zooms, the lines below are another scale's: their numbers come back with them.
        if (relief == null || relief.frame().metresPerPx() != frame.metresPerPx()) return;
        for (Relief.Height height : relief.heights())
            if (frame.contains(height.at()) && !isUnderTheScale(pen, frame, height))
                pen.along(
                        height.words(),
                        pen.x(height.at()),
                        pen.y(height.at()),
                        height.turnDeg(),
                        pen.palette().grid());
    }

    /** In the lower left corner stand scale and channel. */
    private static boolean isUnderTheScale(MapPen pen, MapFrame frame, Relief.Height height) {
        return pen.x(height.at()) < SCALE_WIDE_PX && pen.y(height.at()) > frame.heightPx() - 5 * pen.linePx();
    }
}
