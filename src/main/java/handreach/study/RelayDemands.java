package handreach.study;

import handreach.budget.LinkEnd;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.plan.Questions;
import handreach.relay.Conversation;
import handreach.relay.Party;
import handreach.relay.RelayRequest;
import handreach.terrain.AreaPolygons;
import handreach.walk.GpxTrack;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;

/** People out of a plan as demands: positions as they are, routes and sectors as points spread evenly. */
final class RelayDemands {
    private static final int MOST_ON_ROUTE = 12;
    private static final double ROUTE_STEP_M = 500;
    private static final int MOST_IN_SECTOR = 16;
    private static final int USUAL_IN_SECTOR = 9;
    /** Of a sector that is but a sliver of its box so many places are looked at. */
    private static final double MOST_LOOKED_AT = 100_000;

    private static final int MOST_NAMED = 5;

    private final Scene scene;
    private final List<String> warnings;
    private final List<Party> demands = new ArrayList<>();
    private final List<String> offTheTiles = new ArrayList<>();
    private final List<String> unladen = new ArrayList<>();

    private RelayDemands(Scene scene, List<String> warnings) {
        this.scene = scene;
        this.warnings = warnings;
    }

    static List<Party> of(Scene scene, List<String> warnings) {
        List<Party> demands = new ArrayList<>(all(scene, warnings));
        stations(scene, warnings).forEach(demands::add);
        if (demands.size() > RelayRequest.MOST_DEMANDS)
            throw scene.file()
                    .fault(
                            "relay",
                            "talk",
                            "positions, routes and sectors make " + demands.size() + " places to serve, at most "
                                    + RelayRequest.MOST_DEMANDS
                                    + " are allowed. Leave some out, or give sectors a larger spacing_m.");
        return demands;
    }

    /** Stations with which people must talk: those marked as base, and those that a pair names. */
    private static List<Party> stations(Scene scene, List<String> warnings) {
        RelayDemands reader = new RelayDemands(scene, warnings);
        Questions.RelayQuestion asked = scene.plan().questions().relay();
        for (Places.StationEntry entry : scene.plan().places().stations())
            if (entry.base()
                    || asked.talk() == Questions.WhoTalks.LISTED
                            && asked.pairs().stream().anyMatch(pair -> pair.contains(entry.name())))
                reader.add(new Party(entry.name(), Optional.empty(), entry.at(), StationStudy.end(scene, entry), 1)
                        .asBase());
        reader.tell();
        return reader.demands;
    }

    /** However many they are. */
    static List<Party> all(Scene scene, List<String> warnings) {
        RelayDemands reader = new RelayDemands(scene, warnings);
        Places places = scene.plan().places();
        for (Places.PositionEntry entry : places.positions())
            reader.add(new Party(
                    entry.name(),
                    Optional.empty(),
                    entry.at(),
                    reader.end(entry.name(), entry.loadout()),
                    entry.weight(),
                    scene.headingDeg(entry),
                    scene.isBase(entry)));
        for (Places.RouteEntry entry : places.routes()) reader.route(entry);
        for (Places.SectorEntry entry : places.sectors()) reader.sector(entry);
        reader.tell();
        return reader.demands;
    }

    private void add(Party demand) {
        if (scene.tiles().at(demand.at()).isVoid()) offTheTiles.add(demand.name());
        else demands.add(demand);
    }

    /** One line a cause, whoever it is met by. */
    private void tell() {
        if (!unladen.isEmpty())
            warnings.add(
                    named(unladen) + (unladen.size() == 1 ? " has" : " have") + " no loadout in the plan: counted with "
                            + scene.controlLoadout().name() + ".");
        if (offTheTiles.size() == 1)
            warnings.add(
                    offTheTiles.get(0)
                            + " lies where no elevation is known and is left out: add the tile, or move it. The rest is answered.");
        else if (!offTheTiles.isEmpty())
            warnings.add(
                    named(offTheTiles)
                            + " lie where no elevation is known and are left out: add the tiles, or move them. The rest is answered.");
    }

    private static String named(List<String> names) {
        if (names.size() <= MOST_NAMED) return String.join(", ", names);
        return String.join(", ", names.subList(0, MOST_NAMED)) + " and " + (names.size() - MOST_NAMED) + " more";
    }

    /** A route or sector, with one line for all of its points that lie off the tiles. */
    private void add(String name, List<Party> points) {
        List<Party> known = points.stream()
                .filter(point -> !scene.tiles().at(point.at()).isVoid())
                .toList();
        int off = points.size() - known.size();
        if (off == points.size()) offTheTiles.add(name);
        else if (off > 0)
            warnings.add(off + " of " + points.size() + " points of " + name + " lie where no elevation is known and "
                    + (off == 1 ? "is" : "are") + " left out: add the tile, or move them. The rest is answered.");
        demands.addAll(known);
    }

    private LinkEnd end(String name, Optional<String> loadout) {
        if (loadout.isEmpty()) unladen.add(name);
        Loadout carried = loadout.map(scene::loadout).orElseGet(scene::controlLoadout);
        return scene.end(carried);
    }

    private void route(Places.RouteEntry entry) {
        List<Position> line = new ArrayList<>();
        GpxTrack.lines(entry.file()).forEach(line::addAll);
        double[] along = new double[line.size()];
        for (int i = 1; i < along.length; i++)
            along[i] = along[i - 1] + GeodesicLine.distanceM(line.get(i - 1), line.get(i));
        double length = along[along.length - 1];
        int count = length == 0 ? 1 : (int) Math.min(MOST_ON_ROUTE, Math.max(2, Math.ceil(length / ROUTE_STEP_M) + 1));
        LinkEnd end = end(entry.name(), entry.loadout());
        List<Party> points = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            double at = count == 1 ? 0 : length * k / (count - 1);
            String name = String.format(Locale.ROOT, "%s, km %.1f", entry.name(), at / 1000);
            points.add(new Party(name, Optional.of(entry.name()), point(line, along, at), end, entry.weight() / count));
        }
        add(entry.name(), points);
    }

    static Position point(List<Position> line, double[] along, double atM) {
        int i = 1;
        while (i < along.length - 1 && along[i] < atM) i++;
        if (along.length < 2 || along[i] <= along[i - 1]) return line.get(Math.min(i, line.size() - 1));
        double share = Math.min(1, (atM - along[i - 1]) / (along[i] - along[i - 1]));
        Position a = line.get(i - 1);
        Position b = line.get(i);
        return share == 0 ? a : GeodesicLine.between(a, b).at(share * (along[i] - along[i - 1]));
    }

    private void sector(Places.SectorEntry entry) {
        Geometry area = AreaPolygons.read(entry.polygon());
        List<Position> lattice = spread(area, entry.spacingM().orElse(0));
        LinkEnd end = end(entry.name(), entry.loadout());
        List<Party> points = new ArrayList<>();
        for (int k = 0; k < lattice.size(); k++)
            points.add(new Party(
                    entry.name() + ", point " + (k + 1),
                    Optional.of(entry.name()),
                    lattice.get(k),
                    end,
                    entry.weight() / lattice.size()));
        add(entry.name(), points);
    }

    /** Points of a square lattice within the area; wider apart when they would be too many. */
    private static List<Position> spread(Geometry area, double spacingM) {
        Envelope box = area.getEnvelopeInternal();
        double metresPerDegree = 111_320;
        double narrowing = Math.cos(Math.toRadians(box.centre().y));
        double areaM2 = area.getArea() * metresPerDegree * metresPerDegree * narrowing;
        double boxM2 = box.getArea() * metresPerDegree * metresPerDegree * narrowing;
        double step = Math.max(
                spacingM > 0 ? spacingM : Math.sqrt(areaM2 / USUAL_IN_SECTOR), Math.sqrt(boxM2 / MOST_LOOKED_AT));
        IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(area);
        while (true) {
            List<Position> points = new ArrayList<>();
            double stepY = step / metresPerDegree;
            double stepX = stepY / narrowing;
            for (double y = box.getMinY() + stepY / 2; y < box.getMaxY(); y += stepY)
                for (double x = box.getMinX() + stepX / 2;
                        x < box.getMaxX() && points.size() <= MOST_IN_SECTOR;
                        x += stepX)
                    if (inside.locate(new Coordinate(x, y)) != Location.EXTERIOR) points.add(new Position(y, x));
            if (points.isEmpty()) {
                Coordinate within = area.getInteriorPoint().getCoordinate();
                return List.of(new Position(within.y, within.x));
            }
            if (points.size() <= MOST_IN_SECTOR) return points;
            step *= 1.1;
        }
    }

    /** Who talks to whom, as the plan has it; a name stands for all points of its route or sector. */
    static List<Conversation> talks(Scene scene, List<Party> demands) {
        Questions.RelayQuestion question = scene.plan().questions().relay();
        Set<Conversation> talks = new LinkedHashSet<>();
        switch (question.talk()) {
            case ALL_TO_BASE -> {
                Places places = scene.plan().places();
                List<String> bases = Stream.concat(
                                places.positions().stream()
                                        .filter(Places.PositionEntry::base)
                                        .map(Places.PositionEntry::name),
                                places.stations().stream()
                                        .filter(Places.StationEntry::base)
                                        .map(Places.StationEntry::name))
                        .toList();
                if (bases.isEmpty())
                    throw scene.file()
                            .fault(
                                    "relay",
                                    "talk",
                                    "talk is \"all-to-base\", but no position or station has base = true. Mark the base.");
                for (String base : bases)
                    for (int d : numbers(demands, base)) talks.addAll(Conversation.allToBase(demands, d));
            }
            case LISTED -> {
                for (List<String> pair : question.pairs())
                    for (int a : numbers(demands, pair.get(0)))
                        for (int b : numbers(demands, pair.get(1))) if (a != b) talks.add(Conversation.of(a, b));
            }
            case ALL_TO_ALL -> talks.addAll(Conversation.allToAll(demands));
        }
        if (talks.isEmpty())
            throw scene.file()
                    .fault(
                            "relay",
                            "talk",
                            "[relay] there are not two people on known ground who must talk. Add positions, routes or sectors.");
        return List.copyOf(talks);
    }

    private static List<Integer> numbers(List<Party> demands, String name) {
        List<Integer> numbers = new ArrayList<>();
        for (int d = 0; d < demands.size(); d++)
            if (demands.get(d).name().equals(name) || demands.get(d).group().equals(Optional.of(name))) numbers.add(d);
        return numbers;
    }
}
