package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NamedPointsTest {
    @TempDir
    private Path folder;

    private List<NamedPoints.NamedPoint> read(String text) throws IOException {
        return NamedPoints.read(Files.writeString(folder.resolve("names.geojson"), text));
    }

    private static String feature(String name, String kind, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{\"name\":\"" + name + "\"},\"geometry\":{\"type\":\"" + kind
                + "\",\"coordinates\":" + coordinates + "}}";
    }

    @Test
    void pointsWithANameAreReadInTheirOrderAndNothingElse() throws IOException {
        assertEquals(
                List.of(
                        new NamedPoints.NamedPoint("Lower Hut", new Position(46.5, 8.1)),
                        new NamedPoints.NamedPoint("Tarn", new Position(46.6, 8.2))),
                read("{\"type\":\"FeatureCollection\",\"features\":["
                        + feature("Lower Hut", "Point", "[8.1,46.5]") + ","
                        + feature("a way", "LineString", "[[8,46],[8,47]]") + ","
                        + feature("", "Point", "[8.1,46.5]") + ","
                        + feature("Tarn", "Point", "[8.2,46.6,1200]") + "]}"));
    }

    @Test
    void aBadFileIsOneLine() {
        for (String[] row : new String[][] {
            {"{\"type\":\"FeatureCollection\",\"features\":[]}", "has no point with a name"},
            {feature("far", "Point", "[2600000,1200000]"), "longitude, then latitude"},
            {feature("words", "Point", "[\"8.1\",true]"), "longitude, then latitude"},
            {"{\"type\":", "is not JSON"}
        }) {
            InputFault fault = assertThrows(InputFault.class, () -> read(row[0]));
            assertTrue(fault.getMessage().contains(row[1]), fault.getMessage());
        }
    }
}
