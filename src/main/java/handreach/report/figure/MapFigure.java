package handreach.report.figure;

import handreach.cartography.Contour;
import handreach.cartography.GridLine;
import handreach.cartography.LabelPlacement;
import handreach.cartography.LoadoutMark;
import handreach.cartography.MapFrame;
import handreach.cartography.ScaleBar;
import handreach.report.draw.Figure;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.units.Lengths;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** A map: relief, contours, edges of reach, places, graticule, scale bar, north, legend. */
public final class MapFigure implements Figure {
    private static final double LEFT_PX = 74;
    private static final double RIGHT_PX = 12;
    private static final double TOP_PX = 10;
    private static final double GRID_LABEL_PX = 30;
    /** Side of a square below which an island or a hole is not drawn, px. */
    private static final double SPECK_PX = 5;

    private static final int GRID_RGB = 0x2F4A5C;
    private static final int CONTOUR_RGB = 0x6B5B45;

    private final Caption caption;
    private final Key key;
    private final String title;
    private final String description;
    private final MapGround ground;
    private final List<MapOutline> outlines;
    private final List<MapPlace> places;
    private final List<MapWay> ways;
    private final Lengths style;
    private final Legend legend;

    private MapFigure(
            Caption caption,
            MapGround ground,
            List<MapOutline> outlines,
            List<MapPlace> places,
            List<MapWay> ways,
            Key key) {
        this.title = caption.title();
        this.description = caption.description();
        this.caption = caption;
        this.key = key;
        this.ground = ground;
        this.outlines = List.copyOf(outlines);
        this.places = List.copyOf(places);
        this.ways = List.copyOf(ways);
        this.style = key.style();
        List<LegendEntry> entries = new ArrayList<>();
        entries.addAll(PlaceSymbol.key(places));
        ways.stream().map(MapWay::kind).distinct().map(MapWay.Kind::entry).forEach(entries::add);
        for (MapOutline outline : outlines)
            entries.add(
                    outlines.size() == 1
                            ? LegendEntry.line(ShapeStyle.line(TextStyle.INK, 1.3), outline.name())
                            : LegendEntry.line(outline.mark(), outline.name()));
        entries.addAll(key.entries());
        if (ground.picture().showsUnknown()) entries.add(UnknownGround.onMap());
        if (ground.contourIntervalM() > 0)
            entries.add(LegendEntry.line(ShapeStyle.line(CONTOUR_RGB, 1), contourWords()));
        ground.graticule().stream()
                .map(GridLine::zone)
                .filter(zone -> !zone.isEmpty())
                .findFirst()
                .ifPresent(zone -> entries.add(LegendEntry.line(
                        ShapeStyle.line(GRID_RGB, 1).opacity(0.55), "grid: UTM zone " + zone + ", km")));
        this.legend = new Legend(entries, ground.frame().widthPx());
    }

    /**
     * Words that go with a map.
     *
     * @param title a few words
     * @param description full sentences for those who cannot see it
     */
    public record Caption(String title, String description) {}

    /**
     * What the legend says besides the outlines.
     *
     * @param entries further samples, such as classes of odds
     * @param style units of the scale bar
     */
    public record Key(List<LegendEntry> entries, Lengths style) {
        public Key {
            entries = List.copyOf(entries);
        }
    }

    public static MapFigure of(
            Caption caption, MapGround ground, List<MapOutline> outlines, List<MapPlace> places, Key key) {
        return new MapFigure(caption, ground, outlines, places, List.of(), key);
    }

    /** With lines of other kinds than edges of reach. */
    public static MapFigure withWays(
            Caption caption, MapGround ground, List<MapWay> ways, List<MapPlace> places, Key key) {
        return new MapFigure(caption, ground, List.of(), places, ways, key);
    }

    /** The same with lines of other kinds under its outlines. */
    public MapFigure along(List<MapWay> more) {
        return more.isEmpty() ? this : new MapFigure(caption, ground, outlines, places, more, key);
    }

    private String contourWords() {
        return "contours every " + style.heightText(ground.contourIntervalM());
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        return description;
    }

    @Override
    public double widthPx() {
        return LEFT_PX + ground.frame().widthPx() + RIGHT_PX;
    }

    @Override
    public double heightPx() {
        return TOP_PX + ground.frame().heightPx() + GRID_LABEL_PX + 8 + legend.heightPx() + 4;
    }

    /** The window of the map itself on the figure, px. */
    Rectangle2D window() {
        return Outline.box(
                LEFT_PX, TOP_PX, ground.frame().widthPx(), ground.frame().heightPx());
    }

    @Override
    public boolean holdsPicture() {
        return true;
    }

    @Override
    public void draw(Pen pen) {
        Rectangle2D window = window();
        pen.place(ground.picture(), window);
        pen.clipped(window, () -> {
            pen.named("contours", () -> drawContours(pen));
            pen.named("graticule", () -> drawGraticule(pen));
            for (MapOutline outline : outlines) pen.named(outline.name(), () -> drawOutline(pen, outline));
            for (MapWay way : ways) pen.named(way.kind().name(), () -> drawWay(pen, way));
        });
        for (int i = 0; i < outlines.size(); i++) drawLetter(pen, i);
        PlaceSymbol.draw(pen, spots(places), labels());
        pen.draw(window, ShapeStyle.line(TextStyle.INK, 1));
        drawGraticuleLabels(pen);
        drawScale(pen);
        drawNorth(pen);
        legend.draw(pen, LEFT_PX, TOP_PX + ground.frame().heightPx() + GRID_LABEL_PX + 8);
    }

    private void drawContours(Pen pen) {
        Path2D thin = new Path2D.Double();
        Path2D heavy = new Path2D.Double();
        for (Contour contour : ground.contours())
            (contour.isIndex() ? heavy : thin)
                    .append(Outline.of(contour.line(), ground.frame(), LEFT_PX, TOP_PX), false);
        pen.draw(thin, ShapeStyle.line(CONTOUR_RGB, 0.5).opacity(0.55));
        pen.draw(heavy, ShapeStyle.line(CONTOUR_RGB, 1).opacity(0.7));
        ContourLabels labels = new ContourLabels(window());
        for (Contour contour : ground.contours()) {
            if (!contour.isIndex()) continue;
            labels.place(contour, ground.frame(), LEFT_PX, TOP_PX)
                    .ifPresent(at -> pen.write(
                            at.x(),
                            at.y(),
                            style.heightText(contour.levelM()).replaceAll(" .*", ""),
                            TextStyle.plain(12)
                                    .middle()
                                    .colour(CONTOUR_RGB)
                                    .halo()
                                    .turned(at.turnDeg())));
        }
    }

    private void drawGraticule(Pen pen) {
        for (GridLine line : ground.graticule())
            pen.draw(
                    Outline.of(line.line(), ground.frame(), LEFT_PX, TOP_PX),
                    ShapeStyle.line(GRID_RGB, 0.6).opacity(0.55));
    }

    private void drawGraticuleLabels(Pen pen) {
        Rectangle2D window = window();
        double lastX = Double.NEGATIVE_INFINITY;
        double lastY = Double.POSITIVE_INFINITY;
        for (GridLine line : ground.graticule()) {
            double at = edge(line);
            if (Double.isNaN(at)) continue;
            if (line.runsNorth()) {
                double x = LEFT_PX + at;
                double half = Typeface.of(false).widthPx(line.label(), 12) / 2;
                if (x < window.getMinX() + 2 || x + half > widthPx() || x - half < lastX + 8) continue;
                lastX = x + half;
                pen.draw(Outline.line(x, window.getMaxY(), x, window.getMaxY() + 5), ShapeStyle.line(TextStyle.INK, 1));
                pen.write(
                        x,
                        window.getMaxY() + 19,
                        line.label(),
                        TextStyle.quiet(12).middle());
            } else {
                double y = TOP_PX + at;
                if (y < window.getMinY() + 4 || y > window.getMaxY() - 2 || y > lastY - 16) continue;
                lastY = y;
                pen.draw(Outline.line(window.getMinX() - 5, y, window.getMinX(), y), ShapeStyle.line(TextStyle.INK, 1));
                pen.write(
                        window.getMinX() - 8,
                        y + 4,
                        line.label(),
                        TextStyle.quiet(12).end());
            }
        }
    }

    /** Where a line meets the lower edge of the map (one that runs north) or the left one; NaN where it does not. */
    private double edge(GridLine line) {
        MapFrame frame = ground.frame();
        double edge = line.runsNorth() ? frame.heightPx() : 0;
        Coordinate[] points = line.line().getCoordinates();
        for (int i = 0; i + 1 < points.length; i++) {
            double x0 = frame.xPx(points[i].getX());
            double x1 = frame.xPx(points[i + 1].getX());
            double y0 = frame.yPx(points[i].getY());
            double y1 = frame.yPx(points[i + 1].getY());
            double from = (line.runsNorth() ? y0 : x0) - edge;
            double to = (line.runsNorth() ? y1 : x1) - edge;
            if (Math.abs(from) < 1e-6) return line.runsNorth() ? x0 : y0;
            if (from * to > 0) continue;
            double t = from / (from - to);
            return line.runsNorth() ? x0 + t * (x1 - x0) : y0 + t * (y1 - y0);
        }
        return Double.NaN;
    }

    /** Dashes tell several outlines apart; where there is one, a thin full line hides less of the map. */
    private void drawOutline(Pen pen, MapOutline outline) {
        Path2D path = Outline.of(withoutSpecks(outline.area()), ground.frame(), LEFT_PX, TOP_PX);
        boolean isAlone = outlines.size() == 1;
        pen.draw(path, ShapeStyle.line(0xFFFFFF, isAlone ? 3 : 4.2).opacity(0.7));
        if (isAlone) pen.draw(path, ShapeStyle.line(TextStyle.INK, 1.3));
        else
            pen.draw(
                    path,
                    ShapeStyle.line(outline.mark().rgb(), 2.2, outline.mark().dashPx()));
    }

    private void drawWay(Pen pen, MapWay way) {
        Path2D path = Outline.of(way.shape(), ground.frame(), LEFT_PX, TOP_PX);
        pen.draw(path, ShapeStyle.line(0xFFFFFF, way.kind().ink().widthPx() + 2).opacity(0.7));
        pen.draw(path, way.kind().ink());
    }

    /** Islands and holes too small to be seen would only clutter the sheet. */
    private Geometry withoutSpecks(Geometry area) {
        double degreesArea = SPECK_PX
                * SPECK_PX
                * ground.frame().degreesEastPerPx()
                * ground.frame().degreesNorthPerPx();
        List<Polygon> kept = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            if (!(area.getGeometryN(i) instanceof Polygon polygon)) return area;
            LinearRing shell = polygon.getExteriorRing();
            if (Area.ofRing(shell.getCoordinateSequence()) < degreesArea) continue;
            List<LinearRing> holes = new ArrayList<>();
            for (int k = 0; k < polygon.getNumInteriorRing(); k++)
                if (Area.ofRing(polygon.getInteriorRingN(k).getCoordinateSequence()) >= degreesArea)
                    holes.add(polygon.getInteriorRingN(k));
            kept.add(area.getFactory().createPolygon(shell, holes.toArray(new LinearRing[0])));
        }
        return area.getFactory().createMultiPolygon(kept.toArray(new Polygon[0]));
    }

    private void drawLetter(Pen pen, int index) {
        LoadoutMark mark = outlines.get(index).mark();
        letterAt(index)
                .ifPresent(at -> Badge.draw(pen, at.getX(), at.getY(), mark.letter(), ShapeStyle.line(mark.rgb(), 1)));
    }

    /** Where the letter of an outline stands on the figure, px: each on a bearing of its own, so that they keep apart. */
    private Optional<Coordinate> letterAt(int index) {
        if (outlines.size() < 2) return Optional.empty();
        Coordinate best = null;
        double towards = Math.toRadians(40 + 360.0 * index / outlines.size());
        double bestReach = Double.NEGATIVE_INFINITY;
        Rectangle2D window = window();
        for (Coordinate c : outlines.get(index).area().getCoordinates()) {
            double x = ground.frame().xPx(c.getX());
            double y = ground.frame().yPx(c.getY());
            if (!window.contains(LEFT_PX + x, TOP_PX + y)) continue;
            double dx = x - ground.frame().widthPx() / 2.0;
            double dy = ground.frame().heightPx() / 2.0 - y;
            double reach = dx * Math.sin(towards) + dy * Math.cos(towards);
            if (reach > bestReach) {
                bestReach = reach;
                best = new Coordinate(x, y);
            }
        }
        if (best == null) return Optional.empty();
        double x = Math.max(12, Math.min(ground.frame().widthPx() - 12.0, best.getX()));
        double y = Math.max(12, Math.min(ground.frame().heightPx() - 12.0, best.getY()));
        return Optional.of(new Coordinate(LEFT_PX + x, TOP_PX + y));
    }

    /** Names keep clear of scale, north and the letters of the outlines. */
    LabelPlacement labels() {
        LabelPlacement labels = new LabelPlacement(Outline.room(window()));
        labels.keepFree(Outline.room(scaleBox(scaleBar())));
        labels.keepFree(Outline.room(northBox()));
        for (int i = 0; i < outlines.size(); i++) {
            String letter = outlines.get(i).mark().letter();
            letterAt(i).ifPresent(at -> labels.keepFree(Outline.room(Badge.disc(at.getX(), at.getY(), letter))));
        }
        return labels;
    }

    /** Those of some places that lie on the map, where they stand on the figure. */
    List<PlaceSymbol.Spot> spots(List<MapPlace> some) {
        return some.stream()
                .filter(place -> ground.frame().contains(place.position()))
                .map(place -> new PlaceSymbol.Spot(
                        place,
                        LEFT_PX + ground.frame().xPx(place.position().longitudeDeg()),
                        TOP_PX + ground.frame().yPx(place.position().latitudeDeg())))
                .toList();
    }

    private ScaleBar scaleBar() {
        return ScaleBar.fitting(0.3 * ground.frame().widthPx() * ground.frame().metresPerPx(), style);
    }

    private Rectangle2D scaleBox(ScaleBar bar) {
        double length = bar.lengthM() / ground.frame().metresPerPx();
        double wordPx = Typeface.of(false).widthPx(bar.label(), 13);
        return Outline.box(LEFT_PX + 6, TOP_PX + ground.frame().heightPx() - 43, length + wordPx / 2 + 22, 36);
    }

    private Rectangle2D northBox() {
        return Outline.box(LEFT_PX + ground.frame().widthPx() - 38, TOP_PX + 8, 28, 52);
    }

    private void drawScale(Pen pen) {
        ScaleBar bar = scaleBar();
        double length = bar.lengthM() / ground.frame().metresPerPx();
        double x = LEFT_PX + 14;
        double y = TOP_PX + ground.frame().heightPx() - 22;
        pen.draw(scaleBox(bar), ShapeStyle.fill(0xFFFFFF).opacity(0.82));
        for (int i = 0; i < bar.parts(); i++) {
            double part = length / bar.parts();
            pen.draw(
                    Outline.box(x + i * part, y, part, 6),
                    ShapeStyle.fill(i % 2 == 0 ? TextStyle.INK : 0xFFFFFF).outlined(TextStyle.INK, 0.9));
        }
        pen.write(x, y - 6, "0", TextStyle.plain(13));
        pen.write(x + length, y - 6, bar.label(), TextStyle.plain(13).middle());
    }

    private void drawNorth(Pen pen) {
        double x = LEFT_PX + ground.frame().widthPx() - 24;
        double y = TOP_PX + 20;
        pen.draw(northBox(), ShapeStyle.fill(0xFFFFFF).opacity(0.82));
        Path2D needle = Outline.line(x, y - 8, x + 6, y + 14, x, y + 9, x - 6, y + 14);
        needle.closePath();
        pen.draw(needle, ShapeStyle.fill(TextStyle.INK));
        pen.write(x, y + 33, "N", TextStyle.plain(15).bold().middle());
    }
}
