package handreach.geodesy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class GeodesicLineTest {
    private static final double ONE_MILLIMETRE = 0.001;
    private static final double FILL_ERROR_M = 0.0002;
    private static final double ROUNDING_OF_AZIMUTH = 6e-10;

    @ParameterizedTest
    @CsvFileSource(resources = "geodesic-geodtest.csv", useHeadersInDisplayName = true)
    void agreesWithThePublishedSet(
            double lat1, double lon1, double azi1, double lat2, double lon2, double azi2, double distanceM) {
        Position from = new Position(lat1, lon1);
        Position to = new Position(lat2, lon2);
        GeodesicLine line = GeodesicLine.between(from, to);
        assertEquals(distanceM, line.lengthM(), ONE_MILLIMETRE);
        assertEquals(0, turn(azi1 - line.azimuthDeg()), 1e-9);
        assertEquals(0, turn(azi2 - line.finalAzimuthDeg()), 1e-9);
        assertEquals(distanceM, GeodesicLine.distanceM(from, to), ONE_MILLIMETRE);
        assertSamePlace(to, GeodesicLine.destination(from, azi1, distanceM));
        assertSamePlace(to, line.at(distanceM));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "geodesic-geodsolve.csv", useHeadersInDisplayName = true)
    void agreesOnShortLines(
            double lat1, double lon1, double lat2, double lon2, double azi1, double azi2, double distanceM) {
        Position from = new Position(lat1, lon1);
        Position to = new Position(lat2, lon2);
        GeodesicLine line = GeodesicLine.between(from, to);
        assertEquals(distanceM, line.lengthM(), ONE_MILLIMETRE);
        assertEquals(0, turn(azi1 - line.azimuthDeg()), ROUNDING_OF_AZIMUTH);
        assertEquals(0, turn(azi2 - line.finalAzimuthDeg()), ROUNDING_OF_AZIMUTH);
    }

    /** By hand: one degree of the equator is a·π/180 = 111 319.4908 m, and a quarter of it lies at 0.25 degrees. */
    @Test
    void theEquatorIsACircle() {
        GeodesicLine line = GeodesicLine.between(new Position(0, 0), new Position(0, 1));
        assertEquals(6_378_137 * Math.PI / 180, line.lengthM(), 1e-6);
        assertEquals(0.25, line.at(line.lengthM() / 4).longitudeDeg(), 1e-12);
    }

    @Test
    void coincidentEndsGiveNoLength() {
        GeodesicLine line = GeodesicLine.between(new Position(46, 8), new Position(46, 8));
        assertEquals(0, line.lengthM());
        double[] lat = new double[3];
        double[] lon = new double[3];
        line.fill(3, lat, lon);
        assertArrayEquals(new double[] {46, 46, 46}, lat);
        assertArrayEquals(new double[] {8, 8, 8}, lon);
    }

    /** Oracle: the library's own position at every sample. */
    @Test
    void filledSamplesLieOnTheExactLine() {
        Random random = new Random(20260101);
        double worstM = 0;
        for (int trial = 0; trial < 1500; trial++) {
            double lat = Math.toDegrees(Math.asin(2 * random.nextDouble() - 1));
            if (trial % 5 == 0) lat = Math.signum(lat) * (90 - random.nextDouble() * 5);
            double lon = trial % 7 == 0 ? 179.9 : random.nextDouble() * 360 - 180;
            Position from = new Position(lat, lon);
            double lengthM = 100_000 * Math.pow(random.nextDouble(), 2) + 10;
            worstM = Math.max(worstM, worstOffM(from, random.nextDouble() * 360, lengthM, 2 + random.nextInt(60)));
        }
        assertTrue(worstM < FILL_ERROR_M, "worst " + worstM + " m");
    }

    @ParameterizedTest
    @CsvSource({"10,300000", "-45,2500000", "70,900000", "89.9,50000"})
    void longAndPolarLinesAreFilledAsWell(double lat, double lengthM) {
        for (double azimuth = 5; azimuth < 360; azimuth += 36)
            assertTrue(worstOffM(new Position(lat, 100), azimuth, lengthM, 101) < FILL_ERROR_M);
    }

    @Test
    void crossingTheDateLineKeepsLongitudesInRange() {
        double[] lat = new double[101];
        double[] lon = new double[101];
        GeodesicLine.between(new Position(-17, 179.9), new Position(-17.1, -179.9))
                .fill(101, lat, lon);
        for (int i = 0; i < 101; i++) assertTrue(lon[i] >= -180 && lon[i] < 180, "sample " + i + ": " + lon[i]);
        assertTrue(lon[40] > 179 && lon[60] < -179);
    }

    @Test
    void theWayBackIsTheSameWay() {
        Position here = new Position(61, 7);
        Position other = new Position(60.2, 8.4);
        GeodesicLine there = GeodesicLine.between(here, other);
        GeodesicLine back = GeodesicLine.between(other, here);
        assertEquals(there.lengthM(), back.lengthM(), 1e-8);
        assertEquals(there.azimuthDeg(), (back.finalAzimuthDeg() + 180) % 360, 1e-9);
        assertSamePlace(there.at(there.lengthM() / 3), back.at(there.lengthM() * 2 / 3));
    }

    @Test
    void nonsenseIsRefused() {
        Position from = new Position(0, 0);
        GeodesicLine line = GeodesicLine.between(from, new Position(0, 1));
        assertThrows(IllegalArgumentException.class, () -> line.at(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> line.fill(1, new double[1], new double[1]));
        assertThrows(IllegalArgumentException.class, () -> GeodesicLine.destination(from, Double.POSITIVE_INFINITY, 1));
    }

    private static double worstOffM(Position from, double azimuthDeg, double lengthM, int count) {
        GeodesicLine line = GeodesicLine.between(from, GeodesicLine.destination(from, azimuthDeg, lengthM));
        double[] lat = new double[count];
        double[] lon = new double[count];
        line.fill(count, lat, lon);
        double worst = 0;
        for (int i = 0; i < count; i++) {
            Position exact = line.at(line.lengthM() * i / (count - 1));
            worst = Math.max(worst, GeodesicLine.distanceM(exact, new Position(lat[i], lon[i])));
        }
        return worst;
    }

    private static double turn(double degrees) {
        return Math.IEEEremainder(degrees, 360);
    }

    private static void assertSamePlace(Position expected, Position actual) {
        assertEquals(0, GeodesicLine.distanceM(expected, actual), ONE_MILLIMETRE);
    }
}
