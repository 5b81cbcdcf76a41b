package handreach.report.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.geodesy.Position;
import handreach.reach.CellGrid;
import handreach.reach.ReachOutline;
import handreach.report.SampleFigures;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;

class GeoJsonTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** Corners are rounded to 1e-7 degrees; some 2 degrees of edges in all. */
    private static final double AREA_OF_ROUNDED_CORNERS_DEG2 = 2e-7;

    private static JsonNode written(Geometry geometry) {
        String text = GeoJson.text(List.of(new GeoJson.Feature(geometry, Map.of("name", "x"))));
        return JsonText.parsed(text).get("features").get(0).get("geometry");
    }

    /** Twice the signed area of a ring, positive when counter-clockwise. */
    private static double turn(JsonNode ring) {
        double sum = 0;
        for (int i = 0; i + 1 < ring.size(); i++) {
            JsonNode a = ring.get(i);
            JsonNode b = ring.get(i + 1);
            sum += a.get(0).asDouble() * b.get(1).asDouble()
                    - b.get(0).asDouble() * a.get(1).asDouble();
        }
        return sum;
    }

    private static LinearRing ring(double... xy) {
        Coordinate[] points = new Coordinate[xy.length / 2];
        for (int i = 0; i < points.length; i++) points[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
        return GEOMETRY.createLinearRing(points);
    }

    @Test
    void shellsRunCounterClockwiseAndHolesClockwiseHoweverTheyCame() { // RFC 7946, 3.1.6
        LinearRing shell = ring(0, 0, 0, 4, 4, 4, 4, 0, 0, 0);
        LinearRing hole = ring(1, 1, 2, 1, 2, 2, 1, 2, 1, 1);
        for (LinearRing outer : List.of(shell, shell.reverse()))
            for (LinearRing inner : List.of(hole, hole.reverse())) {
                JsonNode rings = written(GEOMETRY.createPolygon(outer, new LinearRing[] {inner}))
                        .get("coordinates");
                assertEquals(2, rings.size());
                assertTrue(turn(rings.get(0)) > 0);
                assertTrue(turn(rings.get(1)) < 0);
                assertEquals(rings.get(0).get(0), rings.get(0).get(4), "closed");
            }
    }

    @Test
    void anOutlineOfCellsKeepsItsHole() {
        CellGrid grid = CellGrid.around(new Position(36.3, -84.24), 1000, 50);
        JsonNode geometry = written(ReachOutline.of(grid, cell -> {
            double d = Math.hypot(grid.rowOf(cell) - 20, grid.columnOf(cell) - 20);
            return d < 18 && d > 6;
        }));
        assertEquals("MultiPolygon", geometry.get("type").asText());
        assertEquals(1, geometry.get("coordinates").size());
        assertEquals(2, geometry.get("coordinates").get(0).size());
        assertTrue(turn(geometry.get("coordinates").get(0).get(0)) > 0);
        assertTrue(turn(geometry.get("coordinates").get(0).get(1)) < 0);
    }

    @Test
    void whatRunsPast180IsCutThere() { // RFC 7946, 3.1.9
        JsonNode geometry = written(GEOMETRY.createPolygon(ring(179, 0, 181, 0, 181, 1, 179, 1, 179, 0)));
        assertEquals("MultiPolygon", geometry.get("type").asText());
        double area = 0;
        for (JsonNode polygon : geometry.get("coordinates")) {
            area += turn(polygon.get(0)) / 2;
            for (JsonNode point : polygon.get(0))
                assertTrue(Math.abs(point.get(0).asDouble()) <= 180);
        }
        assertEquals(2, area, 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {180, -180, 179.985, 179.998, -179.985, -179.99, -179.999})
    void anOutlineOfCellsRoundThe180thMeridianKeepsItsAreaAndItsSides(double centreDeg) {
        CellGrid grid = CellGrid.around(new Position(-16.8, centreDeg), 3000, 200);
        // every third column out: many parts, some of which touch the cut
        Geometry outline = ReachOutline.of(grid, cell -> cell % 3 != 0);
        JsonNode geometry = written(outline);
        double area = 0;
        for (JsonNode polygon : geometry.get("coordinates"))
            for (JsonNode ring : polygon) {
                area += turn(ring) / 2;
                double west = 999;
                double east = -999;
                for (JsonNode point : ring) {
                    west = Math.min(west, point.get(0).asDouble());
                    east = Math.max(east, point.get(0).asDouble());
                }
                assertTrue(west >= -180 && east <= 180, west + " to " + east);
                assertTrue(east - west < 1, "a ring runs round the earth: " + west + " to " + east);
            }
        assertEquals(outline.getArea(), area, AREA_OF_ROUNDED_CORNERS_DEG2);
    }

    @Test
    void cuttingLeavesTheGivenGeometryAsItWas() {
        Geometry given = GEOMETRY.createPolygon(ring(179, 0, 181, 0, 181, 1, 179, 1, 179, 0));
        Geometry before = given.copy();
        written(given);
        assertTrue(given.equalsExact(before));
    }

    @Test
    void sevenDecimalsAreWrittenAndNoExponents() {
        String text = GeoJson.text(
                List.of(new GeoJson.Feature(GEOMETRY.createPoint(new Coordinate(8.123456789, 0.00000012)), Map.of())));
        assertTrue(text.contains("[8.1234568,1E-7]") || text.contains("[8.1234568,0.0000001]"), text);
        assertFalse(text.contains("8.12345678"));
    }

    @Test
    void propertiesKeepTheirOrderTypesAndWords() {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("name", SampleFigures.HOSTILE.substring(0, 30));
        properties.put("km", 2.5);
        properties.put("n", 3);
        properties.put("known", true);
        properties.put("none", null);
        JsonNode node = JsonText.parsed(GeoJson.text(
                        List.of(new GeoJson.Feature(GEOMETRY.createPoint(new Coordinate(1, 2)), properties))))
                .get("features")
                .get(0)
                .get("properties");
        assertEquals(List.copyOf(properties.keySet()), List.copyOf(names(node)));
        assertEquals(properties.get("name"), node.get("name").asText());
        assertEquals(2.5, node.get("km").asDouble());
        assertTrue(node.get("none").isNull());
        assertThrows(
                IllegalArgumentException.class,
                () -> GeoJson.text(List.of(
                        new GeoJson.Feature(GEOMETRY.createPoint(new Coordinate(1, 2)), Map.of("bad", Double.NaN)))));
    }

    private static List<String> names(JsonNode node) {
        List<String> names = new java.util.ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        return names;
    }

    @Test
    void anEmptyGeometryIsNull() { // RFC 7946, 3.2: unlocated
        assertTrue(written(GEOMETRY.createMultiPolygon()).isNull());
    }
}
