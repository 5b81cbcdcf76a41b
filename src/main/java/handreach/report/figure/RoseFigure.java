package handreach.report.figure;

import handreach.cartography.LabelPlacement;
import handreach.cartography.LoadoutMark;
import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.report.draw.Figure;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.Picture;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.terrain.Elevation;
import handreach.units.Lengths;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Reach by bearing and loadout, seen from above: the farther the line from the middle, the farther it reaches. */
public final class RoseFigure implements Figure {
    private static final double USUAL_RADIUS_PX = 262;
    private static final double AROUND_PX = 42;
    private static final double TOP_PX = 34;
    private static final double BADGES_APART_PX = 19;
    private static final int RINGS = 5;
    /** With less between them every second ring is left out. */
    private static final double RINGS_APART_PX = 26;
    /** A line whose median is shorter has one letter in place of three. */
    private static final double SHORT_PX = 48;
    /** Bearings so near to one another share the room outside the lines. */
    private static final double BESIDE_DEG = 12;
    /** Bearings along which the figures of the rings may stand, the usual one first. */
    private static final double[] FIGURES_DEG = {75, 105, 285, 255, 50, 130, 310, 230};

    /** More room than this around a figure is no better. */
    private static final double FIGURES_CLEAR_PX = 16;
    /** Pixels of relief to each px of the figure, so that it stays sharp in print. */
    private static final double SHARPNESS = 1.6;

    /** Bearings on which the edge of known ground is drawn. */
    private static final int BEARINGS = 1440;

    private static final List<Double> EDGE_DASH = List.of(1.0, 2.0);
    private static final int GRID_RGB = 0xB4BCC1;
    private static final ShapeStyle ROUTE = ShapeStyle.line(0x6B3F1D, 1.8);
    private static final ShapeStyle SECTOR = ShapeStyle.line(0x6B3F1D, 1.8, List.of(1.5, 3.0));

    private final String title;
    private final List<RoseTrace> traces;
    private final Lengths style;
    private final Room room;
    private final double radiusPx;
    private final Optional<Ground> ground;
    private final Axis radius;
    private final Legend legend;

    /** How large it is drawn, and whether its legend names the loadouts or something beside it does. */
    private record Room(double radiusPx, boolean namesLoadouts, double leastKm) {}

    /** Relief under the rose, and places on it. */
    private record Ground(Picture relief, MapFrame frame, List<MapPlace> places, List<RoseWay> ways) {}

    private RoseFigure(String title, List<RoseTrace> traces, Lengths style, Room room, Optional<Ground> ground) {
        this.title = title;
        this.traces = List.copyOf(traces);
        this.style = style;
        this.room = room;
        this.radiusPx = room.radiusPx();
        this.ground = ground;
        double farthest = Math.max(0.1, room.leastKm());
        for (RoseTrace trace : traces)
            for (RosePoint p : trace.points())
                farthest = Math.max(farthest, trace.showsInterval() ? p.highKm() : p.distanceKm());
        this.radius = Axis.rounded(0, farthest * 1000 / style.longUnitM(), RINGS, 0, radiusPx);
        List<LegendEntry> entries = new ArrayList<>();
        if (room.namesLoadouts())
            for (RoseTrace trace : traces) entries.add(LegendEntry.line(trace.mark(), trace.name()));
        traces.stream()
                .filter(RoseTrace::showsInterval)
                .findFirst()
                .ifPresent(trace -> entries.add(LegendEntry.area(
                        tint(trace), "interval of " + trace.mark().letter() + " from common doubt")));
        if (ground.map(g -> g.relief().showsUnknown()).orElseGet(() -> unknown().isSomewhere(outerKm())))
            entries.add(UnknownGround.onRose());
        List<RoseWay> ways = ground.map(Ground::ways).orElse(List.of());
        if (ways.stream().anyMatch(way -> !way.isArea())) entries.add(LegendEntry.line(ROUTE, "route"));
        if (ways.stream().anyMatch(RoseWay::isArea)) entries.add(LegendEntry.line(SECTOR, "sector"));
        this.legend = new Legend(entries, widthPx() - 10);
    }

    public static RoseFigure of(String title, List<RoseTrace> traces, Lengths style) {
        if (traces.isEmpty()) throw new IllegalArgumentException("a rose without loadouts");
        return new RoseFigure(title, traces, style, new Room(USUAL_RADIUS_PX, true, 0), Optional.empty());
    }

    /** The same with another radius of the outer ring, px. */
    public RoseFigure sized(double newRadiusPx) {
        return new RoseFigure(
                title, traces, style, new Room(newRadiusPx, room.namesLoadouts(), room.leastKm()), ground);
    }

    /** The same without the names of the loadouts, for where a table beside it explains the letters. */
    public RoseFigure beside() {
        return new RoseFigure(title, traces, style, new Room(radiusPx, false, room.leastKm()), ground);
    }

    /** The same with rings at least so far out; before it is laid over relief. */
    public RoseFigure outTo(double km) {
        if (ground.isPresent()) throw new IllegalStateException("the relief has its scale already");
        return new RoseFigure(title, traces, style, new Room(radiusPx, room.namesLoadouts(), km), ground);
    }

    /** How far the lines reach, km. */
    public double farthestKm() {
        return traces.stream()
                .flatMap(trace -> trace.points().stream())
                .mapToDouble(RosePoint::distanceKm)
                .max()
                .orElse(0);
    }

    /** With routes and sectors too. */
    public RoseFigure over(Elevation elevation, Position middle, List<MapPlace> places, List<RoseWay> ways) {
        double metres = radius.high() * style.longUnitM();
        int side = (int) Math.ceil(2 * radiusPx * SHARPNESS);
        MapFrame frame = MapGround.frame(middle, metres, side);
        UnknownGround unknown = unknown();
        double[] beyondPx = new double[BEARINGS];
        for (int i = 0; i < BEARINGS; i++)
            beyondPx[i] = 1000 * unknown.beyondKm(360.0 * i / BEARINGS) / frame.metresPerPx();
        double half = side / 2.0;
        Picture.Beyond beyond = (x, y) -> {
            double right = x + 0.5 - half;
            double up = half - y - 0.5;
            double bearing = Math.toDegrees(Math.atan2(right, up));
            int at = (int) Math.round(bearing * BEARINGS / 360);
            return Math.hypot(right, up) > beyondPx[Math.floorMod(at, BEARINGS)];
        };
        Picture relief = Picture.relief(MapGround.hillshade(elevation, frame), beyond, SHARPNESS);
        return new RoseFigure(
                title,
                traces,
                style,
                room,
                Optional.of(new Ground(relief, frame, List.copyOf(places), List.copyOf(ways))));
    }

    /** The ground is the same for all, so the first says where heights end. */
    private UnknownGround unknown() {
        return UnknownGround.of(traces.get(0));
    }

    private double outerKm() {
        return radius.high() * style.longUnitM() / 1000;
    }

    private double middleX() {
        return widthPx() / 2;
    }

    private double middleY() {
        return radiusPx + TOP_PX;
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        StringBuilder words = new StringBuilder("Reach by bearing from true north, rings every ")
                .append(radius.text(ringStep(), RINGS))
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
                    style.text(1000 * far.distanceKm()),
                    far.bearingDeg(),
                    style.text(1000 * near.distanceKm()),
                    near.bearingDeg()));
        }
        return words.toString();
    }

    @Override
    public double widthPx() {
        return 2 * (radiusPx + AROUND_PX);
    }

    @Override
    public double heightPx() {
        return middleY() + radiusPx + 40 + legend.heightPx();
    }

    @Override
    public boolean holdsPicture() {
        return ground.isPresent();
    }

    @Override
    public void draw(Pen pen) {
        ground.ifPresent(g -> drawGround(pen, g));
        drawGrid(pen);
        if (ground.isEmpty()) drawUnknown(pen);
        for (RoseTrace trace : traces) if (trace.showsInterval()) drawBand(pen, trace);
        ground.ifPresent(g -> drawWays(pen, g));
        for (RoseTrace trace : traces) pen.named(trace.name(), () -> drawTrace(pen, trace));
        List<double[]> taken = new ArrayList<>();
        taken.add(new double[] {middleX(), middleY()});
        ground.ifPresent(g -> g.places().forEach(place -> taken.add(spot(g, place))));
        int symbols = taken.size();
        for (int i = 0; i < traces.size(); i++) drawLetters(pen, traces.get(i), i, taken);
        List<Envelope> figures = drawRingLabels(pen, taken);
        ground.ifPresent(g -> drawPlaces(pen, g, taken.subList(symbols, taken.size()), figures));
        legend.draw(pen, 5, middleY() + radiusPx + 36);
    }

    private void drawGround(Pen pen, Ground g) {
        double x = middleX() - radiusPx;
        double y = middleY() - radiusPx;
        pen.clipped(
                Outline.disc(middleX(), middleY(), radiusPx),
                () -> pen.place(g.relief(), Outline.box(x, y, 2 * radiusPx, 2 * radiusPx)));
    }

    private Path2D path(Ground g, RoseWay way) {
        Path2D path = Outline.of(way.shape(), g.frame(), 0, 0);
        double share = 2 * radiusPx / g.frame().widthPx();
        AffineTransform move = AffineTransform.getTranslateInstance(middleX() - radiusPx, middleY() - radiusPx);
        move.scale(share, share);
        path.transform(move);
        return path;
    }

    private void drawWays(Pen pen, Ground g) {
        pen.clipped(Outline.disc(middleX(), middleY(), radiusPx), () -> {
            for (RoseWay way : g.ways())
                pen.named(way.label(), () -> pen.draw(path(g, way), way.isArea() ? SECTOR : ROUTE));
        });
    }

    /** The name of a sector stands within it, that of a route where it passes farthest from any place. */
    private void nameWays(Pen pen, Ground g, List<PlaceSymbol.Spot> spots, LabelPlacement labels) {
        double share = 2 * radiusPx / g.frame().widthPx();
        for (RoseWay way : g.ways()) {
            if (way.label().isBlank() || way.shape().isEmpty()) continue;
            double[] best = null;
            double farthest = -1;
            Coordinate[] candidates = way.isArea()
                    ? new Coordinate[] {way.shape().getInteriorPoint().getCoordinate()}
                    : way.shape().getCoordinates();
            for (Coordinate c : candidates) {
                double x = middleX() - radiusPx + share * g.frame().xPx(c.getX());
                double y = middleY() - radiusPx + share * g.frame().yPx(c.getY());
                if (Math.hypot(x - middleX(), y - middleY()) > radiusPx - 12) continue;
                double apart = Math.hypot(x - middleX(), y - middleY());
                for (PlaceSymbol.Spot spot : spots) apart = Math.min(apart, Math.hypot(x - spot.x(), y - spot.y()));
                if (apart <= farthest) continue;
                farthest = apart;
                best = new double[] {x, y};
            }
            if (best != null) PlaceSymbol.name(pen, best[0], best[1], way.label(), labels);
        }
    }

    /** A place beyond the last ring: an arrow on the ring towards it, so that nobody is missing. */
    private void drawBeyond(Pen pen, MapPlace place, double x, double y, LabelPlacement labels) {
        double length = Math.hypot(x - middleX(), y - middleY());
        double right = (x - middleX()) / length;
        double down = (y - middleY()) / length;
        double tipX = middleX() + right * (radiusPx - 2);
        double tipY = middleY() + down * (radiusPx - 2);
        Path2D arrow = Outline.line(
                tipX,
                tipY,
                tipX - 13 * right - 5 * down,
                tipY - 13 * down + 5 * right,
                tipX - 13 * right + 5 * down,
                tipY - 13 * down - 5 * right);
        arrow.closePath();
        pen.draw(arrow, ShapeStyle.fill(TextStyle.INK).outlined(0xFFFFFF, 1.2));
        labels.keepFree(Outline.room(arrow));
        PlaceSymbol.name(pen, tipX - 8 * right, tipY - 8 * down, place.label(), labels);
    }

    /** Places within the rose; their names keep clear of the letters. */
    private void drawPlaces(Pen pen, Ground g, List<double[]> letters, List<Envelope> figures) {
        LabelPlacement labels = new LabelPlacement(Outline.room(Outline.disc(middleX(), middleY(), radiusPx)));
        for (double[] at : letters) labels.keepFree(Outline.room(Badge.disc(at[0], at[1], "")));
        figures.forEach(labels::keepFree);
        List<PlaceSymbol.Spot> spots = new ArrayList<>();
        for (MapPlace place : g.places()) {
            double x = spot(g, place)[0];
            double y = spot(g, place)[1];
            if (Math.hypot(x - middleX(), y - middleY()) < radiusPx - 6) spots.add(new PlaceSymbol.Spot(place, x, y));
            else drawBeyond(pen, place, x, y, labels);
        }
        PlaceSymbol.draw(pen, spots, labels);
        nameWays(pen, g, spots, labels);
    }

    /** Where a place lies on the figure, px. */
    private double[] spot(Ground g, MapPlace place) {
        double share = 2 * radiusPx / g.frame().widthPx();
        return new double[] {
            middleX() - radiusPx + share * g.frame().xPx(place.position().longitudeDeg()),
            middleY() - radiusPx + share * g.frame().yPx(place.position().latitudeDeg())
        };
    }

    private double ringStep() {
        double step = Axis.step(radius.low(), radius.high(), RINGS);
        return radius.px(step) < RINGS_APART_PX ? 2 * step : step;
    }

    /** Rings with room between them for their figures, the outer one always. */
    private List<Double> rings() {
        List<Double> rings = new ArrayList<>();
        double step = ringStep();
        for (double ring = radius.high(); ring > step / 4; ring -= step) rings.add(0, ring);
        return rings;
    }

    private void drawGrid(Pen pen) {
        for (double ring : rings()) {
            boolean isOuter = ring >= radius.high() - 1e-9;
            pen.draw(
                    Outline.disc(middleX(), middleY(), radius.px(ring)),
                    ShapeStyle.line(isOuter ? 0x8A949A : GRID_RGB, isOuter ? 1.2 : 0.9));
        }
        for (int bearing = 0; bearing < 360; bearing += 30) {
            double[] out = place(bearing, radiusPx);
            pen.draw(
                    Outline.line(middleX(), middleY(), out[0], out[1]),
                    ShapeStyle.line(GRID_RGB, bearing % 90 == 0 ? 1.1 : 0.6));
            double[] word = place(bearing, radiusPx + 17);
            boolean isCardinal = bearing % 90 == 0;
            String text = isCardinal
                    ? "NESW".substring(bearing / 90, bearing / 90 + 1)
                    : String.format(Locale.ROOT, "%03d°", bearing);
            TextStyle lettering = isCardinal ? TextStyle.plain(15).bold() : TextStyle.quiet(12);
            pen.write(word[0], word[1] + 5, text, lettering.middle());
        }
        pen.draw(Outline.disc(middleX(), middleY(), 3.5), ShapeStyle.fill(TextStyle.INK));
    }

    /** The figures of the rings, along the bearing on which they are clearest of letters, places and lines; returns their room. */
    private List<Envelope> drawRingLabels(Pen pen, List<double[]> taken) {
        double best = FIGURES_DEG[0];
        double clearest = -1;
        for (double bearing : FIGURES_DEG) {
            double clear = FIGURES_CLEAR_PX;
            for (double ring : rings()) clear = Math.min(clear, clearOf(bearing, radius.px(ring), taken));
            if (clear > clearest + 1e-9) {
                clearest = clear;
                best = bearing;
            }
        }
        TextStyle lettering = TextStyle.quiet(12).middle().halo();
        List<Envelope> rooms = new ArrayList<>();
        for (double ring : rings()) {
            double[] at = place(best, radius.px(ring));
            String unit = ring >= radius.high() - 1e-9 ? " " + style.longUnit() : "";
            String words = radius.text(ring, RINGS) + unit;
            double half = Typeface.of(false).widthPx(words, 12) / 2;
            double x = at[0] - Math.signum(Math.sin(Math.toRadians(best))) * (half + 3);
            pen.write(x, at[1] + 4, words, lettering);
            rooms.add(new Envelope(x - half, x + half, at[1] - 7, at[1] + 6));
        }
        return rooms;
    }

    /** From the middle of a figure of a ring to the nearest letter, place or line, px. */
    private double clearOf(double bearing, double ringPx, List<double[]> taken) {
        double[] at = place(bearing, ringPx - 10);
        double clear = FIGURES_CLEAR_PX;
        for (double[] other : taken) clear = Math.min(clear, Math.hypot(at[0] - other[0], at[1] - other[1]));
        for (RoseTrace trace : traces)
            for (RosePoint p : trace.points()) {
                double[] on = place(p.bearingDeg(), px(p.distanceKm()));
                clear = Math.min(clear, Math.hypot(at[0] - on[0], at[1] - on[1]));
            }
        return clear;
    }

    /** Where there is no relief to show it: the ground from where heights end out to the last ring. */
    private void drawUnknown(Pen pen) {
        UnknownGround unknown = unknown();
        if (!unknown.isSomewhere(outerKm())) return;
        Path2D area = new Path2D.Double();
        for (int i = 0; i < BEARINGS; i++) {
            double from = 360.0 * i / BEARINGS;
            double to = 360.0 * (i + 1) / BEARINGS;
            double inner = px(unknown.beyondKm((from + to) / 2));
            if (!(inner < radiusPx)) continue;
            double[][] corners = {place(from, inner), place(from, radiusPx), place(to, radiusPx), place(to, inner)};
            area.moveTo(corners[0][0], corners[0][1]);
            for (int k = 1; k < corners.length; k++) area.lineTo(corners[k][0], corners[k][1]);
            area.closePath();
        }
        pen.draw(area, UnknownGround.ink());
    }

    private void drawBand(Pen pen, RoseTrace trace) {
        Path2D band = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        addRing(band, trace.points(), RosePoint::highKm);
        addRing(band, trace.points(), RosePoint::lowKm);
        pen.draw(band, tint(trace));
        pen.draw(band, ShapeStyle.line(trace.mark().rgb(), 0.8, EDGE_DASH).opacity(0.8));
    }

    /** Deep enough to be seen over grey relief. */
    private static ShapeStyle tint(RoseTrace trace) {
        return ShapeStyle.fill(trace.mark().rgb()).opacity(0.3);
    }

    /** Where heights end before copy does, the line runs along that end. */
    private void drawTrace(Pen pen, RoseTrace trace) {
        Path2D line = new Path2D.Double();
        addRing(line, trace.points(), RosePoint::distanceKm);
        LoadoutMark mark = trace.mark();
        pen.draw(line, ShapeStyle.line(0xFFFFFF, 4.2).opacity(0.75));
        pen.draw(line, ShapeStyle.line(mark.rgb(), 2.2, mark.dashPx()));
    }

    /**
     * Letters stand where this trace lies farthest from the others, so that they do not pile up; a short line has one only. Where
     * there is no room on the line a letter stands outside all lines, at the end of a thin stroke.
     */
    private void drawLetters(Pen pen, RoseTrace trace, int index, List<double[]> taken) {
        int n = trace.points().size();
        double[] reaches = trace.points().stream()
                .mapToDouble(p -> px(p.distanceKm()))
                .sorted()
                .toArray();
        int letters = reaches[n / 2] < SHORT_PX ? 1 : 3;
        for (int part = 0; part < letters; part++) {
            int best = -1;
            double clearest = Double.NEGATIVE_INFINITY;
            for (int k = part * n / letters; k < (part + 1) * n / letters; k++) {
                RosePoint here = trace.points().get(k);
                double clear =
                        clearance(trace, index, k) + room(place(here.bearingDeg(), px(here.distanceKm())), taken);
                if (trace.points().get(k).isKnown() && clear > clearest) {
                    clearest = clear;
                    best = k;
                }
            }
            if (best < 0) continue;
            RosePoint p = trace.points().get(best);
            double[] at = place(p.bearingDeg(), px(p.distanceKm()));
            if (nearest(at, taken) < BADGES_APART_PX) at = outside(pen, trace, taken);
            Badge.draw(
                    pen,
                    at[0],
                    at[1],
                    trace.mark().letter(),
                    ShapeStyle.line(trace.mark().rgb(), 1));
            taken.add(at);
        }
    }

    /** The nearest free place outside all lines, and the stroke that leads to it from this one. */
    private double[] outside(Pen pen, RoseTrace trace, List<double[]> taken) {
        RosePoint best = null;
        double bestPx = Double.POSITIVE_INFINITY;
        double leastStroke = Double.POSITIVE_INFINITY;
        for (RosePoint p : trace.points()) {
            if (!p.isKnown()) continue;
            double on = px(p.distanceKm());
            double out = outermostPx(p.bearingDeg()) + BADGES_APART_PX;
            while (out < radiusPx + BADGES_APART_PX && nearest(place(p.bearingDeg(), out), taken) < BADGES_APART_PX)
                out += 4;
            if (out - on >= leastStroke) continue;
            leastStroke = out - on;
            bestPx = out;
            best = p;
        }
        if (best == null) return place(0, radiusPx);
        double[] from = place(best.bearingDeg(), px(best.distanceKm()));
        double[] to = place(best.bearingDeg(), bestPx);
        pen.draw(
                Outline.line(from[0], from[1], to[0], to[1]),
                ShapeStyle.line(trace.mark().rgb(), 1));
        return to;
    }

    /** The farthest of all lines near a bearing, px. */
    private double outermostPx(double bearingDeg) {
        double most = 0;
        for (RoseTrace trace : traces)
            for (RosePoint p : trace.points())
                if (Math.abs(Math.IEEEremainder(p.bearingDeg() - bearingDeg, 360)) <= BESIDE_DEG)
                    most = Math.max(most, px(p.distanceKm()));
        return most;
    }

    private static double nearest(double[] at, List<double[]> taken) {
        double nearest = Double.POSITIVE_INFINITY;
        for (double[] other : taken) nearest = Math.min(nearest, Math.hypot(at[0] - other[0], at[1] - other[1]));
        return nearest;
    }

    /** Distance to the nearest letter or place already set, as far as it matters: beyond two discs it does not. */
    private static double room(double[] at, List<double[]> taken) {
        double nearest = Math.min(2 * BADGES_APART_PX, nearest(at, taken));
        return nearest < BADGES_APART_PX ? nearest - 1000 : nearest;
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

    private void addRing(Path2D path, List<RosePoint> points, Length length) {
        boolean isFirst = true;
        for (RosePoint p : points) {
            double[] at = place(p.bearingDeg(), px(length.km(p)));
            if (isFirst) path.moveTo(at[0], at[1]);
            else path.lineTo(at[0], at[1]);
            isFirst = false;
        }
        path.closePath();
    }

    private double px(double distanceKm) {
        return radius.px(distanceKm * 1000 / style.longUnitM());
    }

    private double[] place(double bearingDeg, double radiusPx) {
        double angle = Math.toRadians(bearingDeg);
        return new double[] {middleX() + radiusPx * Math.sin(angle), middleY() - radiusPx * Math.cos(angle)};
    }
}
