package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A world on one line: a sample every 50 m, margin +1 where copy is good and −1 where it is not. */
class RadialReachTest {
    @Test
    void aShortGapIsBridged() {
        // good to 500 m, bad 550 to 650, good again at 700: the stretch below the target is 200 m long, not longer
        RadialReach reach = reach("##########...####", 17);
        assertEquals(850, reach.continuousM());
        assertEquals(850, reach.farthestM());
        assertTrue(reach.openEnded());
    }

    @Test
    void aGapLongerThanTwoHundredMetresEndsIt() {
        RadialReach reach = reach("##########....####", 18);
        assertEquals(500, reach.continuousM());
        assertEquals(900, reach.farthestM());
        assertFalse(reach.openEnded());
    }

    @Test
    void aBadBeginningCounts() {
        assertEquals(0, reach(".....#####", 10).continuousM());
        assertEquals(500, reach("...#######", 10).continuousM());
        assertEquals(0, reach("..........", 10).farthestM());
    }

    @Test
    void copyToTheRimIsOpenEnded() {
        RadialReach reach = reach("########..", 10);
        assertEquals(400, reach.continuousM());
        assertTrue(reach.openEnded());
    }

    @Test
    void beyondUnknownGroundNothingIsSaid() {
        RadialReach reach = reach("##########", 6);
        assertEquals(300, reach.continuousM());
        assertTrue(reach.openEnded());
        assertEquals(OptionalDouble.of(350), reach.unknownBeyondM());
        assertEquals(1, reach.share());
    }

    @Test
    void nothingKnownGivesNoReachAndNoShare() {
        RadialReach reach = reach("###", 0);
        assertEquals(0, reach.farthestM());
        assertEquals(0, reach.share());
        assertEquals(OptionalDouble.of(50), reach.unknownBeyondM());
    }

    @Test
    void theShareWeighsGroundByItsDistance() {
        // two samples: the inner one stands for 0 to 75 m, the outer for 75 to 100 m: 5625 of 10 000
        assertEquals(0.5625, reach("#.", 2).share(), 1e-12);
        assertEquals(0.4375, reach(".#", 2).share(), 1e-12);
    }

    /** Samples at 50 m, six reach, five do not, two do: ground from 325 m to the last sample at 650 m, reached from 575 m on. */
    @Test
    void theShareBeyondTheFirstGapCountsThatGroundAlone() {
        RadialReach reach = reach("######.....##", 13);
        assertEquals(300, reach.continuousM());
        assertEquals((650.0 * 650 - 575 * 575) / (650.0 * 650 - 325 * 325), reach.shareBeyond(), 1e-12);
        assertEquals(0, reach("######.......", 13).shareBeyond());
        assertEquals(0, reach("######", 6).shareBeyond());
    }

    @Test
    void moreMarginNeverMeansLessReach() {
        Random random = new Random(4);
        for (int i = 0; i < 300; i++) {
            double[] distance = new double[60];
            double[] margin = new double[60];
            for (int k = 0; k < 60; k++) {
                distance[k] = 50 + 17 * k;
                margin[k] = 10 * random.nextGaussian();
            }
            RadialReach hard = RadialReach.of(distance, RadialReach.rings(distance), margin, 60, 3);
            RadialReach easy = RadialReach.of(distance, RadialReach.rings(distance), margin, 60, -2);
            assertTrue(easy.continuousM() >= hard.continuousM());
            assertTrue(easy.farthestM() >= hard.farthestM());
            assertTrue(easy.share() >= hard.share());
        }
    }

    @Test
    void unequalColumnsAreRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> RadialReach.of(new double[2], new double[2], new double[3], 2, 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> RadialReach.of(new double[2], new double[3], new double[2], 2, 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> RadialReach.of(new double[2], new double[2], new double[2], 3, 0));
    }

    private static RadialReach reach(String world, int known) {
        double[] distance = new double[world.length()];
        double[] margin = new double[world.length()];
        for (int i = 0; i < distance.length; i++) {
            distance[i] = 50 * (i + 1);
            margin[i] = world.charAt(i) == '#' ? 1 : -1;
        }
        return RadialReach.of(distance, RadialReach.rings(distance), margin, known, 0);
    }
}
