package handreach.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.input.SourceText;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class CoverPolygonsTest {
    private static final LandCover OPEN = LandCover.uniform(Cover.OPEN);

    /** By hand: a wood of one degree with a clearing in it, and a later lake over its corner. */
    @Test
    void laterPolygonsLieOnTopAndHolesStayOpen() {
        CoverPolygons polygons = read(
                feature(
                        "woodland",
                        "Polygon",
                        "[[[8,46],[9,46],[9,47],[8,47],[8,46]],[[8.4,46.4],[8.6,46.4],[8.6,46.6],[8.4,46.6],[8.4,46.4]]]"),
                feature(
                        "water",
                        "MultiPolygon",
                        "[[[[8.8,46.8],[9.2,46.8],[9.2,47.2],[8.8,47.2],[8.8,46.8]]],[[[7,45],[7.1,45],[7.1,45.1],[7,45]]]]"));
        assertEquals(Cover.WOODLAND, polygons.coverAt(46.2, 8.2));
        assertEquals(Cover.OPEN, polygons.coverAt(46.5, 8.5));
        assertEquals(Cover.WATER, polygons.coverAt(46.9, 8.9));
        assertEquals(Cover.WATER, polygons.coverAt(47.1, 9.1));
        assertEquals(Cover.WATER, polygons.coverAt(45.02, 7.05));
        assertEquals(Cover.OPEN, polygons.coverAt(48, 8.2));
        assertEquals(Cover.OPEN, polygons.coverAt(-46.2, 8.2));
    }

    /** Oracle: JTS asked polygon by polygon, from the last to the first. */
    @Test
    void agreesWithAskingEveryPolygon() {
        Random random = new Random(20260118);
        GeometryFactory factory = new GeometryFactory();
        int n = 40;
        String[] features = new String[n];
        Polygon[] shapes = new Polygon[n];
        Cover[] covers = new Cover[n];
        for (int k = 0; k < n; k++) {
            double x = 8 + random.nextDouble();
            double y = 46 + random.nextDouble();
            Coordinate[] ring = new Coordinate[8];
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < 8; i++) {
                double r = 0.05 + 0.15 * random.nextDouble();
                ring[i] = i == 7 ? ring[0] : new Coordinate(x + r * Math.cos(i * 0.9), y + r * Math.sin(i * 0.9));
                text.append(i == 0 ? "" : ",")
                        .append("[")
                        .append(ring[i].x)
                        .append(",")
                        .append(ring[i].y)
                        .append("]");
            }
            shapes[k] = factory.createPolygon(ring);
            covers[k] = Cover.values()[1 + random.nextInt(5)];
            features[k] = feature(covers[k].word(), "Polygon", "[[" + text + "]]");
        }
        CoverPolygons polygons = read(features);
        for (int i = 0; i < 3000; i++) {
            double lon = 7.8 + 1.4 * random.nextDouble();
            double lat = 45.8 + 1.4 * random.nextDouble();
            Cover expected = Cover.OPEN;
            for (int k = 0; k < n; k++)
                if (shapes[k].covers(factory.createPoint(new Coordinate(lon, lat)))) expected = covers[k];
            assertEquals(expected, polygons.coverAt(lat, lon));
        }
    }

    @Test
    void allFaultsAreToldTogether() {
        InputFault fault = assertThrows(
                InputFault.class,
                () -> read(
                        feature("wodland", "Polygon", "[[[8,46],[9,46],[9,47],[8,46]]]"),
                        feature("water", "Point", "[8,46]"),
                        feature("water", "Polygon", "[[[46,98],[9,46],[9,47],[46,98]]]"),
                        feature("water", "Polygon", "[[[8,46],[9,46],[9,47],[8,47]]]"),
                        feature("water", "Polygon", "[[[8,\"x\"],[9,46],[9,47],[8,46]]]")));
        assertEquals(5, fault.faults().size());
        String all = fault.getMessage();
        assertTrue(
                all.contains(
                        "cover.geojson: feature 1 has a cover that is \"wodland\", allowed is open, water, woodland"),
                all);
        assertTrue(all.contains("Did you mean woodland?"), all);
        assertTrue(all.contains("feature 2 is a 'Point'"), all);
        assertTrue(all.contains("feature 3 has a corner at [46,98]; allowed is longitude, then latitude"), all);
        assertTrue(all.contains("feature 4 has a ring that is not closed"), all);
        assertTrue(all.contains("feature 5 has a corner at [8,\"x\"]; allowed is longitude, then latitude"), all);
    }

    @Test
    void whatIsNotGeoJsonIsExplained() {
        assertTrue(said("{\"type\":\"FeatureCollection\",\n\"features\":[}")
                .startsWith("cover.geojson line 2: is not JSON"));
        assertTrue(said("[1]").contains("is not a GeoJSON FeatureCollection"));
        assertTrue(said("[".repeat(5000)).contains("is not JSON"), "no depth brings it down");
    }

    private static String said(String text) {
        return assertThrows(InputFault.class, () -> CoverPolygons.read(SourceText.of("cover.geojson", text), OPEN))
                .getMessage();
    }

    private static String feature(String cover, String type, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{\"cover\":\"" + cover + "\"},\"geometry\":{\"type\":\"" + type
                + "\",\"coordinates\":" + coordinates + "}}";
    }

    private static CoverPolygons read(String... features) {
        return CoverPolygons.read(
                SourceText.of(
                        "cover.geojson",
                        "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}"),
                OPEN);
    }
}
