package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.uncertainty.UncertaintyPart.Shape;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CombinedUncertaintyTest {
    /**
     * JCGM 100:2008 (GUM), H.1.6, end-gauge calibration, nanometres (from memory): 25 (18), 9.7 (25.6), 2.9 (50), 16.6 (2) give
     * 32 nm with 16 degrees; the 9.7 nm in turn from 5.8 (24), 3.9 (5), 6.7 (8).
     */
    @Test
    void endGaugeOfTheGum() {
        CombinedUncertainty comparison = CombinedUncertainty.of(List.of(
                UncertaintyPart.seen("repeated", 5.8, 24),
                UncertaintyPart.seen("random", 3.9, 5),
                UncertaintyPart.seen("systematic", 6.7, 8)));
        assertEquals(9.7, comparison.standardUncertainty(), 0.05);
        assertEquals(25.6, comparison.effectiveDegrees(), 0.5);
        CombinedUncertainty length = CombinedUncertainty.of(List.of(
                new UncertaintyPart("standard", UncertaintyPart.Kind.B, 25, 18),
                UncertaintyPart.seen("comparison", 9.7, 25.6),
                new UncertaintyPart("expansion", UncertaintyPart.Kind.B, 2.9, 50),
                new UncertaintyPart("temperature", UncertaintyPart.Kind.B, 16.6, 2)));
        assertEquals(32, length.standardUncertainty(), 0.5);
        assertEquals(16, length.estimate(0).degreesOfFreedom(), 0);
    }

    /** JCGM 100:2008 (GUM), G.4.2: known to 25 % gives 8 degrees; the others follow from the same formula. */
    @Test
    void degreesOfADeclaredDoubt() {
        assertEquals(
                8, UncertaintyPart.declared("x", 1, Shape.RECTANGULAR, 0.25).degreesOfFreedom(), 1e-12);
        assertEquals(
                50, UncertaintyPart.declared("x", 1, Shape.RECTANGULAR, 0.10).degreesOfFreedom(), 1e-12);
        assertEquals(
                2, UncertaintyPart.declared("x", 1, Shape.RECTANGULAR, 0.50).degreesOfFreedom(), 1e-12);
        assertEquals(
                Double.POSITIVE_INFINITY,
                UncertaintyPart.declared("x", 1, Shape.STANDARD, 0).degreesOfFreedom(),
                0);
    }

    /** JCGM 100:2008 (GUM), 4.3.7 and 4.3.9: a/√3, a/√6; U shape a/√2. */
    @Test
    void shapesOfADeclaredDoubt() {
        assertEquals(
                0.288675,
                UncertaintyPart.declared("x", 0.5, Shape.RECTANGULAR, 0).standardUncertainty(),
                1e-6);
        assertEquals(
                0.204124,
                UncertaintyPart.declared("x", 0.5, Shape.TRIANGULAR, 0).standardUncertainty(),
                1e-6);
        assertEquals(
                0.353553, UncertaintyPart.declared("x", 0.5, Shape.U_SHAPED, 0).standardUncertainty(), 1e-6);
        assertEquals(0.5, UncertaintyPart.declared("x", 0.5, Shape.STANDARD, 0).standardUncertainty(), 0);
    }

    /**
     * Invented example of the project's notes on measuring well: 0.1586 (5), 0.5/√3 (50), 0.8/√3 (8), 0.3/√3 (8) give 0.5932
     * with 20.40 degrees, cut to 20.
     */
    @Test
    void pairedExampleWithDeclaredDoubts() {
        CombinedUncertainty combined = CombinedUncertainty.of(List.of(
                UncertaintyPart.seen("scatter", 0.158640, 5),
                UncertaintyPart.declared("linearity", 0.5, Shape.RECTANGULAR, 0.10),
                UncertaintyPart.declared("height", 0.8, Shape.RECTANGULAR, 0.25),
                UncertaintyPart.declared("drift", 0.3, Shape.RECTANGULAR, 0.25)));
        assertEquals(0.5932, combined.standardUncertainty(), 5e-5);
        assertEquals(20.40, combined.effectiveDegrees(), 5e-3);
        assertEquals(20, combined.estimate(2.25).degreesOfFreedom(), 0);
        assertEquals(1.237, combined.estimate(2.25).expandedUncertainty95(), 5e-4);
    }

    @Test
    void oneSeenPartStaysAsItIs() {
        Estimate found = CombinedUncertainty.of(List.of(UncertaintyPart.seen("scatter", 0.3, 8.56)))
                .estimate(1);
        assertEquals(0.3, found.standardUncertainty(), 1e-15);
        assertEquals(8.56, found.degreesOfFreedom(), 1e-12);
    }

    @Test
    void moreDoubtNeverLessens() {
        double last = 0;
        List<UncertaintyPart> parts = new ArrayList<>();
        for (int i = 1; i < 20; i++) {
            parts.add(UncertaintyPart.declared("x", 0.01 * i, Shape.RECTANGULAR, 0.25));
            double now = CombinedUncertainty.of(parts).standardUncertainty();
            assertTrue(now > last);
            last = now;
        }
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> CombinedUncertainty.of(List.of()));
        assertThrows(IllegalArgumentException.class, () -> UncertaintyPart.seen("x", -1, 5));
        assertThrows(
                IllegalArgumentException.class, () -> UncertaintyPart.declared("x", Double.NaN, Shape.STANDARD, 0));
    }
}
