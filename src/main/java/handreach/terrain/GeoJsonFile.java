package handreach.terrain;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.input.SourceText;
import java.util.Optional;
import java.util.regex.Pattern;
import org.locationtech.jts.geom.Coordinate;

/** The tree of a GeoJSON file. */
final class GeoJsonFile {
    /** Where the library's users may set a bound, which is of no use to those of this program. */
    private static final Pattern SETTING = Pattern.compile(", from `[^`]*`");

    private GeoJsonFile() {}

    /** Longitude, then latitude; nothing where they are no numbers, or none of the earth. */
    static Optional<Coordinate> corner(JsonNode pair) {
        JsonNode longitude = pair.path(0);
        JsonNode latitude = pair.path(1);
        boolean isPlace = longitude.isNumber()
                && latitude.isNumber()
                && Position.LONGITUDE.accepts(longitude.asDouble())
                && Position.LATITUDE.accepts(latitude.asDouble());
        return isPlace ? Optional.of(new Coordinate(longitude.asDouble(), latitude.asDouble())) : Optional.empty();
    }

    static JsonNode root(SourceText source) {
        try {
            return new JsonMapper().readTree(source.text());
        } catch (JacksonException e) {
            int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNr());
            throw new InputFault(
                    source.name(),
                    line,
                    "is not JSON: " + SETTING.matcher(e.getOriginalMessage()).replaceAll("")
                            + ". Mend it, or export it again.");
        }
    }
}
