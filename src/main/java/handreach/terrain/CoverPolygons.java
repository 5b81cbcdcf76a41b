package handreach.terrain;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.SourceText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import org.locationtech.jts.algorithm.RectangleLineIntersector;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Land cover drawn by hand: GeoJSON polygons, each with a property {@code cover}. Later polygons lie on top of earlier ones; outside
 * all of them another land cover answers. Source of the format: RFC 7946.
 */
public final class CoverPolygons implements LandCover {
    /** Side of the cells by which polygons are looked up: some 200 to 500 m. */
    private static final double CELL_DEG = 0.005;
    /** Polygons noted for cells, over all of them; beyond that the notes are begun anew. */
    private static final long MOST_NOTED = 4_000_000;

    private final LandCover outside;
    private final List<Area> areas;
    private final Envelope all = new Envelope();
    private final STRtree tree = new STRtree();
    private final Map<Long, List<Area>> cells = new ConcurrentHashMap<>();
    private final AtomicLong noted = new AtomicLong();

    private CoverPolygons(List<Area> areas, LandCover outside) {
        this.outside = outside;
        this.areas = List.copyOf(areas);
        for (Area area : areas) {
            all.expandToInclude(area.box());
            tree.insert(area.box(), area);
        }
        tree.build();
    }

    /** One polygon; what finds a place in it is built when the first one asks. */
    private static final class Area {
        /** Segments of a polygon that is asked whether it fills a cell; in a longer one only places are asked for. */
        private static final int MOST_SEGMENTS = 2000;

        private final int order;
        private final Cover cover;
        private final Polygon polygon;
        private volatile IndexedPointInAreaLocator inside;

        Area(int order, Cover cover, Polygon polygon) {
            this.order = order;
            this.cover = cover;
            this.polygon = polygon;
        }

        int order() {
            return order;
        }

        Envelope box() {
            return polygon.getEnvelopeInternal();
        }

        boolean holds(Coordinate place) {
            if (!box().covers(place)) return false;
            if (inside == null) index();
            return inside.locate(place) != Location.EXTERIOR;
        }

        private synchronized void index() {
            if (inside != null) return;
            IndexedPointInAreaLocator made = new IndexedPointInAreaLocator(polygon);
            // Its own index is built at the first question.
            made.locate(new Coordinate(0, 0));
            inside = made;
        }

        /** Whether a rectangle surely lies within: its middle does, and no edge comes near. */
        boolean fills(Envelope cell) {
            if (!box().covers(cell) || polygon.getNumPoints() > MOST_SEGMENTS || !holds(cell.centre())) return false;
            if (isCrossed(cell, polygon.getExteriorRing())) return false;
            for (int i = 0; i < polygon.getNumInteriorRing(); i++)
                if (isCrossed(cell, polygon.getInteriorRingN(i))) return false;
            return true;
        }

        private static boolean isCrossed(Envelope cell, LinearRing ring) {
            RectangleLineIntersector meets = new RectangleLineIntersector(cell);
            for (int i = 1; i < ring.getNumPoints(); i++)
                if (meets.intersects(ring.getCoordinateN(i - 1), ring.getCoordinateN(i))) return true;
            return false;
        }
    }

    /** The polygons that may hold a place of a cell, topmost first, down to one that fills it. */
    private List<Area> areasOf(long row, long column) {
        return cells.computeIfAbsent(row * (1L << 20) + column, key -> {
            Envelope cell = new Envelope(
                    column * CELL_DEG - 180,
                    (column + 1) * CELL_DEG - 180,
                    row * CELL_DEG - 90,
                    (row + 1) * CELL_DEG - 90);
            // A place at the very edge may be rounded across it.
            cell.expandBy(1e-9);
            List<Area> found = new ArrayList<>();
            tree.query(cell, item -> found.add((Area) item));
            found.sort(Comparator.comparingInt(Area::order).reversed());
            int last = 0;
            while (last < found.size() && !found.get(last).fills(cell)) last++;
            List<Area> kept = List.copyOf(found.subList(0, Math.min(found.size(), last + 1)));
            noted.addAndGet(kept.size() + 1L);
            return kept;
        });
    }

    /**
     * Reads polygons.
     *
     * @shape file in, cover out
     * @unit degrees, longitude first
     * @valid a FeatureCollection of Polygon and MultiPolygon features; else {@link InputFault} with all faults
     * @error edges are straight in degrees
     * @source RFC 7946
     */
    public static CoverPolygons read(Path file, LandCover outside) {
        return read(SourceText.read(file), outside);
    }

    public static CoverPolygons read(SourceText source, LandCover outside) {
        JsonNode root = GeoJsonFile.root(source);
        if (!root.path("type").asText().equals("FeatureCollection")
                || !root.path("features").isArray())
            throw new InputFault(
                    source.name(), 0, "is not a GeoJSON FeatureCollection. Export the polygons as GeoJSON.");
        Reader reader = new Reader(source.name());
        int number = 0;
        for (JsonNode feature : root.path("features")) reader.feature(++number, feature);
        reader.faults.throwIfAny();
        return new CoverPolygons(reader.areas, outside);
    }

    /** Whether the box round any polygon meets a rectangle. */
    public boolean holdsAny(TileBounds area) {
        return areas.stream()
                .map(Area::box)
                .anyMatch(box -> new TileBounds(box.getMinY(), box.getMinX(), box.getMaxY(), box.getMaxX())
                        .overlap(area)
                        .isPresent());
    }

    @Override
    public void covers(double[] latitudeDeg, double[] longitudeDeg, int count, Cover[] cover) {
        outside.covers(latitudeDeg, longitudeDeg, count, cover);
        Coordinate place = new Coordinate();
        long lastRow = -1;
        long lastColumn = -1;
        List<Area> near = List.of();
        for (int i = 0; i < count; i++) {
            if (!all.covers(longitudeDeg[i], latitudeDeg[i])) continue;
            place.x = longitudeDeg[i];
            place.y = latitudeDeg[i];
            long row = (long) Math.floor((place.y + 90) / CELL_DEG);
            long column = (long) Math.floor((place.x + 180) / CELL_DEG);
            if (row != lastRow || column != lastColumn) {
                near = areasOf(row, column);
                lastRow = row;
                lastColumn = column;
                if (noted.get() > MOST_NOTED) forget();
            }
            for (Area area : near) {
                if (!area.holds(place)) continue;
                cover[i] = area.cover;
                break;
            }
        }
    }

    private void forget() {
        cells.clear();
        noted.set(0);
    }

    private static final class Reader {
        private final GeometryFactory factory = new GeometryFactory();
        private final String name;
        private final Faults faults = new Faults();
        private final List<Area> areas = new ArrayList<>();
        private int number;

        Reader(String name) {
            this.name = name;
        }

        void feature(int count, JsonNode feature) {
            number = count;
            String typed = feature.path("properties").path("cover").asText();
            Optional<Cover> cover = Cover.KEYWORD.find(typed);
            if (typed.isEmpty())
                fault("has no property cover; it is one of " + String.join(", ", Cover.KEYWORD.words()) + ".");
            else if (cover.isEmpty()) fault("has a cover that " + Cover.KEYWORD.fault(typed));
            JsonNode geometry = feature.path("geometry");
            JsonNode coordinates = geometry.path("coordinates");
            switch (geometry.path("type").asText()) {
                case "Polygon" -> polygon(coordinates, cover.orElse(Cover.OPEN));
                case "MultiPolygon" -> {
                    for (JsonNode part : coordinates) polygon(part, cover.orElse(Cover.OPEN));
                }
                default ->
                    fault("is a '" + geometry.path("type").asText()
                            + "', allowed are Polygon and MultiPolygon. Draw it as an area.");
            }
        }

        private void polygon(JsonNode rings, Cover cover) {
            List<LinearRing> made = new ArrayList<>();
            for (JsonNode ring : rings) {
                LinearRing one = ring(ring);
                if (one == null) return;
                made.add(one);
            }
            if (made.isEmpty()) {
                fault("has no ring. Draw it anew.");
                return;
            }
            Polygon polygon = factory.createPolygon(
                    made.get(0), made.subList(1, made.size()).toArray(LinearRing[]::new));
            areas.add(new Area(areas.size(), cover, polygon));
        }

        private LinearRing ring(JsonNode ring) {
            Coordinate[] corners = new Coordinate[ring.size()];
            for (int i = 0; i < corners.length; i++) {
                Optional<Coordinate> corner = GeoJsonFile.corner(ring.path(i));
                if (corner.isEmpty()) {
                    fault("has a corner at " + ring.path(i)
                            + "; allowed is longitude, then latitude, in degrees. Export it in EPSG:4326.");
                    return null;
                }
                corners[i] = corner.get();
            }
            if (corners.length < 4 || !corners[0].equals2D(corners[corners.length - 1])) {
                fault("has a ring that is not closed. Its last corner must repeat the first.");
                return null;
            }
            return factory.createLinearRing(corners);
        }

        private void fault(String text) {
            faults.add(name, 0, "feature " + number + " " + text);
        }
    }
}
