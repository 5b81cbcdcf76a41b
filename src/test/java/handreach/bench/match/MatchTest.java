package handreach.bench.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MatchTest {
    /** Rows computed from the textbook formulas, in the rounding of common tables: 4 digits of |Γ|, 0.01 dB, 0.001 dB. */
    @ParameterizedTest
    @CsvSource({
        "1.2,0.0909,20.83,0.036",
        "1.5,0.2000,13.98,0.177",
        "2,0.3333,9.54,0.512",
        "2.5,0.4286,7.36,0.881",
        "3,0.5000,6.02,1.249",
        "4,0.6000,4.44,1.938",
        "5,0.6667,3.52,2.553",
        "6,0.7143,2.92,3.100",
        "10,0.8182,1.74,4.807",
        "20,0.9048,0.87,7.413"
    })
    void fourNamesOfOneThing(double swr, double reflection, double returnLossDb, double mismatchDb) {
        Match match = Match.ofSwr(swr);
        assertEquals(reflection, match.reflection(), 5e-5);
        assertEquals(returnLossDb, match.returnLossDb(), 5e-3);
        assertEquals(mismatchDb, match.mismatchLossDb(), 5e-4);
        assertEquals(swr, Match.ofReturnLossDb(match.returnLossDb()).swr(), 1e-9);
    }

    /** SWR 5 behind 2 dB of cable looks like 2.45, and the line costs 3.71 dB, not 2 (from the formulas, computed by hand). */
    @Test
    void cableFlattersTheMeter() {
        Match antenna = Match.ofSwr(5);
        assertEquals(2.45, antenna.throughLine(2).swr(), 5e-3);
        assertEquals(3.71, antenna.lineLossDb(2), 5e-3);
        assertEquals(5, antenna.throughLine(2).behindLine(2).swr(), 1e-9);
        assertEquals(2, Match.ofSwr(1).lineLossDb(2), 1e-12);
    }

    /**
     * Power is conserved: what the source sends (1 − ρin²) times what the line with its waves both ways passes on is what a
     * lossy line passes of the forward wave and the load takes.
     */
    @Test
    void lineLossAndMismatchTogetherLeaveTheForwardWavesShare() {
        for (double swr = 1; swr < 30; swr += 1.3)
            for (double loss = 0; loss < 6; loss += 0.7) {
                Match load = Match.ofSwr(swr);
                double whole = load.throughLine(loss).mismatchLossDb() + load.lineLossDb(loss);
                assertEquals(loss + load.mismatchLossDb(), whole, 1e-9);
            }
    }

    @Test
    void impedanceAndLine() {
        assertEquals(1, Match.ofImpedance(new Complex(50, 0), 50).swr(), 1e-12);
        assertEquals(2, Match.ofImpedance(new Complex(100, 0), 50).swr(), 1e-12);
        assertEquals(2, Match.ofImpedance(new Complex(25, 0), 50).swr(), 1e-12);
        assertEquals(
                1 / Math.sqrt(5), Match.ofImpedance(new Complex(50, 50), 50).reflection(), 1e-12);
    }

    @Test
    void theWorseTheMatchTheMoreItCosts() {
        double last = -1;
        for (double reflection = 0; reflection < 1; reflection += 0.01) {
            double loss = Match.ofReflection(reflection).mismatchLossDb();
            assertTrue(loss > last);
            last = loss;
        }
    }

    /** |Γ| of 1/3 on either side: product 1/9, +0.915 and −1.023 dB. */
    @Test
    void rippleBetweenTwoMismatches() {
        assertEquals(0.915, Match.ofSwr(2).ripple(Match.ofSwr(2)).high(), 5e-4);
        assertEquals(-1.023, Match.ofSwr(2).ripple(Match.ofSwr(2)).low(), 5e-4);
        assertEquals(0, Match.ofSwr(1).ripple(Match.ofSwr(9)).width(), 1e-12);
    }

    @Test
    void extremesStayFinite() {
        assertEquals(200, Match.ofSwr(1).returnLossDb(), 1e-9);
        assertTrue(Double.isFinite(Match.ofReturnLossDb(0).mismatchLossDb()));
        assertTrue(Double.isFinite(Match.ofImpedance(new Complex(0, 30), 50).swr()));
        assertTrue(Double.isFinite(Match.ofSwr(9).behindLine(30).swr()));
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Match.ofSwr(0.9));
        assertThrows(IllegalArgumentException.class, () -> Match.ofReflection(1));
        assertThrows(IllegalArgumentException.class, () -> Match.ofReturnLossDb(-1));
        assertThrows(IllegalArgumentException.class, () -> Match.ofSwr(2).throughLine(-1));
        assertThrows(IllegalArgumentException.class, () -> Match.ofImpedance(new Complex(-5, 0), 50));
    }
}
