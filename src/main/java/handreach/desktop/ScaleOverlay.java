package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.cartography.ScaleBar;
import handreach.study.Scene;
import handreach.units.Lengths;
import java.util.List;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import javafx.scene.text.TextAlignment;

/** Scale bar, contour interval and channel in the lower left corner, north in the upper right. */
final class ScaleOverlay implements MapOverlay {
    private static final double LONGEST_PX = 190;
    private static final double SHORTEST_PX = 40;
    private static final double LEFT_PX = 16;
    private static final double UP_PX = 16;
    /** Between its words and the key. */
    private static final double BESIDE_PX = 8;

    private final Supplier<Scene> scene;
    private final Supplier<String> channel;
    private final DoubleSupplier contourIntervalM;
    private final DoubleSupplier freePx;

    /** {@code freePx} is how far to the right nothing lies over the corner. */
    ScaleOverlay(
            Supplier<Scene> scene, Supplier<String> channel, DoubleSupplier contourIntervalM, DoubleSupplier freePx) {
        this.scene = scene;
        this.channel = channel;
        this.contourIntervalM = contourIntervalM;
        this.freePx = freePx;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (scene.get() == null) return;
        Lengths style = scene.get().plan().header().lengths();
        double longestPx =
                Math.max(SHORTEST_PX, Math.min(LONGEST_PX, freePx.getAsDouble() - LEFT_PX - pen.px(" 1000 km ", true)));
        ScaleBar bar = ScaleBar.fitting(longestPx * frame.metresPerPx(), style);
        double width = bar.lengthM() / frame.metresPerPx();
        double y = frame.heightPx() - UP_PX;
        pen.keepNamesOff(LEFT_PX - 2, y - 8, width + 4, 10);
        pen.box(pen.palette().halo(), LEFT_PX - 2, y - 8, width + 4, 10);
        for (int i = 0; i < bar.parts(); i++)
            if (i % 2 == 0)
                pen.box(pen.palette().ink(), LEFT_PX + i * width / bar.parts(), y - 6, width / bar.parts(), 6);
        pen.line(pen.palette().ink(), 1, false, List.of(), LEFT_PX, y - 6, LEFT_PX + width, y - 6);
        pen.line(pen.palette().ink(), 1, false, List.of(), LEFT_PX, y, LEFT_PX + width, y);
        pen.words(
                bar.label(),
                LEFT_PX + width + 10,
                y - 3,
                TextAlignment.LEFT,
                true,
                pen.palette().ink());
        double interval = contourIntervalM.getAsDouble();
        String contours = "contours every " + style.heightText(interval);
        if (interval > 0 && LEFT_PX + pen.px(contours, false) + BESIDE_PX <= freePx.getAsDouble())
            pen.words(
                    contours,
                    LEFT_PX,
                    y - 5 - pen.linePx(),
                    TextAlignment.LEFT,
                    false,
                    pen.palette().ink());
        // The key says it too: where that covers half of the words, they are left to it.
        if (LEFT_PX + pen.px(channel.get(), true) + BESIDE_PX <= freePx.getAsDouble())
            pen.words(
                    channel.get(),
                    LEFT_PX,
                    y - 5 - (interval > 0 ? 2 : 1) * pen.linePx(),
                    TextAlignment.LEFT,
                    true,
                    pen.palette().ink());
        north(pen, frame.widthPx() - 30, 40);
    }

    private static void north(MapPen pen, double x, double y) {
        pen.shape(pen.palette().ink(), x, y - 18, x + 7, y + 8, x, y + 3, x - 7, y + 8);
        pen.words(
                "N",
                x,
                y + 11 + pen.linePx() / 2,
                TextAlignment.CENTER,
                true,
                pen.palette().ink());
    }
}
