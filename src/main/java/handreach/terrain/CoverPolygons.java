package handreach.terrain;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.SourceText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;

/**
 * Land cover drawn by hand: GeoJSON polygons, each with a property {@code cover}. Later polygons lie on top of earlier ones; outside
 * all of them another land cover answers. Source of the format: RFC 7946.
 */
public final class CoverPolygons implements LandCover {
    private static final int SIDE = 128;
    private static final int MOST_FAULTS = 200;

    private record Area(Cover cover, IndexedPointInAreaLocator inside, Envelope box) {}

    private final LandCover outside;
    private final List<Envelope> boxes;
    private final Envelope all = new Envelope();
    private final Area[][] cells = new Area[SIDE * SIDE][];

    private CoverPolygons(List<Area> areas, LandCover outside) {
        this.outside = outside;
        this.boxes = areas.stream().map(Area::box).toList();
        for (Area area : areas) all.expandToInclude(area.box);
        List<List<Area>> found = new ArrayList<>();
        for (int k = 0; k < cells.length; k++) found.add(new ArrayList<>());
        for (int a = areas.size() - 1; a >= 0; a--) {
            Area area = areas.get(a);
            for (int y = cellY(area.box.getMinY()); y <= cellY(area.box.getMaxY()); y++)
                for (int x = cellX(area.box.getMinX()); x <= cellX(area.box.getMaxX()); x++)
                    found.get(y * SIDE + x).add(area);
        }
        for (int k = 0; k < cells.length; k++) cells[k] = found.get(k).toArray(Area[]::new);
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
        JsonNode root;
        try {
            root = new JsonMapper().readTree(source.text());
        } catch (JacksonException e) {
            int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNr());
            throw new InputFault(
                    source.name(), line, "is not JSON: " + e.getOriginalMessage() + ". Mend it, or export it again.");
        }
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
        return boxes.stream()
                .anyMatch(box -> new TileBounds(box.getMinY(), box.getMinX(), box.getMaxY(), box.getMaxX())
                        .overlap(area)
                        .isPresent());
    }

    private int cellX(double x) {
        return (int) Math.max(0, Math.min(SIDE - 1, (x - all.getMinX()) / all.getWidth() * SIDE));
    }

    private int cellY(double y) {
        return (int) Math.max(0, Math.min(SIDE - 1, (y - all.getMinY()) / all.getHeight() * SIDE));
    }

    @Override
    public void covers(double[] latitudeDeg, double[] longitudeDeg, int count, Cover[] cover) {
        outside.covers(latitudeDeg, longitudeDeg, count, cover);
        Coordinate place = new Coordinate();
        for (int i = 0; i < count; i++) {
            if (!all.covers(longitudeDeg[i], latitudeDeg[i])) continue;
            place.x = longitudeDeg[i];
            place.y = latitudeDeg[i];
            for (Area area : cells[cellY(place.y) * SIDE + cellX(place.x)]) {
                if (!area.box.covers(place) || area.inside.locate(place) == Location.EXTERIOR) continue;
                cover[i] = area.cover;
                break;
            }
        }
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
            IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(polygon);
            inside.locate(new Coordinate(0, 0));
            areas.add(new Area(cover, inside, polygon.getEnvelopeInternal()));
        }

        private LinearRing ring(JsonNode ring) {
            Coordinate[] corners = new Coordinate[ring.size()];
            for (int i = 0; i < corners.length; i++) {
                JsonNode x = ring.path(i).path(0);
                JsonNode y = ring.path(i).path(1);
                if (!x.isNumber() || !y.isNumber()) {
                    fault("has a corner that is not a pair of numbers. Draw it anew.");
                    return null;
                }
                corners[i] = new Coordinate(x.asDouble(), y.asDouble());
                if (!(Math.abs(corners[i].x) <= 180) || !(Math.abs(corners[i].y) <= 90)) {
                    fault("has a corner at " + x.asText() + ", " + y.asText()
                            + "; GeoJSON is longitude, then latitude, in degrees. Export it in EPSG:4326.");
                    return null;
                }
            }
            if (corners.length < 4 || !corners[0].equals2D(corners[corners.length - 1])) {
                fault("has a ring that is not closed. Its last corner must repeat the first.");
                return null;
            }
            return factory.createLinearRing(corners);
        }

        private void fault(String text) {
            if (faults.list().size() < MOST_FAULTS) faults.add(name, 0, "feature " + number + " " + text);
        }
    }
}
