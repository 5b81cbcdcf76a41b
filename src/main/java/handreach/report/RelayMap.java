package handreach.report;

import handreach.cartography.Graticule;
import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.relay.Party;
import handreach.relay.SiteCheck;
import handreach.report.draw.Figure;
import handreach.report.draw.Picture;
import handreach.report.draw.ShapeStyle;
import handreach.report.figure.CaptionedMap;
import handreach.report.figure.MapFigure;
import handreach.report.figure.MapGround;
import handreach.report.figure.MapPlace;
import handreach.report.figure.MapWay;
import handreach.report.page.Drawing;
import handreach.study.RelayAnswer;
import handreach.study.Scene;
import handreach.units.Shares;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** The map of a relay answer: who must be served, the relays, the hops to them. Many people go onto it by number, with a list beside it. */
final class RelayMap {
    /** How far the map shows ground beyond the radius that was looked at. */
    private static final double MARGIN = 1.08;
    /** More names than this cover the map. */
    private static final int MOST_NAMES = 6;

    private static final int BELOW_RGB = 0xA33B00;
    /** A weak hop on which nothing hangs. */
    private static final int SPARE_RGB = 0x7A858C;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final RelayAnswer answer;
    private final SiteCheck check;
    private final Scene scene;
    private final Plan plan;
    /** People at places, and routes and sectors once each, by name, with the number of the map. */
    private final Map<String, Integer> numbers = new LinkedHashMap<>();

    RelayMap(RelayAnswer answer, SiteCheck check) {
        this.answer = answer;
        this.check = check;
        this.scene = answer.scene();
        this.plan = scene.plan();
        for (Party demand : answer.question().demands())
            numbers.putIfAbsent(demand.group().orElse(demand.name()), numbers.size() + 1);
    }

    private boolean byNumber() {
        return numbers.size() > MOST_NAMES;
    }

    private String label(String name) {
        return byNumber() ? String.valueOf(numbers.get(name)) : name;
    }

    Drawing drawing(Instant made) {
        Drawing map =
                new Drawing(figure(), "People to serve, the relays, the hops to them, and further sites. " + list());
        return heading(made).over(map);
    }

    private MapFigure figure() {
        MapFrame frame = MapGround.frame(
                plan.places().area().centre(),
                MARGIN * 1000 * plan.places().area().radiusKm());
        MapGround ground = MapGround.of(
                scene.tiles(),
                frame,
                Picture.relief(MapGround.hillshade(scene.tiles(), frame)),
                Graticule.of(frame, plan.header().placeForm(), 5),
                plan.header().lengths());
        return MapFigure.withWays(
                new MapFigure.Caption(
                        "People and relay sites",
                        "Map of the people to serve, of the sites found and of the hops to the relays, over relief. "
                                + list()),
                ground,
                ways(),
                places(),
                new MapFigure.Key(List.of(), plan.header().lengths()));
    }

    /** The map as a picture of its own, with the list of people on it. */
    Figure sheet(Instant made) {
        List<String> lines = new ArrayList<>(heading(made).lines());
        if (byNumber()) lines.add(list());
        return CaptionedMap.of(figure(), lines, MapHeading.caution());
    }

    private MapHeading heading(Instant made) {
        return new MapHeading(
                scene,
                "Relay " + plan.header().placeForm().format(check.sites().get(0))
                        + (check.sites().size() > 1 ? " and " + (check.sites().size() - 1) + " more" : ""),
                "People carry what the plan gives them; the relay stands on a mast.",
                made);
    }

    /** Who stands behind which number. */
    private String list() {
        if (!byNumber()) return "";
        List<String> people = new ArrayList<>();
        numbers.forEach((name, number) -> people.add(number + " " + name));
        return "By number: " + String.join(", ", people) + ".";
    }

    private List<MapPlace> places() {
        List<MapPlace> places = new ArrayList<>();
        Map<String, List<Party>> groups = new LinkedHashMap<>();
        for (Party demand : answer.question().demands())
            if (demand.group().isPresent())
                groups.computeIfAbsent(demand.group().get(), same -> new ArrayList<>())
                        .add(demand);
            else
                places.add(new MapPlace(
                        demand.at(), isBase(demand) ? MapPlace.Kind.BASE : MapPlace.Kind.PERSON, label(demand.name())));
        // one point of a route or sector, in the middle of its list, carries the name of all
        groups.forEach((name, points) -> {
            for (int i = 0; i < points.size(); i++)
                places.add(new MapPlace(
                        points.get(i).at(), MapPlace.Kind.SPREAD, i == points.size() / 2 ? label(name) : ""));
        });
        for (RelaySite site : RelaySite.of(answer))
            places.add(
                    new MapPlace(site.at(), site.isAdvised() ? MapPlace.Kind.RELAY : MapPlace.Kind.SITE, site.name()));
        return places;
    }

    private boolean isBase(Party demand) {
        return plan.places().positions().stream()
                .filter(Places.PositionEntry::base)
                .anyMatch(entry -> entry.name().equals(demand.name()));
    }

    /** Routes and sectors, then the hops over them. */
    private List<MapWay> ways() {
        List<MapWay> ways = new ArrayList<>(PlanWays.of(scene, numbers::containsKey));
        double wanted = answer.question().setting().terms().odds();
        String odds = Shares.wanted(wanted);
        MapWay.Kind good = new MapWay.Kind("hop with " + odds + " or better", ShapeStyle.line(0x1F262B, 1.2));
        MapWay.Kind weak = new MapWay.Kind("hop below " + odds, ShapeStyle.line(BELOW_RGB, 1.6, List.of(4.0, 3.0)));
        MapWay.Kind spare = new MapWay.Kind(
                "hop below " + odds + ", talks work another way", ShapeStyle.line(SPARE_RGB, 1.2, List.of(2.0, 3.0)));
        for (Optional<SiteCheck.Hop> hop : check.hops())
            hop.ifPresent(one -> {
                boolean isGood = one.path().odds().weaker() >= wanted;
                boolean isNeeded = check.demandOdds(answer.question(), one.demand()) < wanted;
                ways.add(new MapWay(line(one), isGood ? good : isNeeded ? weak : spare));
            });
        return ways;
    }

    private Geometry line(SiteCheck.Hop hop) {
        Position from = answer.question().demands().get(hop.demand()).at();
        Position to = check.sites().get(hop.site());
        return GEOMETRY.createLineString(new Coordinate[] {
            new Coordinate(from.longitudeDeg(), from.latitudeDeg()), new Coordinate(to.longitudeDeg(), to.latitudeDeg())
        });
    }
}
