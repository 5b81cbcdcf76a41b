package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;

class MeanDifferenceTest {
    private static final double LIBRARY = 1e-9;

    /** Hours of sleep gained with two drugs, ten patients: Student, Biometrika 6 (1908) 1, table on p. 20 (from memory). */
    private static final List<Double> FIRST_DRUG = List.of(0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0);

    private static final List<Double> SECOND_DRUG = List.of(1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4);

    /** Worked out with these data in the manual of the R language, t.test (from memory): t −4.0621, 9 degrees, −2.4599 to −0.7001. */
    @Test
    void studentsSleepDataInPairs() {
        Estimate found = MeanDifference.paired(FIRST_DRUG, SECOND_DRUG);
        assertEquals(-1.58, found.value(), 1e-12);
        assertEquals(-4.0621, found.value() / found.standardUncertainty(), 5e-5);
        assertEquals(9, found.degreesOfFreedom(), 0);
        assertEquals(-2.4598858, found.interval95().low(), 5e-8);
        assertEquals(-0.7001142, found.interval95().high(), 5e-8);
        assertEquals(0.002833, found.twoSidedP(), 5e-7);
    }

    /** Same place, unpaired: t −1.8608, 17.776 degrees, −3.3654832 to 0.2054832, p 0.07939. */
    @Test
    void studentsSleepDataAsIndependentSets() {
        Estimate found = MeanDifference.welch(FIRST_DRUG, SECOND_DRUG);
        assertEquals(-1.8608, found.value() / found.standardUncertainty(), 5e-5);
        assertEquals(17.776, found.degreesOfFreedom(), 5e-4);
        assertEquals(-3.3654832, found.interval95().low(), 5e-8);
        assertEquals(0.2054832, found.interval95().high(), 5e-8);
        assertEquals(0.07939, found.twoSidedP(), 5e-6);
    }

    /** Differences 1, 2, 3: mean 2, scatter 1, uncertainty 1/√3. */
    @Test
    void threePairsByHand() {
        Estimate found = MeanDifference.paired(List.of(1.0, 4.0, 8.0), List.of(0.0, 2.0, 5.0));
        assertEquals(2, found.value(), 1e-15);
        assertEquals(1 / Math.sqrt(3), found.standardUncertainty(), 1e-15);
    }

    @Test
    void agreesWithTheLibrarysTests() {
        Random random = new Random(42);
        TTest library = new TTest();
        for (int i = 0; i < 300; i++) {
            int n = 2 + random.nextInt(30);
            int m = 2 + random.nextInt(30);
            double[] a = random.doubles(n).map(x -> -40 + 8 * x).toArray();
            double[] b = random.doubles(m).map(x -> -42 + 3 * x).toArray();
            Estimate welch = MeanDifference.welch(list(a), list(b));
            assertEquals(library.t(a, b), welch.value() / welch.standardUncertainty(), LIBRARY * 1e3);
            assertEquals(library.tTest(a, b), welch.twoSidedP(), LIBRARY);
            double[] c = random.doubles(n).map(x -> -41 + 5 * x).toArray();
            Estimate paired = MeanDifference.paired(list(a), list(c));
            assertEquals(library.pairedT(a, c), paired.value() / paired.standardUncertainty(), LIBRARY * 1e3);
            assertEquals(library.pairedTTest(a, c), paired.twoSidedP(), LIBRARY);
        }
    }

    @Test
    void swappingTheSidesTurnsTheSignAndNothingElse() {
        Estimate here = MeanDifference.welch(FIRST_DRUG, SECOND_DRUG);
        Estimate there = MeanDifference.welch(SECOND_DRUG, FIRST_DRUG);
        assertEquals(-here.value(), there.value(), 1e-15);
        assertEquals(here.standardUncertainty(), there.standardUncertainty(), 1e-15);
        assertEquals(here.degreesOfFreedom(), there.degreesOfFreedom(), 1e-12);
    }

    @Test
    void noScatterAtAllIsNoFault() {
        Estimate welch = MeanDifference.welch(List.of(1.0, 1.0), List.of(3.0, 3.0, 3.0));
        assertEquals(0, welch.standardUncertainty(), 0);
        assertEquals(-2, welch.interval95().low(), 0);
        assertEquals(0, welch.twoSidedP(), 0);
    }

    @Test
    void tooFewReadingsAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> MeanDifference.paired(List.of(1.0), List.of(2.0)));
        assertThrows(IllegalArgumentException.class, () -> MeanDifference.welch(List.of(1.0), List.of(2.0, 3.0)));
        assertThrows(IllegalArgumentException.class, () -> MeanDifference.mean(List.of()));
    }

    private static List<Double> list(double[] values) {
        return DoubleStream.of(values).boxed().toList();
    }
}
