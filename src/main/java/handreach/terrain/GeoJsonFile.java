package handreach.terrain;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import handreach.input.InputFault;
import handreach.input.SourceText;

/** The tree of a GeoJSON file. */
final class GeoJsonFile {
    private GeoJsonFile() {}

    static JsonNode root(SourceText source) {
        try {
            return new JsonMapper().readTree(source.text());
        } catch (JacksonException e) {
            int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNr());
            throw new InputFault(
                    source.name(), line, "is not JSON: " + e.getOriginalMessage() + ". Mend it, or export it again.");
        }
    }
}
