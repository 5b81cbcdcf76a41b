package handreach.report;

import handreach.cartography.Hatch;
import handreach.cartography.LengthStyle;
import handreach.cartography.LoadoutMark;
import java.awt.geom.Arc2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Reach by bearing and loadout, seen from above: the farther the line from the middle, the farther it reaches. */
public final class RoseFigure implements Figure {
    private static final double WIDTH_PX = 640;
    private static final double RADIUS_PX = 262;
    private static final double MIDDLE_X = WIDTH_PX / 2;
    private static final double MIDDLE_Y = RADIUS_PX + 36;
    private static final int GRID_RGB = 0xC3CACE;

    private final String title;
    private final List<RoseTrace> traces;
    private final LengthStyle style;
    private final Axis radius;
    private final Legend legend;

    private RoseFigure(String title, List<RoseTrace> traces, LengthStyle style) {
        this.title = title;
        this.traces = List.copyOf(traces);
        this.style = style;
        double farthest = 0.1;
        for (RoseTrace trace : traces)
            for (RosePoint p : trace.points())
                farthest = Math.max(farthest, trace.showsInterval() ? p.highKm() : p.distanceKm());
        this.radius = Axis.rounded(0, farthest * 1000 / style.longUnitM(), 4, 0, RADIUS_PX);
        List<LegendEntry> entries = new ArrayList<>();
        for (RoseTrace trace : traces) entries.add(LegendEntry.line(trace.mark(), trace.name()));
        if (traces.stream().anyMatch(RoseTrace::showsInterval))
            entries.add(LegendEntry.area(Ink.fill(0x6B7880).opacity(0.3), "interval from common doubt"));
        if (traces.stream().anyMatch(t -> t.points().stream().anyMatch(p -> !p.isKnown())))
            entries.add(LegendEntry.area(Ink.hatch(0x6B7880, Hatch.CROSSED), "no heights known"));
        this.legend = new Legend(entries, WIDTH_PX - 60);
    }

    public static RoseFigure of(String title, List<RoseTrace> traces, LengthStyle style) {
        if (traces.isEmpty()) throw new IllegalArgumentException("a rose without loadouts");
        return new RoseFigure(title, traces, style);
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        StringBuilder words = new StringBuilder("Reach by bearing from true north, rings every ")
                .append(radius.text(ringStep(), 4))
                .append(' ')
                .append(style.longUnit())
                .append('.');
        for (RoseTrace trace : traces) {
            RosePoint far = trace.points().get(0);
            RosePoint near = far;
            for (RosePoint p : trace.points()) {
                if (p.distanceKm() > far.distanceKm()) far = p;
                if (p.distanceKm() < near.distanceKm()) near = p;
            }
            words.append(String.format(
                    Locale.ROOT,
                    " Loadout %s, %s: farthest %s towards %03.0f°, shortest %s towards %03.0f°.",
                    trace.mark().letter(),
                    trace.name(),
                    style.distanceText(far.distanceKm()),
                    far.bearingDeg(),
                    style.distanceText(near.distanceKm()),
                    near.bearingDeg()));
        }
        return words.toString();
    }

    @Override
    public double widthPx() {
        return WIDTH_PX;
    }

    @Override
    public double heightPx() {
        return MIDDLE_Y + RADIUS_PX + 48 + legend.heightPx();
    }

    @Override
    public void draw(Pen pen) {
        drawGrid(pen);
        drawUnknown(pen);
        for (RoseTrace trace : traces) if (trace.showsInterval()) drawBand(pen, trace);
        for (RoseTrace trace : traces) pen.named(trace.name(), () -> drawTrace(pen, trace));
        for (int i = 0; i < traces.size(); i++) drawLetters(pen, traces.get(i), i);
        drawRingLabels(pen);
        legend.draw(pen, 30, MIDDLE_Y + RADIUS_PX + 44);
    }

    private double ringStep() {
        return Axis.step(radius.low(), radius.high(), 4);
    }

    private void drawGrid(Pen pen) {
        for (double ring : radius.ticks(4)) {
            if (ring <= 0) continue;
            boolean isOuter = ring >= radius.high() - 1e-9;
            pen.draw(
                    Outline.disc(MIDDLE_X, MIDDLE_Y, radius.px(ring)),
                    Ink.line(isOuter ? 0x8A949A : GRID_RGB, isOuter ? 1.2 : 0.9));
        }
        for (int bearing = 0; bearing < 360; bearing += 30) {
            double[] out = place(bearing, RADIUS_PX);
            pen.draw(
                    Outline.line(MIDDLE_X, MIDDLE_Y, out[0], out[1]),
                    Ink.line(GRID_RGB, bearing % 90 == 0 ? 1.1 : 0.6));
            double[] word = place(bearing, RADIUS_PX + 17);
            boolean isCardinal = bearing % 90 == 0;
            String text = isCardinal
                    ? "NESW".substring(bearing / 90, bearing / 90 + 1)
                    : String.format(Locale.ROOT, "%03d°", bearing);
            Lettering lettering = isCardinal ? Lettering.plain(15).bold() : Lettering.quiet(12);
            pen.write(word[0], word[1] + 5, text, lettering.middle());
        }
        pen.draw(Outline.disc(MIDDLE_X, MIDDLE_Y, 3.5), Ink.fill(Lettering.INK));
    }

    private void drawRingLabels(Pen pen) {
        for (double ring : radius.ticks(4)) {
            if (ring <= 0) continue;
            double[] at = place(75, radius.px(ring));
            String unit = ring >= radius.high() - 1e-9 ? " " + style.longUnit() : "";
            pen.write(
                    at[0] - 3,
                    at[1] + 4,
                    radius.text(ring, 4) + unit,
                    Lettering.quiet(12).end().halo());
        }
    }

    private void drawUnknown(Pen pen) {
        List<RosePoint> points = traces.get(0).points();
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i).isKnown()) continue;
            double half = 180.0 / points.size();
            Arc2D wedge = new Arc2D.Double(
                    MIDDLE_X - RADIUS_PX,
                    MIDDLE_Y - RADIUS_PX,
                    2 * RADIUS_PX,
                    2 * RADIUS_PX,
                    90 - points.get(i).bearingDeg() - half,
                    2 * half,
                    Arc2D.PIE);
            pen.draw(wedge, Ink.hatch(0x9AA4AA, Hatch.CROSSED));
        }
    }

    private void drawBand(Pen pen, RoseTrace trace) {
        Path2D band = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        for (List<RosePoint> run : runs(trace.points())) {
            boolean isWhole = run.size() == trace.points().size();
            addRun(band, run, RosePoint::highKm, false);
            if (isWhole) band.closePath();
            addRun(band, isWhole ? run : reversed(run), RosePoint::lowKm, !isWhole);
            band.closePath();
        }
        pen.draw(band, Ink.fill(trace.mark().rgb()).opacity(0.17));
    }

    private void drawTrace(Pen pen, RoseTrace trace) {
        Path2D line = new Path2D.Double();
        for (List<RosePoint> run : runs(trace.points())) {
            addRun(line, run, RosePoint::distanceKm, false);
            if (run.size() == trace.points().size()) line.closePath();
        }
        LoadoutMark mark = trace.mark();
        pen.draw(line, Ink.line(0xFFFFFF, 4.2).opacity(0.75));
        pen.draw(line, Ink.line(mark.rgb(), 2.2, mark.dashPx()));
    }

    /** Letters stand where this trace lies farthest from the others, so that they do not pile up. */
    private void drawLetters(Pen pen, RoseTrace trace, int index) {
        int n = trace.points().size();
        for (int third = 0; third < 3; third++) {
            int best = -1;
            double clearest = -1;
            for (int k = third * n / 3; k < (third + 1) * n / 3; k++) {
                double clear = clearance(trace, index, k);
                if (trace.points().get(k).isKnown() && clear > clearest) {
                    clearest = clear;
                    best = k;
                }
            }
            if (best < 0) continue;
            RosePoint p = trace.points().get(best);
            double[] at = place(p.bearingDeg(), px(p.distanceKm()));
            Badge.draw(
                    pen,
                    at[0],
                    at[1],
                    trace.mark().letter(),
                    Ink.line(trace.mark().rgb(), 1));
        }
    }

    private double clearance(RoseTrace trace, int index, int k) {
        double here = px(trace.points().get(k).distanceKm());
        double clear = here;
        for (int j = 0; j < traces.size(); j++) {
            if (j == index || traces.get(j).points().size() != trace.points().size()) continue;
            clear = Math.min(clear, Math.abs(px(traces.get(j).points().get(k).distanceKm()) - here));
        }
        return clear;
    }

    private interface Length {
        double km(RosePoint point);
    }

    /** Stretches of known bearings; one that runs over north is one stretch. */
    private static List<List<RosePoint>> runs(List<RosePoint> points) {
        int n = points.size();
        int start = 0;
        while (start < n && points.get(start).isKnown()) start++;
        if (start == n) return List.of(points);
        List<List<RosePoint>> runs = new ArrayList<>();
        List<RosePoint> run = new ArrayList<>();
        for (int k = 1; k <= n; k++) {
            RosePoint p = points.get((start + k) % n);
            if (p.isKnown()) run.add(p);
            else if (!run.isEmpty()) {
                runs.add(run);
                run = new ArrayList<>();
            }
        }
        return runs;
    }

    private static List<RosePoint> reversed(List<RosePoint> run) {
        List<RosePoint> back = new ArrayList<>(run);
        java.util.Collections.reverse(back);
        return back;
    }

    private void addRun(Path2D path, List<RosePoint> run, Length length, boolean goesOn) {
        boolean isOpen = goesOn;
        for (RosePoint p : run) {
            double[] at = place(p.bearingDeg(), px(length.km(p)));
            if (isOpen) path.lineTo(at[0], at[1]);
            else path.moveTo(at[0], at[1]);
            isOpen = true;
        }
    }

    private double px(double distanceKm) {
        return radius.px(distanceKm * 1000 / style.longUnitM());
    }

    private static double[] place(double bearingDeg, double radiusPx) {
        double angle = Math.toRadians(bearingDeg);
        return new double[] {MIDDLE_X + radiusPx * Math.sin(angle), MIDDLE_Y - radiusPx * Math.cos(angle)};
    }
}
