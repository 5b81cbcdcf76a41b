package handreach.study;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.TalkBook;
import handreach.terrain.AreaPolygons;
import handreach.walk.GpxTrack;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * Where the people of a plan stand or move, seen from its base, and whether they can call it from there without a relay.
 *
 * @param base the first position marked as base, else the one in which the rose stands; empty where there is neither
 * @param from where bearings and distances start: the base, else the middle of the rose
 * @param people those at positions, in the plan's order, the base among them
 * @param moving those on routes, then those in sectors
 */
public record Whereabouts(
        Optional<Places.PositionEntry> base, Position from, List<Person> people, List<Moving> moving) {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** Nearer than this two places are one, m. */
    private static final double SAME_PLACE_M = 0.5;

    /**
     * Somebody at a place.
     *
     * @param name of the position or of the point of a route or sector
     * @param at where
     * @param loadout what is carried there; the control where the plan names none
     * @param distanceM from where bearings start, m
     * @param bearingDeg from there, degrees from true north
     * @param odds there is towards the base, back is from it; empty for the base itself, without one, and over unknown ground
     */
    public record Person(
            String name,
            Position at,
            Loadout loadout,
            double distanceM,
            double bearingDeg,
            Optional<HopPath.HopOdds> odds) {}

    /**
     * Somebody on a route or in a sector.
     *
     * @param name of the route or sector
     * @param loadout what is carried there
     * @param shape lines of the track, or the area, in degrees, x east, y north
     * @param points spread evenly over it; those on unknown ground are left out
     */
    public record Moving(String name, Loadout loadout, Geometry shape, List<Person> points) {
        public Moving {
            points = List.copyOf(points);
        }

        public boolean isArea() {
            return shape.getDimension() == 2;
        }
    }

    public Whereabouts {
        people = List.copyOf(people);
        moving = List.copyOf(moving);
    }

    /** Computes one exact path from everybody to the base, as a relay study does for talks without a relay. */
    public static Whereabouts of(Scene scene) {
        return new Reader(scene).read();
    }

    /** Lines of every route and area of every sector of the plan, by name, in degrees, x east, y north. */
    public static Map<String, Geometry> shapes(Scene scene) {
        Map<String, Geometry> shapes = new LinkedHashMap<>();
        Places places = scene.plan().places();
        for (Places.RouteEntry entry : places.routes())
            shapes.put(entry.name(), Reader.lines(GpxTrack.lines(entry.file())));
        for (Places.SectorEntry entry : places.sectors()) shapes.put(entry.name(), AreaPolygons.read(entry.polygon()));
        return shapes;
    }

    /** Whether this is the base itself. */
    public boolean isBase(Person person) {
        return base.filter(entry -> entry.name().equals(person.name())).isPresent();
    }

    private static final class Reader {
        private final Scene scene;
        private final TalkBook book;
        private final List<Party> demands;
        private final Optional<Places.PositionEntry> base;
        private final Optional<Party> baseEnd;
        private final Position from;

        Reader(Scene scene) {
            this.scene = scene;
            this.demands = RelayDemands.all(scene, new ArrayList<>());
            this.book = TalkBook.of(RelayStudy.setting(scene));
            this.base = scene.base();
            this.baseEnd = base.flatMap(entry -> demand(entry.name()));
            this.from = base.map(Places.PositionEntry::at).orElseGet(scene::middle);
        }

        private Optional<Party> demand(String position) {
            return demands.stream()
                    .filter(one -> one.group().isEmpty() && one.name().equals(position))
                    .findFirst();
        }

        Whereabouts read() {
            Places places = scene.plan().places();
            List<Person> people = new ArrayList<>();
            for (Places.PositionEntry entry : places.positions())
                people.add(person(entry.name(), entry.at(), loadout(entry.loadout()), demand(entry.name())));
            List<Moving> moving = new ArrayList<>();
            Map<String, Geometry> shapes = shapes(scene);
            for (Places.RouteEntry entry : places.routes())
                moving.add(moving(entry.name(), entry.loadout(), shapes.get(entry.name())));
            for (Places.SectorEntry entry : places.sectors())
                moving.add(moving(entry.name(), entry.loadout(), shapes.get(entry.name())));
            return new Whereabouts(base, from, people, moving);
        }

        private Loadout loadout(Optional<String> name) {
            return name.map(scene::loadout).orElseGet(scene::controlLoadout);
        }

        private Moving moving(String name, Optional<String> loadout, Geometry shape) {
            List<Person> points = demands.stream()
                    .filter(one -> one.group().equals(Optional.of(name)))
                    .map(one -> person(one.name(), one.at(), one.end().loadout(), Optional.of(one)))
                    .toList();
            return new Moving(name, loadout(loadout), shape, points);
        }

        private Person person(String name, Position at, Loadout loadout, Optional<Party> demand) {
            double distanceM = GeodesicLine.distanceM(from, at);
            double bearingDeg = distanceM < SAME_PLACE_M
                    ? 0
                    : GeodesicLine.between(from, at).azimuthDeg();
            Optional<HopPath.HopOdds> odds = demand.filter(one -> baseEnd.isPresent() && !one.equals(baseEnd.get()))
                    .flatMap(this::towardsBase);
            return new Person(name, at, loadout, distanceM, (bearingDeg + 360) % 360, odds);
        }

        /** Computed from whom the plan has first, as every talk is, so that all answers say the same. */
        private Optional<HopPath.HopOdds> towardsBase(Party one) {
            Party other = baseEnd.orElseThrow();
            boolean isFirst = demands.indexOf(one) < demands.indexOf(other);
            return isFirst
                    ? book.talk(one, other).map(TalkBook.Talk::odds)
                    : book.talk(other, one).map(talk -> talk.odds().turned());
        }

        private static Geometry lines(List<List<Position>> tracks) {
            List<LineString> lines = new ArrayList<>();
            for (List<Position> track : tracks)
                if (track.size() > 1)
                    lines.add(GEOMETRY.createLineString(track.stream()
                            .map(at -> new Coordinate(at.longitudeDeg(), at.latitudeDeg()))
                            .toArray(Coordinate[]::new)));
            return GEOMETRY.createMultiLineString(lines.toArray(LineString[]::new));
        }
    }
}
