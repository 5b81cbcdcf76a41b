package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StandardNormalTest {
    private static final double STATED_ERROR = 1e-13;
    private static final double STATED_SHARE = 1e-8;

    /** Oracle: the statistics library, at places that its table does not hold. */
    @Test
    void agreesWithTheStatisticsLibrary() {
        Random random = new Random(11);
        for (int i = 0; i < 20_000; i++) {
            double z = 20 * random.nextDouble() - 10;
            double exact = 0.5 * Erf.erfc(-z / Math.sqrt(2));
            assertEquals(exact, StandardNormal.below(z), Math.min(STATED_ERROR, STATED_SHARE * exact), "z " + z);
        }
    }

    /** Published: Abramowitz and Stegun, table 26.1, normal probability function, 15 decimals. */
    @ParameterizedTest
    @CsvSource({"0, 0.5", "1, 0.841344746068543", "2, 0.977249868051821", "3, 0.998650101968370"})
    void agreesWithThePublishedTable(double z, double share) {
        assertEquals(share, StandardNormal.below(z), 5.1e-16 + STATED_ERROR);
    }

    @Test
    void bothTailsAddUpToOneAndTheLawNeverFalls() {
        double before = 0;
        for (double z = -10; z <= 10; z += 0.003) {
            double below = StandardNormal.below(z);
            assertTrue(below >= before - STATED_ERROR, "z " + z);
            assertEquals(1, below + StandardNormal.below(-z), 2 * STATED_ERROR);
            before = below;
        }
    }

    @Test
    void farOutItIsZeroAndOne() {
        assertEquals(0, StandardNormal.below(-40));
        assertEquals(1, StandardNormal.below(1e300));
    }
}
