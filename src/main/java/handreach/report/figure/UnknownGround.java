package handreach.report.figure;

import handreach.cartography.Hatch;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.ShapeStyle;
import java.util.List;

/** Where on a rose heights are missing, there or on the way from its middle; and how such ground looks on every sheet. */
public final class UnknownGround {
    static final Hatch HATCH = Hatch.RISING;
    public static final int LINE_RGB = 0x97A1A7;

    private final List<RosePoint> points;

    private UnknownGround(List<RosePoint> points) {
        this.points = points;
    }

    public static UnknownGround of(RoseTrace trace) {
        return new UnknownGround(trace.points());
    }

    /** How the key of a map explains it. */
    static LegendEntry onMap() {
        return LegendEntry.area(ink(), "no heights known");
    }

    /** How the key of a rose explains it: what lies behind a gap is not computed either. */
    static LegendEntry onRose() {
        return LegendEntry.area(ink(), "no heights known there or on the way");
    }

    static ShapeStyle ink() {
        return ShapeStyle.hatch(LINE_RGB, HATCH);
    }

    /** Whether the pattern puts ink on a pixel of a picture with so many pixels to each px of the page. */
    public static boolean inks(int xPx, int yPx, double scale) {
        return Math.floorMod(xPx + yPx, (int) Math.round(Hatch.SPACING_PX * scale)) < Math.round(scale);
    }

    boolean isSomewhere(double withinKm) {
        return points.stream()
                .anyMatch(point -> point.unknownBeyondKm().isPresent()
                        && point.unknownBeyondKm().getAsDouble() < withinKm);
    }

    /**
     * Where heights end on a bearing, km; infinite where they do not. Between two bearings with an end of heights it lies on the
     * straight line through both, else the nearer bearing decides.
     */
    public double beyondKm(double bearingDeg) {
        int n = points.size();
        int after = 0;
        while (after < n && points.get(after).bearingDeg() <= bearingDeg) after++;
        RosePoint a = points.get((after + n - 1) % n);
        RosePoint b = points.get(after % n);
        double span = turn(b.bearingDeg() - a.bearingDeg());
        double on = turn(bearingDeg - a.bearingDeg());
        if (a.unknownBeyondKm().isPresent() && b.unknownBeyondKm().isPresent())
            return chord(a.unknownBeyondKm().getAsDouble(), b.unknownBeyondKm().getAsDouble(), on, span);
        return (on < span / 2 ? a : b).unknownBeyondKm().orElse(Double.POSITIVE_INFINITY);
    }

    private static double turn(double degrees) {
        double turn = degrees % 360;
        return turn < 0 ? turn + 360 : turn;
    }

    /** Distance to the line through two points given by distance and bearing, on a bearing between them. */
    private static double chord(double aKm, double bKm, double onDeg, double spanDeg) {
        double left = aKm * Math.sin(Math.toRadians(onDeg));
        double right = bKm * Math.sin(Math.toRadians(spanDeg - onDeg));
        double sum = left + right;
        return spanDeg >= 180 || sum <= 0 ? Math.min(aKm, bKm) : aKm * bKm * Math.sin(Math.toRadians(spanDeg)) / sum;
    }
}
