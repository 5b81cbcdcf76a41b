package handreach.bench.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

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

    @Test
    void theWorseTheMatchTheMoreItCosts() {
        double last = -1;
        for (double reflection = 0; reflection < 1; reflection += 0.01) {
            double loss = Match.ofReflection(reflection).mismatchLossDb();
            assertTrue(loss > last);
            last = loss;
        }
    }

    @Test
    void extremesStayFinite() {
        assertEquals(200, Match.ofSwr(1).returnLossDb(), 1e-9);
        assertTrue(Double.isFinite(Match.ofReturnLossDb(0).mismatchLossDb()));
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Match.ofSwr(0.9));
        assertThrows(IllegalArgumentException.class, () -> Match.ofReflection(1));
        assertThrows(IllegalArgumentException.class, () -> Match.ofReturnLossDb(-1));
    }
}
