package handreach.terrain;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.SourceText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/** An area drawn by hand: the polygons of a GeoJSON file together, whatever their properties. Source of the format: RFC 7946. */
public final class AreaPolygons {
    /** A border of a large district has some thousands; whether lines cross can take the square of their number. */
    private static final int MOST_CORNERS = 20_000;

    private final GeometryFactory factory = new GeometryFactory();
    private final Faults faults = new Faults();
    private final List<Polygon> polygons = new ArrayList<>();
    private final String name;
    private int number;
    private int corners;

    private AreaPolygons(String name) {
        this.name = name;
    }

    /**
     * Reads an area.
     *
     * @shape file in, one polygon or several out
     * @unit degrees, x is longitude
     * @valid a FeatureCollection, Feature or geometry with at least one Polygon or MultiPolygon; else {@link InputFault} with all
     *     faults
     * @error edges are straight in degrees
     * @source RFC 7946
     */
    public static Geometry read(Path file) {
        SourceText source = SourceText.read(file);
        JsonNode root = GeoJsonFile.root(source);
        AreaPolygons reader = new AreaPolygons(source.name());
        reader.any(root);
        if (reader.faults.isEmpty() && reader.polygons.isEmpty())
            reader.fault("has no polygon. Draw the area as a Polygon and export it as GeoJSON.");
        reader.faults.throwIfAny();
        return UnaryUnionOp.union(reader.polygons);
    }

    private void any(JsonNode node) {
        switch (node.path("type").asText()) {
            case "FeatureCollection" -> {
                for (JsonNode feature : node.path("features")) {
                    number++;
                    any(feature.path("geometry"));
                }
            }
            case "Feature" -> any(node.path("geometry"));
            case "Polygon" -> polygon(node.path("coordinates"));
            case "MultiPolygon" -> {
                for (JsonNode part : node.path("coordinates")) polygon(part);
            }
            default ->
                fault("is a '" + node.path("type").asText()
                        + "', allowed are Polygon and MultiPolygon. Draw it as an area.");
        }
    }

    private void polygon(JsonNode rings) {
        List<LinearRing> made = new ArrayList<>();
        for (JsonNode ring : rings) {
            count(ring.size());
            Coordinate[] corners = new Coordinate[ring.size()];
            for (int i = 0; i < corners.length; i++) {
                Optional<Coordinate> corner = GeoJsonFile.corner(ring.path(i));
                if (corner.isEmpty()) {
                    fault("has a corner at " + ring.path(i)
                            + "; allowed is longitude, then latitude, in degrees. Export it in EPSG:4326.");
                    return;
                }
                corners[i] = corner.get();
            }
            if (corners.length < 4 || !corners[0].equals2D(corners[corners.length - 1])) {
                fault("has a ring that is not closed. Its last corner must repeat the first.");
                return;
            }
            made.add(factory.createLinearRing(corners));
        }
        if (made.isEmpty()) {
            fault("has no ring. Draw it anew.");
            return;
        }
        Polygon polygon =
                factory.createPolygon(made.get(0), made.subList(1, made.size()).toArray(LinearRing[]::new));
        if (polygon.isValid()) polygons.add(polygon);
        else fault("crosses itself. Draw it anew without crossing lines.");
    }

    private void count(int more) {
        corners += more;
        if (corners > MOST_CORNERS)
            throw new InputFault(name, 0, "has more than " + MOST_CORNERS + " corners. Simplify it with a GIS tool.");
    }

    private void fault(String text) {
        faults.add(name, 0, (number > 0 ? "feature " + number + " " : "") + text);
    }
}
