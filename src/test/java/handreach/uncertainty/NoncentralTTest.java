package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class NoncentralTTest {
    private static final double STATED = 1e-9;

    @ParameterizedTest
    @CsvFileSource(resources = "/handreach/uncertainty/power-t-mpmath.csv", useHeadersInDisplayName = true)
    void powerAgreesWithIntegrationToTwentyDigits(double difference, double degrees, double level, double power) {
        assertEquals(power, NoncentralT.power(difference, degrees, level), STATED);
    }

    @ParameterizedTest
    @CsvFileSource(
            resources = "/handreach/uncertainty/detectable-difference-mpmath.csv",
            useHeadersInDisplayName = true)
    void detectableDifferenceAgreesWithARootToTwentyDigits(int n, double standardDeviations) {
        double found = NoncentralT.detectableDifference(n - 1, 0.05, 0.8) / Math.sqrt(n);
        assertEquals(standardDeviations, found, 2e-8 * standardDeviations);
    }

    @Test
    void withoutADifferenceThePowerIsTheLevel() {
        for (double degrees : new double[] {1, 2.2, 8, 150, 5000})
            assertEquals(0.05, NoncentralT.power(0, degrees, 0.05), STATED);
    }

    /** With endless degrees of freedom the scatter is known and the test is the normal one. */
    @Test
    void manyDegreesOfFreedomGiveTheNormalTest() {
        NormalDistribution normal = new NormalDistribution(null, 0, 1);
        double expected = normal.cumulativeProbability(2.8 - 1.959963984540)
                + normal.cumulativeProbability(-2.8 - 1.959963984540);
        assertEquals(expected, NoncentralT.power(2.8, 1e6, 0.05), 1e-5);
    }

    @Test
    void powerGrowsWithDifferenceAndWithDegrees() {
        for (double degrees = 1; degrees < 60; degrees *= 1.7)
            for (double difference = 0.2; difference < 8; difference += 0.7) {
                double here = NoncentralT.power(difference, degrees, 0.05);
                assertTrue(NoncentralT.power(difference + 0.1, degrees, 0.05) > here);
                assertTrue(NoncentralT.power(difference, degrees * 1.2, 0.05) > here);
                assertEquals(here, NoncentralT.power(-difference, degrees, 0.05), 0);
            }
    }

    @Test
    void detectableDifferenceIsWhereThePowerIsReached() {
        for (double degrees : new double[] {1, 1.3, 4.7, 31})
            for (double power : new double[] {0.3, 0.8, 0.95}) {
                double difference = NoncentralT.detectableDifference(degrees, 0.05, power);
                assertEquals(power, NoncentralT.power(difference, degrees, 0.05), 1e-8);
            }
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> NoncentralT.power(1, 0.5, 0.05));
        assertThrows(IllegalArgumentException.class, () -> NoncentralT.power(Double.NaN, 5, 0.05));
        assertThrows(IllegalArgumentException.class, () -> NoncentralT.detectableDifference(5, 0.05, 0.05));
    }
}
