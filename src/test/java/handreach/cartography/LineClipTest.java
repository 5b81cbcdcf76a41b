package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

class LineClipTest {
    private static final Envelope WINDOW = new Envelope(0, 100, 0, 50);
    private static final GeometryFactory JTS = new GeometryFactory();

    @Test
    void aLineInsideStaysAsItIs() {
        List<double[]> parts = LineClip.inside(WINDOW, 1, 1, 20, 40, 99, 3);
        assertEquals(1, parts.size());
        assertArrayEquals(new double[] {1, 1, 20, 40, 99, 3}, parts.get(0));
    }

    @Test
    void aLineThatLeavesAndComesBackIsTwo() {
        List<double[]> parts = LineClip.inside(WINDOW, 10, 25, 150, 25, 150, 40, 50, 40);
        assertEquals(2, parts.size());
        assertArrayEquals(new double[] {10, 25, 100, 25}, parts.get(0), 1e-12);
        assertArrayEquals(new double[] {100, 40, 50, 40}, parts.get(1), 1e-12);
    }

    @Test
    void whatOnlyPassesTheWindowIsLeftOut() {
        assertTrue(LineClip.inside(WINDOW, -10, -10, 300, -10, 300, 80).isEmpty());
        assertTrue(LineClip.inside(WINDOW, 5, 5).isEmpty());
    }

    /** Against the length that a geometry library finds for the same intersection. */
    @Test
    void theLengthInsideIsThatOfAGeometryLibrary() {
        Random chance = new Random(4);
        Geometry window = JTS.toGeometry(WINDOW);
        for (int round = 0; round < 500; round++) {
            int n = 2 + chance.nextInt(8);
            double[] xy = new double[2 * n];
            Coordinate[] line = new Coordinate[n];
            for (int i = 0; i < n; i++) {
                xy[2 * i] = chance.nextDouble() * 260 - 80;
                xy[2 * i + 1] = chance.nextDouble() * 130 - 40;
                line[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
            }
            double expected = 0;
            for (int i = 1; i < n; i++)
                expected += JTS.createLineString(new Coordinate[] {line[i - 1], line[i]})
                        .intersection(window)
                        .getLength();
            double found = 0;
            for (double[] part : LineClip.inside(WINDOW, xy))
                for (int i = 2; i < part.length; i += 2)
                    found += Math.hypot(part[i] - part[i - 2], part[i + 1] - part[i - 1]);
            assertEquals(expected, found, 1e-6);
        }
    }
}
