package handreach.propagation.march;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LaneNodesTest {
    private static final double PHASE_OF_SPACING = 2 * Math.PI / 2.25;

    /** Law: a wave of an angle has −sin² of it as X, and goes on with the cosine. */
    @Test
    void wideNodesCarryRaysThatLevelOnesBend() {
        assertEquals(0.0042, worst(24, LaneNodes.LEVEL), 1e-4);
        assertEquals(0.0265, worst(33, LaneNodes.LEVEL), 1e-4);
        assertEquals(0.0010, worst(27, LaneNodes.WIDE), 1e-4);
        assertEquals(0.0100, worst(33, LaneNodes.WIDE), 1e-4);
    }

    @Test
    void levelNodesAreOfFourthOrder() {
        double one = error(5, LaneNodes.LEVEL);
        double twice = error(10, LaneNodes.LEVEL);
        assertTrue(twice / one > 40 && twice / one < 80, one + " and " + twice);
    }

    private static double worst(int toDeg, LaneNodes nodes) {
        return IntStream.rangeClosed(0, toDeg)
                .mapToDouble(deg -> Math.abs(error(deg, nodes)))
                .max()
                .orElseThrow();
    }

    /** Phase in a wavelength along the facet, rad. */
    private static double error(int deg, LaneNodes nodes) {
        double angle = Math.toRadians(deg);
        double x = nodes.ofWave(PHASE_OF_SPACING * Math.sin(angle), PHASE_OF_SPACING);
        return 2 * Math.PI * (Math.sqrt(1 + x) - Math.cos(angle));
    }
}
