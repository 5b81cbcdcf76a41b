package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The fitted plane against the geodesic library, which is exact. */
class AzimuthalFrameTest {
    @Test
    void positionsAlongRadialsAreExactToTheMillimetre() {
        assertTrue(worstAlong(60_000, 75) < 0.001);
        assertTrue(worstAlong(120_000, 80) < 0.05);
    }

    @Test
    void distanceAndAzimuthOfAPositionAreExactToTheMillimetre() {
        assertTrue(worstBack(60_000, 75) < 0.001);
        assertTrue(worstBack(120_000, 80) < 0.05);
    }

    @Test
    void thePoleIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new AzimuthalFrame(new Position(88, 0), 120_000));
    }

    private static double worstAlong(double radiusM, double latitudeMost) {
        Random random = new Random(9);
        double worst = 0;
        double[] latitude = new double[AzimuthalFrame.DEGREE + 1];
        double[] longitude = new double[AzimuthalFrame.DEGREE + 1];
        for (int i = 0; i < 300; i++) {
            Position source = place(random, latitudeMost);
            AzimuthalFrame frame = new AzimuthalFrame(source, radiusM);
            double azimuth = 360 * random.nextDouble();
            frame.along(Math.sin(Math.toRadians(azimuth)), Math.cos(Math.toRadians(azimuth)), latitude, longitude);
            double share = random.nextDouble();
            Position found =
                    new Position(AzimuthalFrame.value(latitude, share), AzimuthalFrame.value(longitude, share));
            worst = Math.max(
                    worst, GeodesicLine.distanceM(found, GeodesicLine.destination(source, azimuth, share * radiusM)));
        }
        return worst;
    }

    private static double worstBack(double radiusM, double latitudeMost) {
        Random random = new Random(10);
        double worst = 0;
        double[] east = new double[AzimuthalFrame.DEGREE + 1];
        double[] north = new double[AzimuthalFrame.DEGREE + 1];
        for (int i = 0; i < 300; i++) {
            Position source = place(random, latitudeMost);
            AzimuthalFrame frame = new AzimuthalFrame(source, radiusM);
            double azimuth = 360 * random.nextDouble();
            double distance = radiusM * random.nextDouble();
            Position there = GeodesicLine.destination(source, azimuth, distance);
            frame.acrossLatitude(there.latitudeDeg(), east, north);
            double share = frame.longitudeShare(there.longitudeDeg());
            double x = AzimuthalFrame.value(east, share) * radiusM;
            double y = AzimuthalFrame.value(north, share) * radiusM;
            worst = Math.max(
                    worst,
                    Math.hypot(
                            x - distance * Math.sin(Math.toRadians(azimuth)),
                            y - distance * Math.cos(Math.toRadians(azimuth))));
        }
        return worst;
    }

    private static Position place(Random random, double latitudeMost) {
        return new Position(latitudeMost * (2 * random.nextDouble() - 1), 360 * random.nextDouble() - 180);
    }

    @Test
    void theSourceIsTheOrigin() {
        AzimuthalFrame frame = new AzimuthalFrame(new Position(46.5, 8.1), 10_000);
        double[] east = new double[AzimuthalFrame.DEGREE + 1];
        double[] north = new double[AzimuthalFrame.DEGREE + 1];
        frame.acrossLatitude(46.5, east, north);
        assertEquals(0, AzimuthalFrame.value(east, frame.longitudeShare(8.1)) * 10_000, 1e-5);
        assertEquals(0, AzimuthalFrame.value(north, frame.longitudeShare(8.1)) * 10_000, 1e-5);
    }
}
