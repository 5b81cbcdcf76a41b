package handreach.report.file;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;

/** JSON read back by the library alone, with none of the program's own settings. */
public final class JsonText {
    private JsonText() {}

    public static JsonNode parsed(String text) {
        try {
            return new ObjectMapper().readTree(text);
        } catch (JsonProcessingException e) {
            throw new AssertionError("not JSON: " + text, e);
        }
    }
}
