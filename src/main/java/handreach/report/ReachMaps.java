package handreach.report;

import handreach.cartography.DifferenceMarks;
import handreach.cartography.Graticule;
import handreach.cartography.GridLine;
import handreach.cartography.Hillshade;
import handreach.cartography.LoadoutMark;
import handreach.cartography.MapFrame;
import handreach.cartography.OddsRamp;
import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.reach.CellGrid;
import handreach.reach.LeastLoadout;
import handreach.reach.LoadoutDifference;
import handreach.reach.ModelDifference;
import handreach.reach.OddsGrid;
import handreach.reach.OneWayGround;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Picture;
import handreach.report.draw.ShapeStyle;
import handreach.report.figure.MapFigure;
import handreach.report.figure.MapGround;
import handreach.report.figure.MapOutline;
import handreach.report.figure.MapPlace;
import handreach.report.figure.MapWay;
import handreach.report.page.Drawing;
import handreach.study.ReachAnswer;
import handreach.study.Scene;
import handreach.study.Turning;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntUnaryOperator;

/**
 * Maps of a reach answer over one relief: odds, least loadout, and what a bigger antenna buys. Each is drawn once, whoever asks
 * and from whatever thread.
 */
final class ReachMaps {
    /** How far the map shows ground beyond the radius that was looked at. */
    private static final double MARGIN = 1.08;

    private final ReachAnswer answer;
    private final Scene scene;
    private final Plan plan;
    private final MapFrame frame;
    private final Hillshade relief;
    private final List<MapWay> ways;
    private final MapGround bare;
    private final Map<String, Drawing> drawn = new ConcurrentHashMap<>();

    ReachMaps(ReachAnswer answer) {
        this.answer = answer;
        this.scene = answer.scene();
        this.plan = scene.plan();
        this.frame = MapGround.frame(
                answer.middle(), MARGIN * 1000 * plan.places().area().radiusKm());
        this.relief = MapGround.hillshade(scene.tiles(), frame);
        List<GridLine> graticule = Graticule.of(frame, plan.header().placeForm(), 5);
        this.ways = PlanWays.of(scene, name -> true);
        this.bare = MapGround.of(
                scene.tiles(),
                frame,
                Picture.relief(relief),
                graticule,
                scene.plan().header().lengths());
    }

    private ReachAnswer.AreaAnswer area() {
        return answer.area().orElseThrow();
    }

    private Lengths style() {
        return plan.header().lengths();
    }

    private double target() {
        return plan.channel().wish().odds();
    }

    private static int cell(CellGrid grid, double latitudeDeg, double longitudeDeg) {
        return grid.indexOf(new Position(latitudeDeg, longitudeDeg));
    }

    private MapFigure figure(String title, String description, Picture picture, Layers layers) {
        return MapFigure.of(
                        new MapFigure.Caption(title, description),
                        bare.with(picture),
                        layers.outlines(),
                        places(answer),
                        new MapFigure.Key(layers.entries(), style()))
                .along(ways);
    }

    private record Layers(List<MapOutline> outlines, List<LegendEntry> entries) {}

    /** Odds of copy with one loadout, its target odds outlined. */
    Drawing odds(int loadout) {
        return drawn.computeIfAbsent("odds " + loadout, key -> drawOdds(loadout));
    }

    private Drawing drawOdds(int loadout) {
        OddsGrid odds = area().odds().get(loadout);
        Picture picture = Picture.odds(relief, (latitude, longitude) -> {
            int cell = cell(odds.grid(), latitude, longitude);
            return cell >= 0 && odds.isKnown(cell) ? odds.odds(cell) : -1;
        });
        String name = odds.link().name();
        List<MapOutline> outlines = List.of(new MapOutline(
                LoadoutMark.of(loadout), name + ", " + Shares.wanted(target()) + " or better", odds.outline(target())));
        List<LegendEntry> entries = oddsKey();
        String share = Shares.share(answer.share(loadout).value());
        MapFigure figure = figure(
                "Odds of copy with " + name,
                "Map of the odds of copy around the middle, over relief. " + share
                        + " of the known ground within the radius reaches the target odds.",
                picture,
                new Layers(outlines, entries));
        String caption =
                "Odds of copy with " + name + "; " + share + " of the known ground reaches the target. Cells of "
                        + style().heightText(odds.grid().cellM()) + sampling(odds) + ".";
        return new Drawing(figure, caption);
    }

    /** Classes of odds and their colours. */
    static List<LegendEntry> oddsKey() {
        List<LegendEntry> entries = new ArrayList<>();
        for (int i = 0; i <= OddsRamp.BREAKS.size(); i++)
            entries.add(LegendEntry.area(ShapeStyle.fill(OddsRamp.rgb(i)), "odds " + OddsRamp.label(i)));
        return entries;
    }

    /** The least burdensome loadout that reaches the target odds, place by place. */
    Drawing least() {
        return drawn.computeIfAbsent("least", key -> drawLeast());
    }

    private Drawing drawLeast() {
        LeastLoadout least = area().least();
        List<LoadoutMark> marks = new ArrayList<>();
        List<LegendEntry> entries = new ArrayList<>();
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < least.links().size(); i++) {
            LoadoutMark mark = LoadoutMark.of(indexOf(least.links().get(i).name()));
            marks.add(mark);
            double share = least.shareBoughtBy(i);
            if (share <= 0) continue;
            String name = least.links().get(i).name();
            entries.add(Picture.leastLoadoutEntry(mark, name));
            words.append(words.isEmpty() ? "" : "; ").append(name).append(' ').append(Shares.share(share));
        }
        Picture picture = Picture.leastLoadout(
                relief,
                (latitude, longitude) -> {
                    int cell = cell(least.grid(), latitude, longitude);
                    return cell < 0 ? LeastLoadout.UNKNOWN : least.at(cell);
                },
                marks);
        String none = Shares.share(least.shareOfNone()) + " is reached by none";
        String caption =
                "The least burdensome loadout that reaches the target odds. Share of the known ground for which each is the"
                        + " least that does the job: " + (words.isEmpty() ? "none" : words) + "; " + none + ".";
        return new Drawing(
                figure("Least loadout that does the job", caption, picture, new Layers(List.of(), entries)), caption);
    }

    private Picture difference(LoadoutDifference difference) {
        return differing(difference.grid(), cell -> switch (difference.at(cell)) {
            case UNKNOWN -> LeastLoadout.UNKNOWN;
            case NEITHER -> LeastLoadout.NONE;
            case BOTH -> 0;
            case BOUGHT -> 1;
            case LOST -> 2;
        });
    }

    /** Ground in the three marks of a difference, by a cell's number in the grid. */
    private Picture differing(CellGrid grid, IntUnaryOperator markOf) {
        return Picture.leastLoadout(
                relief,
                (latitude, longitude) -> {
                    int cell = cell(grid, latitude, longitude);
                    return cell < 0 ? LeastLoadout.UNKNOWN : markOf.applyAsInt(cell);
                },
                List.of(DifferenceMarks.BOTH, DifferenceMarks.BOUGHT, DifferenceMarks.LOST));
    }

    /** Places that one loadout reaches and another does not. */
    Drawing bought(int than, int loadout) {
        return drawn.computeIfAbsent("bought " + than + " " + loadout, key -> drawBought(than, loadout));
    }

    private Drawing drawBought(int than, int loadout) {
        OddsGrid first = area().odds().get(than);
        OddsGrid second = area().odds().get(loadout);
        LoadoutDifference difference = LoadoutDifference.of(first, second, target());
        Picture picture = difference(difference);
        List<LegendEntry> entries = List.of(
                Picture.leastLoadoutEntry(
                        DifferenceMarks.BOUGHT, "only with " + second.link().name()),
                Picture.leastLoadoutEntry(
                        DifferenceMarks.LOST, "only with " + first.link().name()),
                Picture.leastLoadoutEntry(DifferenceMarks.BOTH, "with both"));
        String caption =
                "What " + second.link().name() + " buys over " + first.link().name() + ": "
                        + Shares.share(difference.share(LoadoutDifference.Place.BOUGHT))
                        + " of the known ground is reached only with it, "
                        + Shares.share(difference.share(LoadoutDifference.Place.LOST)) + " is lost with it.";
        String title = "Places bought by " + second.link().name();
        return new Drawing(figure(title, caption, picture, new Layers(List.of(), entries)), caption);
    }

    /** Places where one way alone works with a loadout. */
    Drawing oneWay(int loadout) {
        return drawn.computeIfAbsent("one way " + loadout, key -> drawOneWay(loadout));
    }

    private Drawing drawOneWay(int loadout) {
        OddsGrid odds = area().odds().get(loadout);
        LoadoutDifference places = OneWayGround.places(odds, target());
        String name = odds.link().name();
        String middle = OneWayComposer.middle(answer);
        String hears = Shares.share(places.share(LoadoutDifference.Place.BOUGHT));
        String heard = Shares.share(places.share(LoadoutDifference.Place.LOST));
        String caption = "Where one way alone works with " + name + ": on " + hears
                + " of the known ground people hear " + middle + " and are not heard there, on " + heard
                + " they are heard there and do not hear it.";
        List<LegendEntry> entries = List.of(
                Picture.leastLoadoutEntry(DifferenceMarks.BOUGHT, "hears " + middle + " only"),
                Picture.leastLoadoutEntry(DifferenceMarks.LOST, "heard at " + middle + " only"),
                Picture.leastLoadoutEntry(DifferenceMarks.BOTH, "both ways"));
        return new Drawing(
                figure(
                        "Where one way alone works with " + name,
                        caption,
                        difference(places),
                        new Layers(List.of(), entries)),
                caption);
    }

    /** Where a march and the closed form differ. */
    Optional<Drawing> models() {
        return ModelsComposer.of(answer).map(words -> drawn.computeIfAbsent("models", key -> drawModels(words)));
    }

    private Drawing drawModels(ModelsComposer words) {
        ModelDifference difference = words.difference();
        Picture picture = differing(difference.grid(), cell -> switch (difference.at(cell)) {
            case UNKNOWN -> LeastLoadout.UNKNOWN;
            case ALIKE -> LeastLoadout.NONE;
            case LOST -> 0;
            case LESS -> 1;
            case MORE -> 2;
        });
        return new Drawing(
                figure(words.title(), words.sentence(), picture, new Layers(List.of(), words.key())), words.sentence());
    }

    private int indexOf(String loadout) {
        for (int i = 0; i < answer.loadouts().size(); i++)
            if (answer.loadouts().get(i).link().name().equals(loadout)) return i;
        throw new IllegalArgumentException("no loadout " + loadout);
    }

    private static String sampling(OddsGrid odds) {
        return odds.losses()
                .difference()
                .map(difference -> String.format(
                        Locale.ROOT,
                        ", by %s: its losses differ from one profile per cell by %.1f dB rms, %s on %d cells compared",
                        odds.losses().engine().word(),
                        difference.rmsDb(),
                        difference.bound(),
                        difference.cells()))
                .orElse("");
    }

    /** The same with the way people face, where the plan says it, and how those should turn whom it pays to face the middle better. */
    private static List<MapPlace> places(ReachAnswer answer) {
        Map<String, Turning> turnings = new HashMap<>();
        for (Turning turning : Turning.all(answer)) turnings.put(turning.who(), turning);
        return places(answer.scene().plan()).stream()
                .map(place -> Optional.ofNullable(turnings.get(place.label()))
                        .map(turning -> facing(place, turning, answer.middle()))
                        .orElse(place))
                .toList();
    }

    /** Whoever stands in the middle faces all bearings of the map at once, so that no heading is the better one. */
    private static MapPlace facing(MapPlace place, Turning turning, Position middle) {
        boolean pays = !place.position().equals(middle) && turning.gainDb() >= Turning.WORTH_SAYING_DB;
        MapPlace.Facing facing = new MapPlace.Facing(
                turning.headingDeg(), pays ? OptionalDouble.of(turning.bestHeadingDeg()) : OptionalDouble.empty());
        String label = pays ? place.label() + ", turned +" + Decibels.text(turning.gainDb()) : place.label();
        return new MapPlace(place.position(), place.kind(), label, Optional.of(facing));
    }

    /** The plan's positions as symbols. */
    static List<MapPlace> places(Plan plan) {
        List<MapPlace> places = new ArrayList<>();
        for (Places.PositionEntry entry : plan.places().positions())
            places.add(
                    new MapPlace(entry.at(), entry.base() ? MapPlace.Kind.BASE : MapPlace.Kind.PERSON, entry.name()));
        return places;
    }
}
