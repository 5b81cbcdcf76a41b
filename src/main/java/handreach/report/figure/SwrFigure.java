package handreach.report.figure;

import handreach.cartography.LoadoutMark;
import handreach.report.draw.Figure;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.units.Decibels;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Locale;

/** Standing-wave ratio over frequency with the channels and the 2:1 and 3:1 lines; what lies above 10 leaves the top. */
public final class SwrFigure implements Figure {
    private static final double LEAST_WIDTH_PX = 420;
    private static final double TOP_PX = 46;
    private static final double BOTTOM_PX = 356;
    private static final double TOP_SWR = 10;

    private final String title;
    private final List<Curve> curves;
    private final List<ChannelMark> channels;
    private final double widthPx;
    private final Axis across;
    private final Legend legend;

    private SwrFigure(String title, List<Curve> curves, List<ChannelMark> channels, double widthPx) {
        this.widthPx = Math.max(LEAST_WIDTH_PX, widthPx);
        this.title = title;
        this.curves = List.copyOf(curves);
        this.channels = List.copyOf(channels);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Curve curve : curves) {
            low = Math.min(low, curve.across().get(0));
            high = Math.max(high, curve.across().get(curve.across().size() - 1));
        }
        for (ChannelMark channel : channels) {
            low = Math.min(low, channel.mhz());
            high = Math.max(high, channel.mhz());
        }
        this.across = new Axis(low, high, 70, this.widthPx - 20);
        this.legend = new Legend(
                curves.stream().map(c -> LegendEntry.line(c.mark(), c.name())).toList(), this.widthPx - 90);
    }

    /** As wide as there is room, though never so narrow that words meet. */
    public static SwrFigure of(String title, List<Curve> curves, List<ChannelMark> channels, double widthPx) {
        if (curves.isEmpty()) throw new IllegalArgumentException("no curves to draw");
        return new SwrFigure(title, curves, channels, widthPx);
    }

    /** Logarithmic from 1 up, so that the part between 1 and 3 that matters has most of the room. */
    private static double y(double swr) {
        double share = Math.log(Math.max(1, swr)) / Math.log(TOP_SWR);
        return BOTTOM_PX - share * (BOTTOM_PX - TOP_PX);
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        StringBuilder words = new StringBuilder("Standing-wave ratio over frequency.");
        for (Curve curve : curves) {
            int best = 0;
            for (int i = 1; i < curve.up().size(); i++)
                if (curve.up().get(i) < curve.up().get(best)) best = i;
            words.append(String.format(
                    Locale.ROOT,
                    " %s: least %.2f:1 at %.2f MHz.",
                    curve.name(),
                    curve.up().get(best),
                    curve.across().get(best)));
        }
        for (ChannelMark channel : channels)
            words.append(String.format(Locale.ROOT, " Channel %s at %.4f MHz.", channel.name(), channel.mhz()));
        return words.toString();
    }

    @Override
    public double widthPx() {
        return widthPx;
    }

    @Override
    public double heightPx() {
        return BOTTOM_PX + 58 + legend.heightPx();
    }

    @Override
    public void draw(Pen pen) {
        for (double tick : across.ticks(8)) {
            double x = across.px(tick);
            pen.draw(Outline.line(x, TOP_PX, x, BOTTOM_PX), ShapeStyle.line(0xDCE1E4, 1));
            pen.write(
                    x, BOTTOM_PX + 18, across.text(tick, 8), TextStyle.quiet(12).middle());
        }
        for (double swr : new double[] {1, 1.5, 2, 3, 5, 10}) {
            boolean isLimit = swr == 2 || swr == 3;
            pen.draw(
                    Outline.line(across.startPx(), y(swr), across.endPx(), y(swr)),
                    isLimit ? ShapeStyle.line(0x4A545B, 1.1, List.of(6.0, 4.0)) : ShapeStyle.line(0xDCE1E4, 1));
            pen.write(
                    across.startPx() - 8,
                    y(swr) + 4,
                    Decibels.number(swr, swr == 1.5 ? 1 : 0) + ":1",
                    TextStyle.quiet(12).end());
        }
        drawChannels(pen);
        pen.clipped(
                Outline.box(across.startPx(), TOP_PX, across.endPx() - across.startPx(), BOTTOM_PX - TOP_PX), () -> {
                    for (Curve curve : curves) pen.named(curve.name(), () -> drawCurve(pen, curve));
                });
        pen.draw(
                Outline.box(across.startPx(), TOP_PX, across.endPx() - across.startPx(), BOTTOM_PX - TOP_PX),
                ShapeStyle.line(0x8A949A, 1));
        pen.write(
                (across.startPx() + across.endPx()) / 2,
                BOTTOM_PX + 40,
                "frequency, MHz",
                TextStyle.plain(13).middle());
        pen.write(
                18,
                (TOP_PX + BOTTOM_PX) / 2,
                "standing-wave ratio, :1",
                TextStyle.plain(13).middle().turned(90));
        legend.draw(pen, across.startPx(), BOTTOM_PX + 54);
    }

    private void drawChannels(Pen pen) {
        double freeFrom = Double.NEGATIVE_INFINITY;
        boolean isHigh = false;
        for (ChannelMark channel : channels.stream()
                .sorted(java.util.Comparator.comparingDouble(ChannelMark::mhz))
                .toList()) {
            double x = across.px(channel.mhz());
            double half = Typeface.of(true).widthPx(channel.name(), 12) / 2;
            double wordX = Math.max(half, Math.min(widthPx - half, x));
            isHigh = wordX - half < freeFrom + 6 && !isHigh;
            freeFrom = wordX + half;
            pen.draw(Outline.line(x, TOP_PX - 6, x, BOTTOM_PX), ShapeStyle.line(0x8A3200, 1.3));
            pen.write(
                    wordX,
                    TOP_PX - (isHigh ? 28 : 12),
                    channel.name(),
                    TextStyle.plain(12).bold().middle().colour(0x8A3200));
        }
    }

    private void drawCurve(Pen pen, Curve curve) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < curve.up().size(); i++) {
            double x = across.px(curve.across().get(i));
            double y = y(Math.min(100, curve.up().get(i)));
            if (i == 0) path.moveTo(x, y);
            else path.lineTo(x, y);
        }
        LoadoutMark mark = curve.mark();
        pen.draw(path, ShapeStyle.line(mark.rgb(), 2.2, mark.dashPx()));
    }
}
