package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

class ContoursTest {
    private static final MapFrame FRAME = new MapFrame(new Position(45, 7), 10, 90, 60);

    private static HeightLattice lattice(PaperGround.Height height) {
        return HeightLattice.over(new PaperGround(height, 10), FRAME, 1, 1);
    }

    private static double radiusPx(double lat, double lon) {
        return Math.hypot(FRAME.xPx(lon) - 45, FRAME.yPx(lat) - 30);
    }

    @Test
    void aConeHasClosedRoundContours() { // by hand: height 100 − r, so the contour of 80 m is the circle of 20 px
        List<Contour> found = Contours.of(lattice((lat, lon) -> 100 - radiusPx(lat, lon)), 20);
        List<Contour> at80 = found.stream().filter(c -> c.levelM() == 80).toList();
        assertEquals(1, at80.size());
        assertTrue(at80.get(0).line().isClosed());
        for (Coordinate c : at80.get(0).line().getCoordinates()) assertEquals(20, radiusPx(c.getY(), c.getX()), 0.02);
    }

    @Test
    void everyFifthLineIsAnIndexLine() {
        List<Contour> found = Contours.of(lattice((lat, lon) -> 100 - radiusPx(lat, lon)), 10);
        for (Contour contour : found)
            assertEquals(Math.abs(contour.levelM() % 50) < 1e-9, contour.isIndex(), contour.levelM() + " m");
        assertTrue(found.stream().anyMatch(Contour::isIndex));
    }

    @Test
    void everyContourClosesOrEndsAtTheEdgeOrAVoid() { // law, seeded random ground with a hole
        Random random = new Random(5);
        double[] phase = new double[12];
        for (int i = 0; i < phase.length; i++) phase[i] = random.nextDouble() * 6;
        PaperGround.Height rough = (lat, lon) -> {
            double x = FRAME.xPx(lon) / 9;
            double y = FRAME.yPx(lat) / 9;
            if (Math.hypot(x - 4, y - 3) < 0.7) return Double.NaN;
            double h = 0;
            for (int i = 0; i < 6; i++)
                h += 30 * Math.sin(x * (i + 1) / 2 + phase[i]) * Math.cos(y * (i + 2) / 3 + phase[i + 6]);
            return h;
        };
        List<Contour> found = Contours.of(lattice(rough), 10);
        assertTrue(found.size() > 20);
        for (Contour contour : found) {
            if (contour.line().isClosed()) continue;
            for (Coordinate end : new Coordinate[] {
                contour.line().getStartPoint().getCoordinate(),
                contour.line().getEndPoint().getCoordinate()
            }) {
                double x = FRAME.xPx(end.getX());
                double y = FRAME.yPx(end.getY());
                boolean isAtEdge = x < 0 || y < 0 || x > 90 || y > 60;
                boolean isAtVoid = Math.hypot(x / 9 - 4, y / 9 - 3) < 0.7 + 0.2;
                assertTrue(isAtEdge || isAtVoid, "a contour of " + contour.levelM() + " m ends at " + x + ", " + y);
            }
        }
    }

    @Test
    void everyPointLiesAtItsHeight() { // oracle: the formula of the ground, linear along a lattice line
        PaperGround.Height tilted = (lat, lon) -> 3 * FRAME.xPx(lon) - 2 * FRAME.yPx(lat);
        for (Contour contour : Contours.of(lattice(tilted), 25))
            for (Coordinate c : contour.line().getCoordinates())
                assertEquals(contour.levelM(), tilted.m(c.getY(), c.getX()), 1e-3);
    }

    @Test
    void aSaddleIsCutByItsMiddle() { // by hand: corners 10, 0, 10, 0 have mean 5, so at 4 m the high corners hang
        // together
        PaperGround.Height checker = (lat, lon) -> {
            long c = Math.round(FRAME.xPx(lon) - 0.5);
            long r = Math.round(FRAME.yPx(lat) - 0.5);
            return Math.floorMod(c + r, 2) == 0 ? 10 : 0;
        };
        HeightLattice ground = lattice(checker);
        for (double levelM : new double[] {4, 6}) {
            int rings = 0;
            boolean highInside = levelM > 5;
            for (Contour contour : Contours.of(ground, levelM))
                if (contour.levelM() == levelM && contour.line().isClosed()) {
                    rings++;
                    Coordinate middle = new GeometryFactory()
                            .createPolygon(contour.line().getCoordinates())
                            .getCentroid()
                            .getCoordinate();
                    assertEquals(highInside ? 10 : 0, checker.m(middle.getY(), middle.getX()), 1e-9);
                }
            assertTrue(rings > 1000, rings + " rings");
        }
    }

    @Test
    void aLevelThatMeetsPostsExactlyStillCloses() { // by hand: the pyramid's posts lie on whole metres
        PaperGround.Height pyramid = (lat, lon) -> 20
                - Math.max(
                        Math.abs(Math.rint(FRAME.xPx(lon) - 0.5) - 45), Math.abs(Math.rint(FRAME.yPx(lat) - 0.5) - 30));
        for (Contour contour : Contours.of(lattice(pyramid), 1))
            if (contour.levelM() > 0) assertTrue(contour.line().isClosed(), contour.levelM() + " m");
    }

    @Test
    void theIntervalIsRoundAndSensible() {
        assertEquals(50, Contours.intervalM(236, 900, 14));
        assertEquals(200, Contours.intervalM(1400, 4000, 14));
        assertEquals(1, Contours.intervalM(5, 5, 14));
        assertThrows(IllegalArgumentException.class, () -> Contours.intervalM(0, 1, 0));
    }

    @Test
    void groundWithoutHeightsHasNoContours() {
        assertEquals(List.of(), Contours.of(lattice((lat, lon) -> Double.NaN), 10));
    }
}
