package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AreaPolygonsTest {
    private static final String SQUARE =
            "{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[2,0],[2,2],[0,2],[0,0]],[[0.5,0.5],[1.5,0.5],[1.5,1.5],[0.5,1.5],[0.5,0.5]]]}";

    @TempDir
    Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("area.geojson"), text);
    }

    @Test
    void polygonsAddUpAndHolesAreLeftOut() throws IOException {
        assertEquals(3, AreaPolygons.read(file(SQUARE)).getArea(), 1e-12);
        String more = "{\"type\":\"Polygon\",\"coordinates\":[[[1,0],[3,0],[3,2],[1,2],[1,0]]]}";
        String both =
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{},\"geometry\":"
                        + SQUARE + "},{\"type\":\"Feature\",\"properties\":null,\"geometry\":" + more + "}]}";
        // by hand: together 3 by 2 less the left half of the hole
        assertEquals(5.5, AreaPolygons.read(file(both)).getArea(), 1e-12);
    }

    /** A star of long spikes: all of its edges lie beside one another. */
    private String star(int corners) {
        StringBuilder ring = new StringBuilder();
        for (int i = 0; i <= corners; i++) {
            double turn = 2 * Math.PI * (i % corners) / corners;
            double radius = 1 + 0.3 * (i % corners % 2);
            ring.append(i == 0 ? "" : ",").append("[" + radius * Math.cos(turn) + "," + radius * Math.sin(turn) + "]");
        }
        return "{\"type\":\"Polygon\",\"coordinates\":[[" + ring + "]]}";
    }

    @Test
    void moreCornersThanABorderHasAreRefused() throws IOException {
        assertTrue(AreaPolygons.read(file(star(4000))).getArea() > 3);
        Path file = file(star(20_000));
        InputFault fault = assertThrows(InputFault.class, () -> AreaPolygons.read(file));
        assertTrue(fault.getMessage().contains("has more than 20000 corners"), fault.getMessage());
    }

    @Test
    void allFaultsAreToldTogether() throws IOException {
        Path file = file("{\"type\":\"FeatureCollection\",\"features\":["
                + "{\"geometry\":{\"type\":\"Point\",\"coordinates\":[0,0]}},"
                + "{\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[1,0],[1,1]]]}},"
                + "{\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[461000,5148000],[1,1],[0,0]]]}},"
                + "{\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[2,2],[2,0],[0,2],[0,0]]]}}]}");
        InputFault fault = assertThrows(InputFault.class, () -> AreaPolygons.read(file));
        assertEquals(4, fault.faults().size(), fault.getMessage());
        assertTrue(fault.getMessage().contains("feature 2"), fault.getMessage());
        assertTrue(fault.getMessage().contains("not closed"), fault.getMessage());
        assertTrue(fault.getMessage().contains("crosses itself"), fault.getMessage());
    }

    @Test
    void notJsonAndNoPolygonAreFaults() throws IOException {
        Path broken = file("{\"type\":");
        assertThrows(InputFault.class, () -> AreaPolygons.read(broken));
        Path empty = file("{\"type\":\"FeatureCollection\",\"features\":[]}");
        assertThrows(InputFault.class, () -> AreaPolygons.read(empty));
    }
}
