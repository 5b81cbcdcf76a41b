package handreach.report.figure;

import handreach.cartography.LabelPlacement;
import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.report.draw.Figure;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Pen;
import handreach.units.Lengths;
import handreach.walk.WalkPair;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** The reports of walks on the ground, each with the mark of how it stands against its prediction. */
public final class WalkMapFigure implements Figure {
    private final MapFigure map;
    private final MapFrame frame;
    private final List<WalkPair> pairs;
    private final List<MapPlace> places;

    private WalkMapFigure(MapFigure map, MapFrame frame, List<WalkPair> pairs, List<MapPlace> places) {
        this.map = map;
        this.frame = frame;
        this.pairs = pairs.stream().sorted(Comparator.comparing(WalkMark::of)).toList();
        this.places = List.copyOf(places);
    }

    /** Marks of reports over a ground; misses are drawn last, so that nothing hides them. */
    public static WalkMapFigure of(MapGround ground, List<WalkPair> pairs, List<MapPlace> places, Lengths lengths) {
        List<LegendEntry> entries = new ArrayList<>(PlaceSymbol.key(places));
        for (WalkMark mark : WalkMark.values()) entries.add(LegendEntry.symbol(mark::draw, mark.label()));
        MapFigure map = MapFigure.of(
                new MapFigure.Caption("Walked against predicted", description(pairs)),
                ground,
                List.of(),
                List.of(),
                new MapFigure.Key(entries, lengths));
        return new WalkMapFigure(map, ground.frame(), pairs, places);
    }

    private static String description(List<WalkPair> pairs) {
        StringBuilder words = new StringBuilder(
                "Map of the reports of the walks over relief. Marks by how they stand to the prediction:");
        for (WalkMark mark : WalkMark.values())
            words.append(String.format(
                    Locale.ROOT,
                    " %s, %d.",
                    mark.label(),
                    pairs.stream().filter(pair -> WalkMark.of(pair) == mark).count()));
        return words.toString();
    }

    @Override
    public String title() {
        return map.title();
    }

    @Override
    public String description() {
        return map.description();
    }

    @Override
    public double widthPx() {
        return map.widthPx();
    }

    @Override
    public double heightPx() {
        return map.heightPx();
    }

    @Override
    public boolean holdsPicture() {
        return true;
    }

    @Override
    public void draw(Pen pen) {
        map.draw(pen);
        pen.clipped(map.window(), () -> {
            for (WalkPair pair : pairs)
                at(pair.spot().at(), (x, y) -> WalkMark.of(pair).draw(pen, x, y));
        });
        LabelPlacement labels = map.labels();
        for (WalkPair pair : pairs)
            at(pair.spot().at(), (x, y) -> labels.keepFree(WalkMark.of(pair).room(x, y)));
        PlaceSymbol.draw(pen, map.spots(places), labels);
    }

    /** What is drawn at a place of the page. */
    @FunctionalInterface
    private interface Mark {
        void draw(double xPx, double yPx);
    }

    private void at(Position position, Mark mark) {
        mark.draw(
                map.window().getMinX() + frame.xPx(position.longitudeDeg()),
                map.window().getMinY() + frame.yPx(position.latitudeDeg()));
    }
}
