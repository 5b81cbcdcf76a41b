package handreach.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class UtmZoneTest {
    private static final double ONE_MILLIMETRE = 0.001;

    @ParameterizedTest
    @CsvFileSource(resources = "grid-geoconvert.csv", useHeadersInDisplayName = true)
    void agreesWithGeoConvert(
            double lat, double lon, int number, String hemisphere, double eastingM, double northingM) {
        UtmZone zone = UtmZone.of(new Position(lat, lon));
        assertEquals(new UtmZone(number, hemisphere.equals("s")), zone);
        double[] en = new double[2];
        zone.project(lat, lon, en);
        assertEquals(eastingM, en[0], ONE_MILLIMETRE);
        assertEquals(northingM, en[1], ONE_MILLIMETRE);
        Position back = zone.position(eastingM, northingM);
        assertEquals(0, GeodesicLine.distanceM(back, new Position(lat, lon)), ONE_MILLIMETRE);
    }

    /** Against the grid itself: the way that a step along the meridian takes on it. */
    @ParameterizedTest
    @CsvFileSource(resources = "grid-geoconvert.csv", useHeadersInDisplayName = true)
    void convergenceIsTheSlantOfTheMeridianOnTheGrid(double lat, double lon, int number, String hemisphere) {
        UtmZone zone = UtmZone.of(new Position(lat, lon));
        double[] south = new double[2];
        double[] north = new double[2];
        zone.project(lat - 1e-4, lon, south);
        zone.project(lat + 1e-4, lon, north);
        double slantDeg = Math.toDegrees(Math.atan2(south[0] - north[0], north[1] - south[1]));
        assertEquals(slantDeg, zone.convergenceDeg(new Position(lat, lon)), 0.001);
    }

    /** By hand: 3 degrees east of the meridian at 30 north, tan 3 × 0.5 = 0.026204, 1.5010 degrees; none where there is no grid. */
    @Test
    void gridNorthLiesEastOfTrueEastOfTheMeridianInTheNorth() {
        Position east = new Position(30, 11.999999999);
        assertEquals(1.5010, PlaceForm.MGRS.convergenceDeg(east).orElseThrow(), 1e-4);
        assertEquals(-1.5010, PlaceForm.UTM.convergenceDeg(new Position(30, 6)).orElseThrow(), 1e-4);
        assertEquals(
                -1.5010,
                PlaceForm.UTM.convergenceDeg(new Position(-30, 11.999999999)).orElseThrow(),
                1e-4);
        assertTrue(PlaceForm.DECIMAL.convergenceDeg(east).isEmpty());
        assertTrue(PlaceForm.UTM.convergenceDeg(new Position(85, 9)).isEmpty());
    }

    /** Law: on the central meridian the northing is 0.9996 of the meridian arc, here from the geodesic library. */
    @Test
    void northingsOnTheCentralMeridianAreScaledMeridianArcs() {
        double[] en = new double[2];
        for (double lat = 1; lat < 84; lat += 7) {
            new UtmZone(32, false).project(lat, 9, en);
            double arcM = GeodesicLine.distanceM(new Position(0, 9), new Position(lat, 9));
            assertEquals(500_000, en[0], 1e-6);
            assertEquals(0.9996 * arcM, en[1], 1e-6);
        }
    }

    /** Oracle: the transverse Mercator of the proj4j library. */
    @Test
    void agreesWithAnotherLibrary() {
        var crs = new org.locationtech.proj4j.CRSFactory()
                .createFromParameters("tm", "+proj=tmerc +ellps=WGS84 +k=0.9996 +x_0=500000 +lat_0=0 +lon_0=9");
        Random random = new Random(20260102);
        double[] en = new double[2];
        for (int i = 0; i < 500; i++) {
            double lat = random.nextDouble() * 160 - 80;
            double lon = 9 + random.nextDouble() * 6 - 3;
            new UtmZone(32, false).project(lat, lon, en);
            var other = new org.locationtech.proj4j.ProjCoordinate();
            crs.getProjection().project(new org.locationtech.proj4j.ProjCoordinate(lon, lat), other);
            assertEquals(other.x, en[0], ONE_MILLIMETRE);
            assertEquals(other.y, en[1], ONE_MILLIMETRE);
        }
    }

    @Test
    void goingThereAndBackChangesNothing() {
        Random random = new Random(20260103);
        double[] en = new double[2];
        for (int i = 0; i < 2000; i++) {
            Position place = new Position(random.nextDouble() * 164 - 80, random.nextDouble() * 360 - 180);
            UtmZone zone = UtmZone.of(place);
            zone.project(place.latitudeDeg(), place.longitudeDeg(), en);
            assertEquals(0, GeodesicLine.distanceM(place, zone.position(en[0], en[1])), 1e-6);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "60,2.9,31",
        "60,3,32",
        "63.99,11.9,32",
        "64,4,31",
        "75,8.9,31",
        "75,9,33",
        "75,20.9,33",
        "75,21,35",
        "75,33,37",
        "75,42,38",
        "0,179.99,60",
        "0,-180,1"
    })
    void zonesKeepTheirExceptions(double lat, double lon, int number) {
        assertEquals(number, UtmZone.of(new Position(lat, lon)).number());
    }

    @Test
    void thePolesHaveNoZone() {
        assertThrows(IllegalArgumentException.class, () -> UtmZone.of(new Position(84.5, 0)));
        assertThrows(IllegalArgumentException.class, () -> UtmZone.of(new Position(-81, 0)));
        assertThrows(IllegalArgumentException.class, () -> new UtmZone(61, false));
        assertTrue(UtmZone.covers(new Position(84, 0)));
    }
}
