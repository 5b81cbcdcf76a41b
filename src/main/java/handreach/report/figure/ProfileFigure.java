package handreach.report.figure;

import handreach.profile.Profile;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.Terminals;
import handreach.report.draw.Figure;
import handreach.report.draw.Fitted;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.terrain.Cover;
import handreach.units.Decibels;
import handreach.units.Lengths;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * The cut between two terminals: ground on the curved earth, what stands on it, the straight ray, the first Fresnel zone with the
 * part of it that should be free, and the obstacles. Sight, clearance and obstacles are those over the bare ground, as everywhere: what trees
 * and buildings cost is a loss of its own.
 */
public final class ProfileFigure implements Figure {
    /** More words than these over neighbouring edges would print over one another. */
    private static final int MOST_LABELS = 3;

    private static final double WIDTH_PX = 900;
    private static final double PLOT_HEIGHT_PX = 300;
    /** Below this nothing could be read from the cut: a lower figure grows beyond the room it is given. */
    private static final double LOWEST_PLOT_PX = 60;

    private static final double BAND_PX = 16;
    private static final double LEFT_PX = 78;
    private static final double RIGHT_PX = 22;
    private static final int GROUND_RGB = 0xB9AE9C;
    private static final int GROUND_EDGE_RGB = 0x54493A;
    private static final int RAY_RGB = 0x0B4F7A;
    private static final int CLEARANCE_RGB = 0x8A3200;
    private static final int TREES_RGB = 0x6F8F78;
    private static final int TOWN_RGB = 0xA5867A;
    private static final int BAND_EDGE_RGB = 0x8A949A;
    private static final TextStyle NAME = TextStyle.plain(14).bold();
    private static final TextStyle CLEARANCE =
            TextStyle.plain(13).bold().middle().colour(CLEARANCE_RGB);

    private final Labels labels;
    private final Profile profile;
    private final Terminals terminals;
    private final PathConditions conditions;
    private final List<ProfileMark> marks;
    private final PathGeometry geometry;
    private final Size size;
    private final boolean hasClearanceRow;
    private final double topPx;
    private final Legend legend;
    private final ProfileScale scale;

    /**
     * Words that go with a profile.
     *
     * @param title a few words
     * @param from name of the first terminal
     * @param to name of the last terminal
     * @param lengths units of distances and heights
     */
    public record Labels(String title, String from, String to, Lengths lengths) {}

    /**
     * How large the figure is.
     *
     * @param widthPx width of the whole
     * @param heightPx height of the whole; 0 for what a full plot asks for
     */
    private record Size(double widthPx, double heightPx) {
        private boolean isGiven() {
            return heightPx > 0;
        }
    }

    private ProfileFigure(
            Labels labels, Profile profile, Terminals terminals, PathConditions conditions, List<ProfileMark> marks) {
        this.labels = labels;
        this.profile = profile;
        this.terminals = terminals;
        this.conditions = conditions;
        this.marks = List.copyOf(marks);
        this.geometry = PathGeometry.of(profile, terminals, conditions.atmosphere(), conditions.frequency());
        this.size = new Size(WIDTH_PX, 0);
        this.hasClearanceRow = isTooLongForOneRow();
        this.topPx = hasClearanceRow ? 52 : 34;
        this.legend = legend();
        this.scale = scaled();
    }

    private ProfileFigure(ProfileFigure other, Size size) {
        this.labels = other.labels;
        this.profile = other.profile;
        this.terminals = other.terminals;
        this.conditions = other.conditions;
        this.marks = other.marks;
        this.geometry = other.geometry;
        this.size = size;
        this.hasClearanceRow = isTooLongForOneRow();
        this.topPx = hasClearanceRow ? 42 : 24;
        this.legend = legend();
        this.scale = scaled();
    }

    public static ProfileFigure of(
            Labels labels, Profile profile, Terminals terminals, PathConditions conditions, List<ProfileMark> marks) {
        return new ProfileFigure(labels, profile, terminals, conditions, marks);
    }

    /** The same cut in another room, its rows set closer; never lower than what can be read. */
    public ProfileFigure sized(double widthPx, double heightPx) {
        return new ProfileFigure(this, new Size(widthPx, heightPx));
    }

    /** Where samples and heights stand on the figure. */
    public ProfileScale scale() {
        return scale;
    }

    private ProfileScale scaled() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < profile.count(); i++) {
            double groundM = profile.heightM(i) + geometry.bulgeM(i);
            low = Math.min(low, groundM);
            high = Math.max(high, groundM + profile.clutterM(i));
            high = Math.max(high, geometry.rayHeightM(i) + geometry.fresnelRadiusM(i));
        }
        double room = Math.max(10, 0.08 * (high - low));
        double plotPx = size.isGiven()
                ? Math.max(LOWEST_PLOT_PX, size.heightPx() - topPx - underPlotPx() - legend.heightPx())
                : PLOT_HEIGHT_PX;
        Lengths lengths = labels.lengths();
        return new ProfileScale(
                profile,
                geometry,
                new Axis(0, 1000 * profile.lengthKm() / lengths.longUnitM(), LEFT_PX, size.widthPx() - RIGHT_PX),
                new Axis(
                        (low - room) / lengths.shortUnitM(),
                        (high + (marks.isEmpty() ? 1 : 1.8) * room) / lengths.shortUnitM(),
                        topPx + plotPx,
                        topPx),
                lengths);
    }

    /** Names of the ends and the clearance stand in one row where they fit. */
    private boolean isTooLongForOneRow() {
        double wantedPx = geometry.worstClearance()
                .map(worst -> Typeface.of(true).widthPx(clearanceWords(worst), CLEARANCE.sizePx()))
                .orElse(0.0);
        double sidePx = Math.max(nameWidthPx(labels.from()), nameWidthPx(labels.to()));
        return wantedPx + 2 * (sidePx + 12) > plotWidthPx();
    }

    private static double nameWidthPx(String name) {
        return Typeface.of(true).widthPx(name, NAME.sizePx());
    }

    private double plotWidthPx() {
        return size.widthPx() - LEFT_PX - RIGHT_PX;
    }

    /** Band of cover, numbers and words between plot and legend. */
    private double underPlotPx() {
        return bandPx() + (size.isGiven() ? 36 : 52);
    }

    private double bandPx() {
        return hasCover() ? BAND_PX : 0;
    }

    private Legend legend() {
        return size.isGiven()
                ? new Legend(entries(), size.widthPx() - 16, 12, 18)
                : new Legend(entries(), plotWidthPx());
    }

    private List<LegendEntry> entries() {
        List<LegendEntry> entries = new ArrayList<>();
        entries.add(LegendEntry.area(
                ShapeStyle.fill(GROUND_RGB).outlined(GROUND_EDGE_RGB, 1),
                "ground, earth curved by k = "
                        + Decibels.number(conditions.atmosphere().effectiveRadiusFactor(), 2)));
        if (hasClutter(false)) entries.add(LegendEntry.area(ShapeStyle.fill(TREES_RGB), "trees"));
        if (hasClutter(true)) entries.add(LegendEntry.area(ShapeStyle.fill(TOWN_RGB), "buildings"));
        entries.add(LegendEntry.line(ShapeStyle.line(RAY_RGB, 2), "straight ray"));
        entries.add(LegendEntry.area(
                ShapeStyle.fill(RAY_RGB).outlined(RAY_RGB, 1).opacity(0.25),
                String.format(
                        Locale.ROOT,
                        "first Fresnel zone, %.0f MHz",
                        conditions.frequency().mhz())));
        entries.add(LegendEntry.line(ShapeStyle.line(RAY_RGB, 1.2, List.of(5.0, 4.0)), "0.6 of it"));
        if (marks.stream().anyMatch(ProfileMark::carriesString))
            entries.add(LegendEntry.line(
                    ShapeStyle.line(TextStyle.INK, 1.2, List.of(2.0, 3.0)), "string stretched over the edges"));
        return entries;
    }

    private boolean hasClutter(boolean inTown) {
        for (int i = 0; i < profile.count(); i++)
            if (profile.clutterM(i) > 0 && profile.cover(i).isTown() == inTown) return true;
        return false;
    }

    /** Whether anything is told of what covers the ground, besides that it is open. */
    private boolean hasCover() {
        for (int i = 0; i < profile.count(); i++) if (profile.cover(i) != Cover.OPEN) return true;
        return false;
    }

    private double x(int sample) {
        return scale.xPx(sample);
    }

    private double y(double heightM) {
        return scale.yPx(heightM);
    }

    private double groundM(int sample) {
        return scale.groundM(sample);
    }

    @Override
    public String title() {
        return labels.title();
    }

    @Override
    public String description() {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "Cut of %s from %s (antenna %.1f m above ground) to %s (%.1f m).",
                distance(profile.lengthKm()),
                labels.from(),
                terminals.txHeightM(),
                labels.to(),
                terminals.rxHeightM()));
        geometry.worstClearance()
                .ifPresent(worst ->
                        text.append(" It is ").append(clearanceWords(worst)).append(", over bare ground."));
        for (ProfileMark mark : marks)
            text.append(" At ")
                    .append(distance(profile.distanceKm(mark.sample())))
                    .append(": ")
                    .append(mark.label())
                    .append('.');
        return text.toString();
    }

    private String distance(double km) {
        Lengths lengths = labels.lengths();
        return String.format(Locale.ROOT, "%.2f %s", 1000 * km / lengths.longUnitM(), lengths.longUnit());
    }

    private String clearanceWords(PathGeometry.Clearance worst) {
        double share = worst.inFresnelRadii();
        String state = share >= PathGeometry.FREE_SHARE ? "clear" : share >= 0 ? "grazed" : "blocked";
        return state + ": least clearance " + Decibels.number(share, 2) + " of the first Fresnel radius at "
                + distance(worst.distanceKm());
    }

    @Override
    public double widthPx() {
        return size.widthPx();
    }

    @Override
    public double heightPx() {
        return Math.max(
                size.heightPx(), scale.bottomPx() + underPlotPx() + legend.heightPx() + (size.isGiven() ? 0 : 4));
    }

    @Override
    public void draw(Pen pen) {
        int wantedAcross = (int) Math.max(2, Math.round(plotWidthPx() / (size.isGiven() ? 60 : 88)));
        int wantedUp = (int) Math.max(2, Math.round((scale.bottomPx() - scale.topPx()) / (size.isGiven() ? 26 : 50)));
        Plot plot = new Plot(scale.across(), scale.up(), wantedAcross, wantedUp).over(bandPx(), size.isGiven());
        plot.drawGrid(pen);
        pen.clipped(plot.window(), () -> {
            drawGround(pen);
            drawZone(pen);
        });
        drawEnds(pen);
        drawString(pen);
        drawMarks(pen);
        geometry.worstClearance().ifPresent(worst -> drawClearance(pen, worst));
        if (hasCover()) drawCover(pen);
        Lengths lengths = labels.lengths();
        plot.drawAxes(
                pen,
                Fitted.words("distance from " + labels.from(), TextStyle.plain(13), plotWidthPx() - 40) + ", "
                        + lengths.longUnit(),
                heightWords() + ", " + lengths.shortUnit());
        legend.draw(pen, size.isGiven() ? 8 : LEFT_PX, scale.bottomPx() + underPlotPx());
    }

    private String heightWords() {
        String whole = "height above sea level";
        boolean fits = Typeface.of(false).widthPx(whole, 13) < scale.bottomPx() - scale.topPx();
        return fits ? whole : "height";
    }

    private void drawGround(Pen pen) {
        Path2D ground = new Path2D.Double();
        Path2D edge = new Path2D.Double();
        Path2D sea = new Path2D.Double();
        int last = profile.count() - 1;
        for (int i = 0; i <= last; i++) {
            double y = y(groundM(i));
            if (i == 0) {
                ground.moveTo(x(i), scale.bottomPx());
                edge.moveTo(x(i), y);
                sea.moveTo(x(i), y(geometry.bulgeM(0)));
            } else {
                edge.lineTo(x(i), y);
                sea.lineTo(x(i), y(geometry.bulgeM(i)));
            }
            ground.lineTo(x(i), y);
        }
        ground.lineTo(x(last), scale.bottomPx());
        ground.closePath();
        pen.draw(ground, ShapeStyle.fill(GROUND_RGB));
        if (hasClutter(false)) pen.draw(clutter(false), ShapeStyle.fill(TREES_RGB));
        if (hasClutter(true)) pen.draw(clutter(true), ShapeStyle.fill(TOWN_RGB));
        pen.draw(edge, ShapeStyle.line(GROUND_EDGE_RGB, 1.4));
        if (scale.up().low() < 0 || lowestHeightM() < 30)
            pen.draw(sea, ShapeStyle.line(0x2F6F8F, 1, List.of(6.0, 3.0)));
    }

    private double lowestHeightM() {
        double low = Double.POSITIVE_INFINITY;
        for (int i = 0; i < profile.count(); i++) low = Math.min(low, profile.heightM(i));
        return low;
    }

    /** One closed band for each stretch with trees, or with buildings, on it. */
    private Path2D clutter(boolean inTown) {
        Path2D path = new Path2D.Double();
        int n = profile.count();
        int first = 0;
        while (first < n) {
            if (!stands(first, inTown)) {
                first++;
                continue;
            }
            int last = first;
            while (last + 1 < n && stands(last + 1, inTown)) last++;
            path.moveTo(x(first), y(groundM(first)));
            for (int i = first; i <= last; i++) path.lineTo(x(i), y(groundM(i) + profile.clutterM(i)));
            for (int i = last; i >= first; i--) path.lineTo(x(i), y(groundM(i)));
            path.closePath();
            first = last + 1;
        }
        return path;
    }

    private boolean stands(int sample, boolean inTown) {
        return profile.clutterM(sample) > 0 && profile.cover(sample).isTown() == inTown;
    }

    private void drawZone(Pen pen) {
        Path2D whole = zone(1);
        pen.draw(whole, ShapeStyle.fill(RAY_RGB).opacity(0.1));
        pen.draw(whole, ShapeStyle.line(RAY_RGB, 0.8));
        pen.draw(zone(PathGeometry.FREE_SHARE), ShapeStyle.line(RAY_RGB, 1.2, List.of(5.0, 4.0)));
        int last = profile.count() - 1;
        pen.draw(
                Outline.line(x(0), y(geometry.rayHeightM(0)), x(last), y(geometry.rayHeightM(last))),
                ShapeStyle.line(RAY_RGB, 2));
    }

    private Path2D zone(double share) {
        Path2D zone = new Path2D.Double();
        int last = profile.count() - 1;
        for (int i = 0; i <= last; i++) {
            double y = y(geometry.rayHeightM(i) + share * geometry.fresnelRadiusM(i));
            if (i == 0) zone.moveTo(x(i), y);
            else zone.lineTo(x(i), y);
        }
        for (int i = last; i >= 0; i--)
            zone.lineTo(x(i), y(geometry.rayHeightM(i) - share * geometry.fresnelRadiusM(i)));
        zone.closePath();
        return zone;
    }

    private void drawEnds(Pen pen) {
        drawEnd(pen, 0);
        drawEnd(pen, profile.count() - 1);
        double apartPx = 24;
        boolean fits = nameWidthPx(labels.from()) + nameWidthPx(labels.to()) + apartPx <= plotWidthPx();
        double widestPx = fits ? plotWidthPx() : (plotWidthPx() - apartPx) / 2;
        double y = topPx - (hasClearanceRow ? 28 : 10);
        pen.write(LEFT_PX, y, Fitted.words(labels.from(), NAME, widestPx), NAME);
        pen.write(size.widthPx() - RIGHT_PX, y, Fitted.words(labels.to(), NAME, widestPx), NAME.end());
    }

    private void drawEnd(Pen pen, int sample) {
        double x = x(sample);
        double tip = y(geometry.rayHeightM(sample));
        pen.draw(Outline.line(x, y(groundM(sample)), x, tip), ShapeStyle.line(TextStyle.INK, 3));
        pen.draw(Outline.disc(x, tip, 4), ShapeStyle.fill(TextStyle.INK));
    }

    private void drawString(Pen pen) {
        int last = profile.count() - 1;
        Path2D string = Outline.line(x(0), y(geometry.rayHeightM(0)));
        for (ProfileMark mark : marks)
            if (mark.carriesString()) string.lineTo(x(mark.sample()), y(groundM(mark.sample())));
        string.lineTo(x(last), y(geometry.rayHeightM(last)));
        if (marks.stream().anyMatch(ProfileMark::carriesString))
            pen.draw(string, ShapeStyle.line(TextStyle.INK, 1.2, List.of(2.0, 3.0)));
    }

    /** The edges that stand highest into the straight line are told in words; the table has the others. */
    private void drawMarks(Pen pen) {
        List<Rectangle2D> taken = new ArrayList<>();
        TextStyle lettering = TextStyle.plain(12).middle().halo();
        List<ProfileMark> highestFirst = new ArrayList<>(marks);
        highestFirst.sort(
                Comparator.comparingDouble(mark -> geometry.rayHeightM(mark.sample()) - groundM(mark.sample())));
        for (int i = 0; i < highestFirst.size(); i++) {
            ProfileMark mark = highestFirst.get(i);
            double x = x(mark.sample());
            double y = y(groundM(mark.sample()));
            if (i >= MOST_LABELS && mark.carriesString()) {
                pen.draw(Outline.disc(x, y, 3), ShapeStyle.fill(0xFFFFFF).outlined(TextStyle.INK, 1.4));
                continue;
            }
            String label = Fitted.words(
                    labels.lengths().text(1000 * profile.distanceKm(mark.sample())) + ", " + mark.label(),
                    lettering,
                    plotWidthPx() - 12);
            Rectangle2D box = freeBox(taken, x, y, Typeface.of(false).widthPx(label, lettering.sizePx()) + 8);
            taken.add(box);
            pen.draw(Outline.disc(x, y, 4), ShapeStyle.fill(0xFFFFFF).outlined(TextStyle.INK, 1.8));
            pen.write(box.getCenterX(), box.getMaxY() - 4, label, lettering);
        }
    }

    /** The nearest room above the mark that no other word takes, or below it where there is none. */
    private Rectangle2D freeBox(List<Rectangle2D> taken, double x, double y, double width) {
        double left = Math.max(LEFT_PX + 2, Math.min(size.widthPx() - RIGHT_PX - width - 2, x - width / 2));
        for (int k = 0; k < 40; k++) {
            double top = y - 26 - 17 * k;
            if (top < topPx + 2) top = y + 10 + 17 * k;
            Rectangle2D box = Outline.box(left, top, width, 17);
            if (taken.stream().noneMatch(box::intersects)) return box;
        }
        return Outline.box(left, y - 26, width, 17);
    }

    private void drawClearance(Pen pen, PathGeometry.Clearance worst) {
        double x = x(worst.sample());
        double from = y(geometry.rayHeightM(worst.sample()));
        double to = y(groundM(worst.sample()));
        pen.draw(Outline.line(x, from, x, to), ShapeStyle.line(CLEARANCE_RGB, 2));
        pen.draw(Outline.line(x - 5, from, x + 5, from), ShapeStyle.line(CLEARANCE_RGB, 2));
        pen.write(
                (LEFT_PX + size.widthPx() - RIGHT_PX) / 2,
                topPx - 10,
                Fitted.words(clearanceWords(worst), CLEARANCE, plotWidthPx()),
                CLEARANCE);
    }

    /** A band under the cut that says in words what covers the ground. */
    private void drawCover(Pen pen) {
        int n = profile.count();
        int first = 0;
        while (first < n) {
            int last = first;
            while (last + 1 < n && profile.cover(last + 1) == profile.cover(first)) last++;
            drawCover(pen, profile.cover(first), x(first), x(Math.min(n - 1, last + 1)));
            first = last + 1;
        }
        pen.draw(Outline.box(LEFT_PX, scale.bottomPx(), plotWidthPx(), BAND_PX), ShapeStyle.line(BAND_EDGE_RGB, 1));
    }

    private void drawCover(Pen pen, Cover cover, double fromPx, double toPx) {
        int rgb = cover.isTown() ? TOWN_RGB : cover == Cover.WOODLAND ? TREES_RGB : ShapeStyle.NONE;
        if (rgb != ShapeStyle.NONE)
            pen.draw(
                    Outline.box(fromPx, scale.bottomPx(), toPx - fromPx, BAND_PX),
                    ShapeStyle.fill(rgb).opacity(0.5));
        TextStyle lettering = TextStyle.plain(12).middle();
        if (Typeface.of(false).widthPx(cover.word(), lettering.sizePx()) + 8 < toPx - fromPx)
            pen.write((fromPx + toPx) / 2, scale.bottomPx() + 12.5, cover.word(), lettering);
    }
}
