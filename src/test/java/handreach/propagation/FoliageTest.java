package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.units.Frequency;
import handreach.units.Polarization;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class FoliageTest {
    private static final double ROUNDING = 1e-9;

    /** The figures of {@link Foliage#source}: about 20 % less at 900 MHz out of leaf (P.833, from memory), nothing at VHF; the rest ranges. */
    @ParameterizedTest
    @CsvSource({
        "OUT_OF_LEAF, 155, 1, 0",
        "OUT_OF_LEAF, 900, 0.8, 0.1",
        "OUT_OF_LEAF, 6000, 0.8, 0.1",
        "WET, 30, 1.05, 0.05",
        "WET, 900, 1.2, 0.2",
        "SNOW, 155, 1.05, 0.05",
        "SNOW, 900, 1.15, 0.15"
    })
    void theRangesAreThoseOfTheirSource(Foliage foliage, double mhz, double factor, double halfWidth) {
        assertEquals(factor, foliage.factor(new Frequency(mhz)), ROUNDING);
        assertEquals(halfWidth, foliage.halfWidth(new Frequency(mhz)), ROUNDING);
    }

    /** By hand: 446 MHz lies ln(446/300)/ln 3 = 0.360943 of the way, so a factor of 1 − 0.2 × 0.360943. */
    @Test
    void betweenItGoesWithTheLogarithmOfTheFrequency() {
        assertEquals(0.927811, Foliage.OUT_OF_LEAF.factor(new Frequency(446)), 1e-6);
    }

    /** By hand: the ceiling at 900 MHz is 1.37 × 900^0.42 = 23.850 dB; 2 × 23.850 × 0.1 / √3 = 2.754 dB. */
    @Test
    void twoEndsDeepInWoodsDoubtHalfTheRangeOverRootThree() {
        assertEquals(2.754, Foliage.OUT_OF_LEAF.doubtDb(new Frequency(900), Polarization.VERTICAL), 0.001);
        double[] deep = Foliage.WET.deepEndDb(new Frequency(900), Polarization.VERTICAL);
        assertEquals(0, deep[0], ROUNDING);
        assertEquals(9.540, deep[1], 0.001);
    }

    /** Law: in leaf is as if nobody had asked, to the last digit, at every frequency. */
    @Test
    void inLeafChangesNoDigit() {
        for (double mhz = 1; mhz <= 6000; mhz *= 1.07) {
            assertEquals(1.0, Foliage.IN_LEAF.factor(new Frequency(mhz)));
            assertEquals(0.0, Foliage.IN_LEAF.doubtDb(new Frequency(mhz), Polarization.VERTICAL));
        }
    }

    /** Laws: a factor on the decibels of the whole way out, whatever its length, and none on how much of the wood counts. */
    @ParameterizedTest
    @EnumSource(Foliage.class)
    void aWoodTakesTheSameShareMoreOrLessAtEveryDepth(Foliage foliage) {
        for (double mhz : new double[] {50, 155, 446, 900}) {
            PathConditions leafy = UsualConditions.at(new Frequency(mhz));
            EndCover inLeaf = new EndCover(leafy);
            EndCover other = new EndCover(leafy.with(foliage));
            double factor = foliage.factor(new Frequency(mhz));
            for (double runM : new double[] {0, 1, 30, 200, 5000}) {
                assertEquals(factor * inLeaf.woodDb(1.5, 15, runM, 0.02), other.woodDb(1.5, 15, runM, 0.02), ROUNDING);
                assertEquals(inLeaf.woodShare(runM), other.woodShare(runM), ROUNDING);
            }
        }
    }

    /** Law: the factor goes one way with frequency and never leaves the range of its ends. */
    @ParameterizedTest
    @EnumSource(Foliage.class)
    void theFactorGoesOneWay(Foliage foliage) {
        double low = foliage.factor(new Frequency(30));
        double high = foliage.factor(new Frequency(3000));
        double before = low;
        for (double mhz = 30; mhz < 3000; mhz *= 1.02) {
            double now = foliage.factor(new Frequency(mhz));
            assertTrue((now - before) * (high - low) >= 0, foliage + " at " + mhz);
            before = now;
        }
    }
}
