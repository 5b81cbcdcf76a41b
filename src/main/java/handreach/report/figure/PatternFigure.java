package handreach.report.figure;

import handreach.cartography.LoadoutMark;
import handreach.report.draw.Figure;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.units.Decibels;
import java.awt.geom.Arc2D;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Locale;

/** Gain over elevation seen from the side: the farther from the corner, the stronger; the horizon runs to the right. */
public final class PatternFigure implements Figure {
    private static final double LEAST_RADIUS_PX = 180;
    private static final double LEFT_PX = 46;
    private static final double TOP_PX = 34;
    /** Decibels from the strongest gain down to the corner of the drawing. */
    private static final double SPAN_DB = 30;

    private final String title;
    private final List<Curve> curves;
    private final double radiusPx;
    private final double lowestDeg;
    private final double topDbi;
    private final Legend legend;

    private PatternFigure(String title, List<Curve> curves, double radiusPx) {
        this.radiusPx = Math.max(LEAST_RADIUS_PX, radiusPx);
        this.title = title;
        this.curves = List.copyOf(curves);
        double low = 0;
        double top = Double.NEGATIVE_INFINITY;
        for (Curve curve : curves) {
            low = Math.min(low, curve.across().get(0));
            for (double gain : curve.up()) top = Math.max(top, gain);
        }
        this.lowestDeg = low < -1 ? Math.max(-90, Math.floor(low / 30) * 30) : 0;
        this.topDbi = Math.ceil((top + 0.01) / 5) * 5;
        this.legend = new Legend(
                curves.stream().map(c -> LegendEntry.line(c.mark(), c.name())).toList(), this.radiusPx + 110);
    }

    /**
     * Curves of gain in dBi over elevation in degrees (0 the horizon, 90 straight up), with a horizon of this length, though never
     * so short that words meet.
     */
    public static PatternFigure of(String title, List<Curve> curves, double radiusPx) {
        if (curves.isEmpty()) throw new IllegalArgumentException("no curves to draw");
        return new PatternFigure(title, curves, radiusPx);
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        StringBuilder words = new StringBuilder("Gain over elevation angle, 0 degrees is the horizon.");
        for (Curve curve : curves) {
            int best = 0;
            for (int i = 1; i < curve.up().size(); i++)
                if (curve.up().get(i) > curve.up().get(best)) best = i;
            words.append(String.format(
                    Locale.ROOT,
                    " %s: strongest %s dBi at %s degrees.",
                    curve.name(),
                    Decibels.number(curve.up().get(best), 1),
                    Decibels.number(curve.across().get(best), 0)));
        }
        return words.toString();
    }

    private double middleY() {
        return TOP_PX + radiusPx;
    }

    private double bottomPx() {
        return middleY() + radiusPx * Math.sin(Math.toRadians(-lowestDeg)) + 28;
    }

    @Override
    public double widthPx() {
        return LEFT_PX + radiusPx + 96;
    }

    @Override
    public double heightPx() {
        return bottomPx() + 26 + legend.heightPx();
    }

    private double radius(double dbi) {
        return radiusPx * Math.max(0, (dbi - topDbi + SPAN_DB) / SPAN_DB);
    }

    private double[] place(double elevationDeg, double awayPx) {
        double e = Math.toRadians(elevationDeg);
        return new double[] {LEFT_PX + awayPx * Math.cos(e), middleY() - awayPx * Math.sin(e)};
    }

    @Override
    public void draw(Pen pen) {
        for (double dbi = topDbi; dbi > topDbi - SPAN_DB; dbi -= 5) {
            double r = radius(dbi);
            Arc2D arc =
                    new Arc2D.Double(LEFT_PX - r, middleY() - r, 2 * r, 2 * r, lowestDeg, 90 - lowestDeg, Arc2D.OPEN);
            boolean isZero = Math.abs(dbi) < 1e-9;
            pen.draw(arc, ShapeStyle.line(isZero ? 0x6B7880 : 0xC3CACE, isZero ? 1.3 : 0.9));
        }
        for (double e = lowestDeg; e <= 90; e += 15) {
            double[] out = place(e, radiusPx);
            pen.draw(Outline.line(LEFT_PX, middleY(), out[0], out[1]), ShapeStyle.line(0xC3CACE, e == 0 ? 1.3 : 0.6));
            double[] word = place(e, radiusPx + 12);
            pen.write(
                    word[0],
                    word[1] + (e > 80 ? 0 : 5),
                    Decibels.number(e, 0) + "°" + (e == 0 ? " horizon" : ""),
                    e > 80 ? TextStyle.quiet(12).middle() : TextStyle.quiet(12));
        }
        for (Curve curve : curves) pen.named(curve.name(), () -> drawCurve(pen, curve));
        for (double dbi = topDbi; dbi > topDbi - SPAN_DB + 5; dbi -= 5)
            pen.write(
                    LEFT_PX - 6,
                    middleY() - radius(dbi) + 4,
                    Decibels.signed(dbi, 0),
                    TextStyle.quiet(12).end());
        pen.write(
                16,
                middleY() - radiusPx / 2,
                "gain, dBi",
                TextStyle.plain(13).middle().turned(90));
        pen.write(
                LEFT_PX + radiusPx / 2,
                bottomPx() + 6,
                "elevation angle, degrees, along the arc",
                TextStyle.plain(13).middle());
        legend.draw(pen, 10, bottomPx() + 22);
    }

    private void drawCurve(Pen pen, Curve curve) {
        Path2D path = new Path2D.Double();
        boolean isOpen = false;
        for (int i = 0; i < curve.across().size(); i++) {
            double e = curve.across().get(i);
            if (e < lowestDeg || e > 90) continue;
            double[] at = place(e, radius(curve.up().get(i)));
            if (isOpen) path.lineTo(at[0], at[1]);
            else path.moveTo(at[0], at[1]);
            isOpen = true;
        }
        LoadoutMark mark = curve.mark();
        pen.draw(path, ShapeStyle.line(mark.rgb(), 2.2, mark.dashPx()));
    }
}
