package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.uncertainty.Odds;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class ReportValueTest {
    /** Rounding of the table. */
    private static final double TABLE = 5e-5;

    @ParameterizedTest
    @CsvFileSource(resources = "unit-normal-loss.csv", useHeadersInDisplayName = true)
    void agreesWithThePublishedTableOfTheLossIntegral(double d, double loss) {
        assertEquals(loss, ReportValue.unitLoss(d), TABLE);
    }

    /** L(−d) = L(d) + d, from φ even and Φ(−d) = 1 − Φ(d). */
    @Test
    void theOtherSideLosesTheDistanceMore() {
        for (double d = 0; d < 6; d += 0.37) assertEquals(ReportValue.unitLoss(d) + d, ReportValue.unitLoss(-d), 1e-12);
    }

    /** By hand: an even decision moved by 5 dB gains 5 φ(0) = 5 / √(2π) = 1.99471 dB. */
    @Test
    void anEvenDecisionGainsAFixedShareOfTheMovement() {
        assertEquals(1.99471, ReportValue.expectedDb(0, 5), 1e-5);
        assertEquals(0.5, ReportValue.chanceOfChange(0, 5), 1e-12);
        assertEquals(0, ReportValue.expectedDb(0, 0));
        assertEquals(0, ReportValue.chanceOfChange(-3, 0));
    }

    @ParameterizedTest
    @CsvSource({"0", "2", "-4", "9"})
    void moreMovementIsWorthMoreAndFartherFromTheEdgeLess(double marginDb) {
        double last = 0;
        for (double s = 0.5; s < 12; s += 0.5) {
            double value = ReportValue.expectedDb(marginDb, s);
            assertTrue(value > last);
            assertTrue(value > ReportValue.expectedDb(Math.abs(marginDb) + 1, s));
            last = value;
        }
    }

    /** The plain way: draw what will be believed afterwards, and take the better of the two ways each time. */
    @ParameterizedTest
    @CsvSource({"0, 4", "3, 4", "-5, 6", "8, 5"})
    void agreesWithDrawingTheBeliefAfterwards(double marginDb, double movementDb) {
        Random random = new Random(7);
        int draws = 400_000;
        double sum = 0;
        int turned = 0;
        for (int i = 0; i < draws; i++) {
            double after = marginDb + movementDb * random.nextGaussian();
            sum += Math.max(0, after);
            if (after * (marginDb == 0 ? 1 : marginDb) < 0) turned++;
        }
        assertEquals(sum / draws - Math.max(0, marginDb), ReportValue.expectedDb(marginDb, movementDb), 0.02);
        assertEquals((double) turned / draws, ReportValue.chanceOfChange(marginDb, movementDb), 0.004);
    }

    /** By hand, margin 0, spread 8, doubt 6: v² = 100, Φ Φ / φ² = π/2, so 157.0796 − 36. */
    @Test
    void aCopyAtEvenOddsHasTheNoiseDerivedByHand() {
        assertEquals(121.0796, ReportValue.copyVarianceDb2(0, 8, 6), 1e-4);
    }

    @Test
    void aCopyNeverTeachesMoreThanALevelWithoutNoise() {
        for (double margin = -40; margin <= 40; margin += 1)
            for (double doubt = 0; doubt < 20; doubt += 2.5)
                assertTrue(ReportValue.copyVarianceDb2(margin, 8, doubt) > 64);
    }

    /** Limit: certain copy and certain silence say nothing about the shift. */
    @Test
    void aCertainOutcomeTeachesNothing() {
        double doubt4 = Math.pow(6, 4);
        for (double margin : new double[] {70, -70, 300, -300})
            assertTrue(doubt4 / (36 + ReportValue.copyVarianceDb2(margin, 8, 6)) < 1e-6);
    }

    /** The plain way: the mean of the shift after each outcome by numbers on a grid; the variance of that mean. */
    @ParameterizedTest
    @CsvSource({"0, 8, 6", "7, 8, 6", "-12, 9, 4", "5, 6, 12"})
    void movesTheMeanAsFarAsTheOutcomeItself(double marginDb, double spreadDb, double doubtDb) {
        double odds = 0;
        double meanIfCopy = 0;
        double all = 0;
        for (double shift = -8 * doubtDb; shift <= 8 * doubtDb; shift += doubtDb / 200) {
            double weight = Math.exp(-shift * shift / (2 * doubtDb * doubtDb));
            double copy = Odds.ofMargin(marginDb - shift, spreadDb);
            all += weight;
            odds += weight * copy;
            meanIfCopy += weight * copy * shift;
        }
        meanIfCopy /= odds;
        odds /= all;
        double meanIfNone = -meanIfCopy * odds / (1 - odds);
        double moved = odds * meanIfCopy * meanIfCopy + (1 - odds) * meanIfNone * meanIfNone;
        double standIn =
                Math.pow(doubtDb, 4) / (doubtDb * doubtDb + ReportValue.copyVarianceDb2(marginDb, spreadDb, doubtDb));
        assertEquals(moved, standIn, 1e-6 * moved);
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> ReportValue.expectedDb(1, -1));
        assertThrows(IllegalArgumentException.class, () -> ReportValue.chanceOfChange(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> ReportValue.copyVarianceDb2(1, 0, 3));
    }
}
