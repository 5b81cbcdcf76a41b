package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class EstimateTest {
    private static final double ROUNDING = 1e-12;
    /** The table gives two digits. */
    private static final double TABLE_95 = 0.005;

    /** Dunn 1961, and tables of Bonferroni's t (from memory): ten degrees of freedom, 2 and 5 intervals, 2.63 and 3.17. */
    @Test
    void severalIntervalsTogetherFollowBonferronisT() {
        Estimate estimate = new Estimate(3, 1, 10);
        assertEquals(3 + 2.634, estimate.interval95Among(2).high(), TABLE_95);
        assertEquals(3 - 3.169, estimate.interval95Among(5).low(), TABLE_95);
    }

    @Test
    void oneIntervalIsTheOrdinaryOneAndMoreAreWider() {
        Estimate estimate = new Estimate(-2, 0.4, 5);
        assertEquals(estimate.interval95().high(), estimate.interval95Among(1).high(), ROUNDING);
        for (int m = 2; m < 30; m++)
            assertTrue(estimate.interval95Among(m).width()
                    > estimate.interval95Among(m - 1).width());
        assertEquals(0, new Estimate(1, 0, 3).interval95Among(4).width(), 0);
        assertThrows(IllegalArgumentException.class, () -> estimate.interval95Among(0));
    }

    /** GUM table G.2: t at 95 % is 4.30, 2.57 and 2.09 for 2, 5 and 20 degrees of freedom, 1.96 without end. */
    @Test
    void aNormalOfTheSameIntervalIsWiderTheFewerTheReadings() {
        assertEquals(4.30 / 1.96, new Estimate(0, 1, 2).normalUncertainty(), TABLE_95);
        assertEquals(2.57 / 1.96, new Estimate(0, 1, 5).normalUncertainty(), TABLE_95);
        assertEquals(2.09 / 1.96, new Estimate(0, 1, 20).normalUncertainty(), TABLE_95);
        assertEquals(0.7, new Estimate(0, 0.7, Double.POSITIVE_INFINITY).normalUncertainty(), 0);
        assertEquals(0, new Estimate(0, 0, 3).normalUncertainty(), 0);
    }
}
