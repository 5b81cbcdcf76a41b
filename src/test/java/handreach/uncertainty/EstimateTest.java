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
}
