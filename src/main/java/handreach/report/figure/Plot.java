package handreach.report.figure;

import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import java.awt.geom.Rectangle2D;

/** Frame, grid and axis words of a drawing with two linear axes. */
final class Plot {
    private static final int GRID_RGB = 0xDCE1E4;
    private static final int EDGE_RGB = 0x8A949A;

    private final Axis across;
    private final Axis up;
    private final int wantedAcross;
    private final int wantedUp;
    /** Room between the plot and its numbers. */
    private final double bandPx;

    private final boolean isClose;

    Plot(Axis across, Axis up, int wantedAcross, int wantedUp) {
        this(across, up, wantedAcross, wantedUp, 0, false);
    }

    private Plot(Axis across, Axis up, int wantedAcross, int wantedUp, double bandPx, boolean isClose) {
        this.across = across;
        this.up = up;
        this.wantedAcross = wantedAcross;
        this.wantedUp = wantedUp;
        this.bandPx = bandPx;
        this.isClose = isClose;
    }

    /** The same with a band of this height under it, and its words close by or at ease. */
    Plot over(double band, boolean close) {
        return new Plot(across, up, wantedAcross, wantedUp, band, close);
    }

    Rectangle2D window() {
        return Outline.box(across.startPx(), up.endPx(), across.endPx() - across.startPx(), up.startPx() - up.endPx());
    }

    void drawGrid(Pen pen) {
        for (double tick : across.ticks(wantedAcross))
            pen.draw(
                    Outline.line(across.px(tick), up.startPx(), across.px(tick), up.endPx()),
                    ShapeStyle.line(GRID_RGB, 1));
        for (double tick : up.ticks(wantedUp))
            pen.draw(
                    Outline.line(across.startPx(), up.px(tick), across.endPx(), up.px(tick)),
                    ShapeStyle.line(GRID_RGB, 1));
    }

    void drawAxes(Pen pen, String wordsAcross, String wordsUp) {
        pen.draw(window(), ShapeStyle.line(EDGE_RGB, 1));
        double footPx = up.startPx() + bandPx;
        for (double tick : across.ticks(wantedAcross)) {
            double x = across.px(tick);
            pen.draw(Outline.line(x, footPx, x, footPx + (isClose ? 3 : 5)), ShapeStyle.line(EDGE_RGB, 1));
            pen.write(
                    x,
                    footPx + (isClose ? 15 : 19),
                    across.text(tick, wantedAcross),
                    TextStyle.quiet(12).middle());
        }
        double widest = 0;
        for (double tick : up.ticks(wantedUp)) {
            String text = up.text(tick, wantedUp);
            widest = Math.max(widest, Typeface.of(false).widthPx(text, 12));
            pen.write(
                    across.startPx() - 8,
                    up.px(tick) + 4,
                    text,
                    TextStyle.quiet(12).end());
        }
        pen.write(
                (across.startPx() + across.endPx()) / 2,
                footPx + (isClose ? 30 : 40),
                wordsAcross,
                TextStyle.plain(13).middle());
        pen.write(
                across.startPx() - 20 - widest,
                (up.startPx() + up.endPx()) / 2,
                wordsUp,
                TextStyle.plain(13).middle().turned(90));
    }
}
