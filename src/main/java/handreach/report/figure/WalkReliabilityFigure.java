package handreach.report.figure;

import handreach.report.draw.Figure;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.uncertainty.Interval;
import handreach.units.Shares;
import handreach.walk.Comparison;
import java.util.List;
import java.util.Locale;

/** Share of copy found against odds promised: on the diagonal where the odds were honest. */
public final class WalkReliabilityFigure implements Figure {
    private static final double SIDE_PX = 400;
    private static final double LEFT_PX = 84;
    private static final double TOP_PX = 14;
    private static final int POINT_RGB = 0x0B4F7A;

    private final List<Comparison.Reliability> bins;
    private final double brier;
    private final Axis across = new Axis(0, 100, LEFT_PX, LEFT_PX + SIDE_PX);
    private final Axis up = new Axis(0, 100, TOP_PX + SIDE_PX, TOP_PX);

    private WalkReliabilityFigure(List<Comparison.Reliability> bins, double brier) {
        this.bins = List.copyOf(bins);
        this.brier = brier;
    }

    public static WalkReliabilityFigure of(List<Comparison.Reliability> bins, double brier) {
        return new WalkReliabilityFigure(bins, brier);
    }

    @Override
    public String title() {
        return "Odds promised and copy found";
    }

    @Override
    public String description() {
        StringBuilder words = new StringBuilder(String.format(Locale.ROOT, "Brier score %.3f.", brier));
        for (Comparison.Reliability bin : bins)
            words.append(String.format(
                    Locale.ROOT,
                    " Promised %s on average, found %s of %d reports (95 %% interval %s to %s).",
                    Shares.odds(bin.meanOdds()),
                    Shares.share(bin.shareFound()),
                    bin.count(),
                    Shares.share(bin.share95().low()),
                    Shares.share(bin.share95().high())));
        return words.toString();
    }

    @Override
    public double widthPx() {
        return LEFT_PX + SIDE_PX + 24;
    }

    @Override
    public double heightPx() {
        return TOP_PX + SIDE_PX + 54;
    }

    @Override
    public void draw(Pen pen) {
        Plot plot = new Plot(across, up, 5, 5);
        plot.drawGrid(pen);
        pen.draw(
                Outline.line(across.px(0), up.px(0), across.px(100), up.px(100)),
                ShapeStyle.line(TextStyle.QUIET, 1.2, List.of(6.0, 4.0)));
        for (Comparison.Reliability bin : bins) drawBin(pen, bin);
        plot.drawAxes(pen, "odds promised, %", "copy found, % of reports");
    }

    private void drawBin(Pen pen, Comparison.Reliability bin) {
        double x = across.px(100 * bin.meanOdds());
        double y = up.px(100 * bin.shareFound());
        Interval share = bin.share95();
        double low = up.px(100 * share.low());
        double high = up.px(100 * share.high());
        pen.draw(Outline.line(x, low, x, high), ShapeStyle.line(POINT_RGB, 1.4));
        pen.draw(Outline.line(x - 5, low, x + 5, low), ShapeStyle.line(POINT_RGB, 1.4));
        pen.draw(Outline.line(x - 5, high, x + 5, high), ShapeStyle.line(POINT_RGB, 1.4));
        pen.draw(Outline.disc(x, y, 5), ShapeStyle.fill(POINT_RGB).outlined(0xFFFFFF, 1.4));
        String words = "n = " + bin.count();
        boolean isLeft = x + 12 + Typeface.of(true).widthPx(words, 13) > across.endPx();
        TextStyle lettering = TextStyle.plain(13).bold().halo();
        double level = Math.max(up.endPx() + 16, Math.min(up.startPx() - 8, y + 4.6));
        pen.write(isLeft ? x - 11 : x + 11, level, words, isLeft ? lettering.end() : lettering);
    }
}
