package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.PlaceForm;
import handreach.geodesy.Position;
import handreach.geodesy.UtmZone;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;

class GraticuleTest {
    private static final MapFrame FRAME = MapFrame.around(new Position(46.5, 8.1), 5000, 700, 700);

    private static List<String> labels(List<GridLine> lines, boolean runsNorth) {
        return lines.stream()
                .filter(l -> l.runsNorth() == runsNorth)
                .map(GridLine::label)
                .toList();
    }

    @Test
    void degreesAreRoundAndCarryTheirSide() { // by hand: 5 km is 0.045° of latitude and 0.065° of longitude either way
        List<GridLine> lines = Graticule.latitudeLongitude(FRAME, 5);
        assertEquals(
                List.of("8.04° E", "8.06° E", "8.08° E", "8.10° E", "8.12° E", "8.14° E", "8.16° E"),
                labels(lines, true));
        assertEquals(List.of("46.46° N", "46.48° N", "46.50° N", "46.52° N", "46.54° N"), labels(lines, false));
    }

    @Test
    void minutesAreWrittenWithTwoDigits() {
        List<GridLine> lines = Graticule.of(FRAME, PlaceForm.DEGREES_MINUTES, 5);
        assertEquals(List.of("8°04' E", "8°06' E", "8°08' E"), labels(lines, true));
        assertEquals(List.of("46°28' N", "46°30' N", "46°32' N"), labels(lines, false));
    }

    @Test
    void utmLinesLieOnWholeKilometres() { // oracle: forward projection of every point of every line
        UtmZone zone = UtmZone.of(FRAME.centre());
        double[] at = new double[2];
        List<GridLine> lines = Graticule.of(FRAME, PlaceForm.MGRS, 5);
        assertTrue(lines.size() >= 8, lines.size() + " lines");
        for (GridLine line : lines) {
            double km = Double.parseDouble(line.label().split(" ")[0]);
            for (Coordinate c : line.line().getCoordinates()) {
                zone.project(c.getY(), c.getX(), at);
                assertEquals(1000 * km, line.runsNorth() ? at[0] : at[1], 0.001, line.label());
            }
        }
    }

    @Test
    void metricGridLinesSayTheirZoneAndDegreesNeedNone() {
        for (GridLine line : Graticule.of(FRAME, PlaceForm.UTM, 5)) assertEquals("32T", line.zone());
        for (GridLine line : Graticule.of(FRAME, PlaceForm.DECIMAL, 5)) assertEquals("", line.zone());
    }

    /** By hand: 200 km round 47 N, 11.9 E reaches from zone 32 into 33, whose edge lies at 12 E. */
    @Test
    void everyZoneHasItsOwnLinesAndTheyEndWhereItEnds() {
        MapFrame frame = MapFrame.around(new Position(47, 11.9), 200_000, 700, 700);
        List<GridLine> lines = Graticule.of(frame, PlaceForm.UTM, 5);
        assertEquals(Set.of("32T", "33T"), lines.stream().map(GridLine::zone).collect(Collectors.toSet()));
        for (GridLine line : lines)
            for (Coordinate c : line.line().getCoordinates())
                assertTrue(line.zone().equals("32T") ? c.getX() <= 12 : c.getX() >= 12, line + " at " + c);
        assertTrue(lines.stream().anyMatch(line -> nearest(line, 12) < 0.001), "none comes to the edge");
    }

    /** 5 degrees across the equator: a northing never falls below nought, and no easting of a zone does. */
    @Test
    void noLabelIsBelowNoughtNorNoughtFromTheOtherSide() {
        MapFrame frame = MapFrame.around(new Position(0.1, 30.2), 250_000, 900, 900);
        List<String> labels = new ArrayList<>(labels(Graticule.utm(frame, 6), true));
        labels.addAll(labels(Graticule.utm(frame, 6), false));
        assertTrue(labels.contains("0 N"), labels.toString());
        assertTrue(labels.stream().noneMatch(label -> label.startsWith("-")), labels.toString());
    }

    private static double nearest(GridLine line, double longitudeDeg) {
        double nearest = Double.MAX_VALUE;
        for (Coordinate c : line.line().getCoordinates())
            nearest = Math.min(nearest, Math.abs(c.getX() - longitudeDeg));
        return nearest;
    }

    @Test
    void acrossThe180thMeridianLabelsTurn() {
        MapFrame frame = MapFrame.around(new Position(-17, 180), 20_000, 600, 600);
        List<String> labels = labels(Graticule.latitudeLongitude(frame, 4), true);
        assertEquals(List.of("179.9° E", "180.0° W", "179.9° W"), labels);
    }

    @Test
    void beyondUtmDegreesAreShown() {
        MapFrame frame = MapFrame.around(new Position(85, 10), 5000, 600, 600);
        assertTrue(Graticule.utm(frame, 5).isEmpty());
        assertTrue(labels(Graticule.of(frame, PlaceForm.UTM, 4), false).get(0).endsWith("° N"));
    }

    @Test
    void scaleBarsAreRoundInBothUnits() {
        assertEquals(new ScaleBar(2000, 4, "2 km"), ScaleBar.fitting(4200, Lengths.METRIC));
        assertEquals(new ScaleBar(500, 5, "500 m"), ScaleBar.fitting(900, Lengths.METRIC));
        assertEquals("2 mi", ScaleBar.fitting(4200, Lengths.IMPERIAL).label());
        assertEquals(2 * 1609.344, ScaleBar.fitting(4200, Lengths.IMPERIAL).lengthM(), 1e-9);
        assertEquals("2000 ft", ScaleBar.fitting(900, Lengths.IMPERIAL).label());
    }
}
