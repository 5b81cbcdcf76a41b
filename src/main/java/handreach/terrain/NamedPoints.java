package handreach.terrain;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.input.Unseen;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;

/** Points of a GeoJSON file that carry a name, in their order. Source of the format: RFC 7946. */
public final class NamedPoints {
    private static final int LONGEST_NAME = 80;

    private NamedPoints() {}

    /** A point and its name. */
    public record NamedPoint(String name, Position at) {}

    /**
     * Reads the named points; what is no point or has no name is passed over.
     *
     * @shape file in, points in their order out
     * @unit degrees
     * @valid GeoJSON with at least one Point whose properties hold a {@code name}; else {@link InputFault}
     * @error none
     * @source RFC 7946, section 3.1.2
     */
    public static List<NamedPoint> read(Path file) {
        SourceText source = SourceText.read(file);
        JsonNode root = GeoJsonFile.root(source);
        List<NamedPoint> points = new ArrayList<>();
        int number = 0;
        for (JsonNode feature : root.path("type").asText().equals("Feature") ? List.of(root) : root.path("features")) {
            number++;
            String name = Unseen.oneLine(feature.path("properties").path("name").asText(""))
                    .strip();
            JsonNode geometry = feature.path("geometry");
            if (name.isEmpty() || !geometry.path("type").asText().equals("Point")) continue;
            Optional<Coordinate> at = GeoJsonFile.corner(geometry.path("coordinates"));
            if (at.isEmpty())
                throw new InputFault(
                        source.name(),
                        0,
                        "feature " + number + " has a point at " + geometry.path("coordinates")
                                + "; allowed is longitude, then latitude, in degrees. Export it in EPSG:4326.");
            points.add(new NamedPoint(shortened(name), new Position(at.get().y, at.get().x)));
        }
        if (points.isEmpty())
            throw new InputFault(
                    source.name(), 0, "has no point with a name. Export points whose properties hold a \"name\".");
        return List.copyOf(points);
    }

    private static String shortened(String name) {
        return name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) + "\u2026" : name;
    }
}
