package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.util.Random;
import org.junit.jupiter.api.Test;

class MapFrameTest {
    @Test
    void aPixelGoesToAPositionAndBack() { // law, seeded random
        Random random = new Random(11);
        for (int i = 0; i < 2000; i++) {
            Position centre = new Position(random.nextDouble() * 150 - 75, random.nextDouble() * 360 - 180);
            MapFrame frame = MapFrame.around(centre, 100 + random.nextDouble() * 60_000, 700, 500);
            double x = random.nextDouble() * 700;
            double y = random.nextDouble() * 500;
            Position at = PixelPlace.of(frame, x, y);
            assertEquals(x, frame.xPx(at.longitudeDeg()), 1e-6);
            assertEquals(y, frame.yPx(at.latitudeDeg()), 1e-6);
        }
    }

    @Test
    void metresOfAPixelAgreeWithTheGeodesic() { // oracle: GeographicLib's geodesic, Karney, J. Geodesy 87 (2013) 43
        Position centre = new Position(46.5, 8.1);
        MapFrame frame = new MapFrame(centre, 10, 700, 700);
        double east =
                GeodesicLine.between(centre, PixelPlace.of(frame, 360, 350)).lengthM();
        double north =
                GeodesicLine.between(centre, PixelPlace.of(frame, 350, 340)).lengthM();
        assertEquals(100, east, 0.01);
        assertEquals(100, north, 0.01);
    }

    @Test
    void tenKilometresNorthItErrsAsStated() { // by hand: 10 km · tan 46° · 10/6371 = 16 m in 10 km
        Position centre = new Position(46, 8);
        MapFrame frame = new MapFrame(centre, 10, 2400, 2400);
        Position corner = PixelPlace.of(frame, 2200, 200);
        Position above = PixelPlace.of(frame, 1200, 200);
        assertEquals(16, 10_000 - GeodesicLine.between(above, corner).lengthM(), 1.5);
    }

    @Test
    void theShorterSideHoldsTheCircle() {
        MapFrame frame = MapFrame.around(new Position(10, 20), 5000, 800, 400);
        assertEquals(5000, 200 * frame.metresPerPx(), 1e-9);
        assertEquals(800, frame.widthPx());
    }

    @Test
    void theHundredAndEightiethMeridianMayLieInside() {
        MapFrame frame = MapFrame.around(new Position(-17, 179.99), 5000, 500, 500);
        double west = frame.xPx(179.99);
        double east = frame.xPx(-179.99);
        assertEquals(250, west, 1e-9);
        assertTrue(east > west && east < 500);
        assertTrue(frame.eastDeg() > 180);
        assertTrue(frame.contains(new Position(-17, -179.99)));
        assertFalse(frame.contains(new Position(-17, 0)));
    }

    @Test
    void aMapOverAPoleIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> MapFrame.around(new Position(88.99, 0), 5000, 100, 100));
        assertThrows(IllegalArgumentException.class, () -> new MapFrame(new Position(0, 0), 0, 100, 100));
    }
}
