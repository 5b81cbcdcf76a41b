package handreach.report.figure;

import handreach.profile.Profile;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.Terminals;
import handreach.report.draw.Figure;
import handreach.report.draw.Ink;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Lettering;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.Typeface;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The cut between two terminals: ground on the curved earth, what stands on it, the straight ray, the part of the Fresnel zone
 * that should be free, and the obstacles. Sight, clearance and obstacles are those over the bare ground, as everywhere: what trees
 * and buildings cost is a loss of its own.
 */
public final class ProfileFigure implements Figure {
    private static final double WIDTH_PX = 900;
    private static final double PLOT_TOP_PX = 34;
    private static final double PLOT_HEIGHT_PX = 300;
    private static final double LEFT_PX = 78;
    private static final double RIGHT_PX = 22;
    private static final int GROUND_RGB = 0xB9AE9C;
    private static final int GROUND_EDGE_RGB = 0x54493A;
    private static final int RAY_RGB = 0x0B4F7A;
    private static final int CLEARANCE_RGB = 0x8A3200;
    private static final int CLUTTER_RGB = 0x6F8F78;

    private final Words words;
    private final Profile profile;
    private final Terminals terminals;
    private final PathConditions conditions;
    private final List<ProfileMark> marks;
    private final PathGeometry geometry;
    private final Axis across;
    private final Axis up;
    private final Legend legend;

    /**
     * Words that go with a profile.
     *
     * @param title a few words
     * @param from name of the first terminal
     * @param to name of the last terminal
     */
    public record Words(String title, String from, String to) {}

    private ProfileFigure(
            Words words, Profile profile, Terminals terminals, PathConditions conditions, List<ProfileMark> marks) {
        this.words = words;
        this.profile = profile;
        this.terminals = terminals;
        this.conditions = conditions;
        this.marks = List.copyOf(marks);
        this.geometry = PathGeometry.of(profile, terminals, conditions.atmosphere(), conditions.frequency());
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < profile.count(); i++) {
            low = Math.min(low, groundM(i));
            high = Math.max(high, groundM(i) + profile.clutterM(i));
            high = Math.max(high, geometry.rayHeightM(i) + freeRadiusM(i));
        }
        double room = Math.max(10, 0.08 * (high - low));
        this.across = new Axis(0, profile.lengthKm(), LEFT_PX, WIDTH_PX - RIGHT_PX);
        this.up = new Axis(
                low - room, high + (marks.isEmpty() ? 1 : 1.8) * room, PLOT_TOP_PX + PLOT_HEIGHT_PX, PLOT_TOP_PX);
        this.legend = new Legend(entries(), WIDTH_PX - LEFT_PX - RIGHT_PX);
    }

    public static ProfileFigure of(
            Words words, Profile profile, Terminals terminals, PathConditions conditions, List<ProfileMark> marks) {
        return new ProfileFigure(words, profile, terminals, conditions, marks);
    }

    private List<LegendEntry> entries() {
        List<LegendEntry> entries = new ArrayList<>();
        entries.add(LegendEntry.area(
                Ink.fill(GROUND_RGB).outlined(GROUND_EDGE_RGB, 1),
                "ground, earth curved by k = "
                        + Axis.number(conditions.atmosphere().effectiveRadiusFactor(), 2)));
        if (hasClutter()) entries.add(LegendEntry.area(Ink.fill(CLUTTER_RGB), "trees or buildings on it"));
        entries.add(LegendEntry.line(Ink.line(RAY_RGB, 2), "straight ray"));
        entries.add(LegendEntry.line(
                Ink.line(RAY_RGB, 1.2, List.of(5.0, 4.0)),
                String.format(
                        Locale.ROOT,
                        "0.6 of the first Fresnel zone, %.0f MHz",
                        conditions.frequency().mhz())));
        if (marks.stream().anyMatch(ProfileMark::carriesString))
            entries.add(
                    LegendEntry.line(Ink.line(0x1F262B, 1.2, List.of(2.0, 3.0)), "string stretched over the edges"));
        return entries;
    }

    private boolean hasClutter() {
        for (int i = 0; i < profile.count(); i++) if (profile.clutterM(i) > 0) return true;
        return false;
    }

    /** Ground as the ray sees it, m: height plus earth bulge. */
    private double groundM(int i) {
        return profile.heightM(i) + geometry.bulgeM(i);
    }

    private double freeRadiusM(int i) {
        return PathGeometry.FREE_SHARE * geometry.fresnelRadiusM(i);
    }

    @Override
    public String title() {
        return words.title();
    }

    @Override
    public String description() {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "Cut of %.2f km from %s (antenna %.1f m above ground) to %s (%.1f m).",
                profile.lengthKm(),
                words.from(),
                terminals.txHeightM(),
                words.to(),
                terminals.rxHeightM()));
        geometry.worstClearance()
                .ifPresent(worst ->
                        text.append(" It is ").append(clearanceWords(worst)).append(", over bare ground."));
        for (ProfileMark mark : marks)
            text.append(
                    String.format(Locale.ROOT, " At %.2f km: %s.", profile.distanceKm(mark.sample()), mark.label()));
        return text.toString();
    }

    private static String clearanceWords(PathGeometry.Clearance worst) {
        double share = worst.inFresnelRadii();
        String state = share >= PathGeometry.FREE_SHARE ? "clear" : share >= 0 ? "grazed" : "blocked";
        return state + ": least clearance " + Axis.number(share, 2)
                + String.format(Locale.ROOT, " of the first Fresnel radius at %.2f km", worst.distanceKm());
    }

    @Override
    public double widthPx() {
        return WIDTH_PX;
    }

    @Override
    public double heightPx() {
        return PLOT_TOP_PX + PLOT_HEIGHT_PX + 56 + legend.heightPx();
    }

    @Override
    public void draw(Pen pen) {
        Plot plot = new Plot(across, up, 9, 6);
        plot.drawGrid(pen);
        pen.clipped(plot.window(), () -> {
            drawGround(pen);
            drawZone(pen);
        });
        drawEnds(pen);
        drawString(pen);
        drawMarks(pen);
        geometry.worstClearance().ifPresent(worst -> drawClearance(pen, worst));
        plot.drawAxes(pen, "distance from " + words.from() + ", km", "height above sea level, m");
        legend.draw(pen, LEFT_PX, PLOT_TOP_PX + PLOT_HEIGHT_PX + 52);
    }

    private void drawGround(Pen pen) {
        Path2D clutter = new Path2D.Double();
        Path2D ground = new Path2D.Double();
        Path2D edge = new Path2D.Double();
        Path2D sea = new Path2D.Double();
        for (int i = 0; i < profile.count(); i++) {
            double x = across.px(profile.distanceKm(i));
            double y = up.px(groundM(i));
            if (i == 0) {
                ground.moveTo(x, up.startPx());
                edge.moveTo(x, y);
                sea.moveTo(x, up.px(geometry.bulgeM(0)));
            } else {
                edge.lineTo(x, y);
                sea.lineTo(x, up.px(geometry.bulgeM(i)));
            }
            ground.lineTo(x, y);
        }
        ground.lineTo(across.endPx(), up.startPx());
        ground.closePath();
        addClutter(clutter);
        pen.draw(ground, Ink.fill(GROUND_RGB));
        if (hasClutter()) pen.draw(clutter, Ink.fill(CLUTTER_RGB));
        pen.draw(edge, Ink.line(GROUND_EDGE_RGB, 1.4));
        if (up.low() < 0 || lowestHeightM() < 30) pen.draw(sea, Ink.line(0x2F6F8F, 1, List.of(6.0, 3.0)));
    }

    private double lowestHeightM() {
        double low = Double.POSITIVE_INFINITY;
        for (int i = 0; i < profile.count(); i++) low = Math.min(low, profile.heightM(i));
        return low;
    }

    /** One closed band for each stretch with something standing on it. */
    private void addClutter(Path2D path) {
        int n = profile.count();
        int first = 0;
        while (first < n) {
            if (profile.clutterM(first) <= 0) {
                first++;
                continue;
            }
            int last = first;
            while (last + 1 < n && profile.clutterM(last + 1) > 0) last++;
            path.moveTo(across.px(profile.distanceKm(first)), up.px(groundM(first)));
            for (int i = first; i <= last; i++)
                path.lineTo(across.px(profile.distanceKm(i)), up.px(groundM(i) + profile.clutterM(i)));
            for (int i = last; i >= first; i--) path.lineTo(across.px(profile.distanceKm(i)), up.px(groundM(i)));
            path.closePath();
            first = last + 1;
        }
    }

    private void drawZone(Pen pen) {
        int n = profile.count();
        Path2D zone = new Path2D.Double();
        for (int i = 0; i < n; i++) {
            double y = up.px(geometry.rayHeightM(i) + freeRadiusM(i));
            if (i == 0) zone.moveTo(across.px(0), y);
            else zone.lineTo(across.px(profile.distanceKm(i)), y);
        }
        for (int i = n - 1; i >= 0; i--)
            zone.lineTo(across.px(profile.distanceKm(i)), up.px(geometry.rayHeightM(i) - freeRadiusM(i)));
        zone.closePath();
        pen.draw(zone, Ink.fill(RAY_RGB).opacity(0.1));
        pen.draw(zone, Ink.line(RAY_RGB, 1.2, List.of(5.0, 4.0)));
        pen.draw(
                Outline.line(
                        across.startPx(),
                        up.px(geometry.rayHeightM(0)),
                        across.endPx(),
                        up.px(geometry.rayHeightM(n - 1))),
                Ink.line(RAY_RGB, 2));
    }

    private void drawEnds(Pen pen) {
        int last = profile.count() - 1;
        drawEnd(pen, across.startPx(), profile.heightM(0), geometry.rayHeightM(0));
        drawEnd(pen, across.endPx(), profile.heightM(last), geometry.rayHeightM(last));
        pen.write(LEFT_PX, PLOT_TOP_PX - 12, words.from(), Lettering.plain(14).bold());
        pen.write(
                WIDTH_PX - RIGHT_PX,
                PLOT_TOP_PX - 12,
                words.to(),
                Lettering.plain(14).bold().end());
    }

    private void drawEnd(Pen pen, double x, double groundM, double antennaM) {
        pen.draw(Outline.line(x, up.px(groundM), x, up.px(antennaM)), Ink.line(Lettering.INK, 3));
        pen.draw(Outline.disc(x, up.px(antennaM), 4), Ink.fill(Lettering.INK));
    }

    private void drawString(Pen pen) {
        List<Double> points = new ArrayList<>();
        points.add(across.startPx());
        points.add(up.px(geometry.rayHeightM(0)));
        for (ProfileMark mark : marks) {
            if (!mark.carriesString()) continue;
            points.add(across.px(profile.distanceKm(mark.sample())));
            points.add(up.px(groundM(mark.sample())));
        }
        if (points.size() == 2) return;
        points.add(across.endPx());
        points.add(up.px(geometry.rayHeightM(profile.count() - 1)));
        pen.draw(
                Outline.line(points.stream().mapToDouble(Double::doubleValue).toArray()),
                Ink.line(Lettering.INK, 1.2, List.of(2.0, 3.0)));
    }

    private void drawMarks(Pen pen) {
        List<Rectangle2D> taken = new ArrayList<>();
        for (ProfileMark mark : marks) {
            double x = across.px(profile.distanceKm(mark.sample()));
            double y = up.px(groundM(mark.sample()));
            double width = Typeface.of(false).widthPx(mark.label(), 12) + 8;
            Rectangle2D box = freeBox(taken, x, y, width);
            taken.add(box);
            pen.draw(Outline.disc(x, y, 4), Ink.fill(0xFFFFFF).outlined(Lettering.INK, 1.8));
            pen.write(
                    box.getCenterX(),
                    box.getMaxY() - 4,
                    mark.label(),
                    Lettering.plain(12).middle().halo());
        }
    }

    /** The nearest room above the mark that no other word takes, or below it where there is none. */
    private static Rectangle2D freeBox(List<Rectangle2D> taken, double x, double y, double width) {
        double left = Math.max(LEFT_PX + 2, Math.min(WIDTH_PX - RIGHT_PX - width - 2, x - width / 2));
        for (int k = 0; k < 40; k++) {
            double top = y - 26 - 17 * k;
            if (top < PLOT_TOP_PX + 2) top = y + 10 + 17 * k;
            Rectangle2D box = Outline.box(left, top, width, 17);
            if (taken.stream().noneMatch(box::intersects)) return box;
        }
        return Outline.box(left, y - 26, width, 17);
    }

    private void drawClearance(Pen pen, PathGeometry.Clearance worst) {
        double x = across.px(worst.distanceKm());
        double from = up.px(geometry.rayHeightM(worst.sample()));
        double to = up.px(groundM(worst.sample()));
        pen.draw(Outline.line(x, from, x, to), Ink.line(CLEARANCE_RGB, 2));
        pen.draw(Outline.line(x - 5, from, x + 5, from), Ink.line(CLEARANCE_RGB, 2));
        pen.write(
                (LEFT_PX + WIDTH_PX - RIGHT_PX) / 2,
                PLOT_TOP_PX - 12,
                clearanceWords(worst),
                Lettering.plain(13).bold().middle().colour(CLEARANCE_RGB));
    }
}
