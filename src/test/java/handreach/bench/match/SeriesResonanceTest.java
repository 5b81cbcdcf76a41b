package handreach.bench.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeriesResonanceTest {
    /** Yaghjian and Best, IEEE Trans. AP 53 (2005) 1298, matched form (from memory): (s − 1)/√s; r other than 1 by hand. */
    @ParameterizedTest
    @CsvSource({"1.5,1,0.408", "2,1,0.707", "3,1,1.155", "3,0.5,1.291", "3,2,0.645"})
    void bandwidthFactors(double swr, double ratio, double factor) {
        assertEquals(factor, bandwidthMhz(1, 1, Match.ofSwr(swr), ratio), 5e-4);
    }

    /**
     * Method-of-moments runs (nec2c 1.3): quarter-wave, 2 mm, perfect ground, 146 MHz, R 36.0 ohm, Q 7.20: 3:1 band against 36
     * ohm 23.0 MHz, against 50 ohm 26.8 MHz; loaded whip, Q 63.9: 2.6 MHz.
     */
    @Test
    void methodOfMomentsBandwidths() {
        assertEquals(23.0, bandwidthMhz(146, 7.20, Match.ofSwr(3), 1), 0.02 * 23.0);
        assertEquals(26.8, bandwidthMhz(146, 7.20, Match.ofSwr(3), 36.0 / 50), 0.02 * 26.8);
        assertEquals(2.6, bandwidthMhz(146, 63.9, Match.ofSwr(3), 1), 0.05);
        assertEquals(21, SeriesResonance.quality(146, 8, Match.ofSwr(3), 1), 0.5);
        assertEquals(42, SeriesResonance.quality(146, 4, Match.ofSwr(3), 1), 0.5);
    }

    /** Oracle: the edges of |Γ| of R + jX on the narrow-band line X = 2 Q R δ, found by stepping. */
    @Test
    void agreesWithSteppingAlongTheReactance() {
        for (double r : new double[] {0.45, 0.8, 1, 1.7, 2.6})
            for (double s : new double[] {2.8, 3, 5}) {
                double limit = Match.ofSwr(s).reflection();
                double x = 0;
                while (Impedance.match(new Complex(50 * r, x), 50).reflection() < limit) x += 0.002;
                double band = 100.0 / 20 * (x / (50 * r));
                assertEquals(band, bandwidthMhz(100, 20, Match.ofSwr(s), r), 1e-3);
            }
    }

    /** Quality and bandwidth are the same factor of the resonance, one over the other. */
    private static double bandwidthMhz(double resonanceMhz, double quality, Match limit, double resistanceRatio) {
        return SeriesResonance.quality(resonanceMhz, quality, limit, resistanceRatio);
    }

    @Test
    void aLimitThatIsNeverMetIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> bandwidthMhz(146, 20, Match.ofSwr(3), 3.5));
        assertThrows(IllegalArgumentException.class, () -> bandwidthMhz(146, 20, Match.ofSwr(3), 0.3));
    }
}
