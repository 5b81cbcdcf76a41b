package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class StudentTTest {
    private static final double STATED_RELATIVE = 1e-9;
    private static final double STATED_P = 1e-10;

    /** JCGM 100:2008 (GUM), table G.2, column 95 % (from memory), rounded to 0.01. */
    @ParameterizedTest
    @CsvSource({"1,12.71", "2,4.30", "3,3.18", "4,2.78", "5,2.57", "8,2.31", "10,2.23", "20,2.09", "50,2.01"})
    void agreesWithTheTableOfTheGum(double degrees, double t) {
        assertEquals(t, StudentT.coverageFactor95(degrees), 0.005);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/handreach/uncertainty/student-t-scipy.csv", useHeadersInDisplayName = true)
    void agreesWithAStatisticsLibrary(double degrees, double probability, double quantile, double t, double p) {
        assertEquals(quantile, StudentT.quantile(probability, degrees), STATED_RELATIVE * quantile);
        assertEquals(p, StudentT.twoSidedP(t, degrees), STATED_P);
    }

    @Test
    void manyDegreesOfFreedomGiveTheNormalLaw() {
        assertEquals(1.959963984540, StudentT.coverageFactor95(Double.POSITIVE_INFINITY), 1e-11);
        assertEquals(0.05, StudentT.twoSidedP(1.959963984540054, Double.POSITIVE_INFINITY), 1e-12);
        assertEquals(StudentT.coverageFactor95(Double.POSITIVE_INFINITY), StudentT.coverageFactor95(1e7), 1e-6);
    }

    /** With one degree of freedom the law is Cauchy's: p of t = 1 is one half. */
    @Test
    void oneDegreeOfFreedomIsCauchysLaw() {
        assertEquals(0.5, StudentT.twoSidedP(1, 1), 1e-14);
        assertEquals(1, StudentT.quantile(0.75, 1), 1e-9);
    }

    @Test
    void oddsAndQuantileAreInverse() {
        for (double degrees : new double[] {1, 2.5, 7, 33, 900})
            for (double p : new double[] {0.001, 0.02, 0.3, 0.9})
                assertEquals(p, StudentT.twoSidedP(StudentT.quantile(1 - p / 2, degrees), degrees), 1e-9);
    }

    @Test
    void fartherFromZeroIsAlwaysLessLikely() {
        double last = 1.1;
        for (double t = 0; t < 40; t += 0.37) {
            double p = StudentT.twoSidedP(t, 4.2);
            assertTrue(p < last);
            assertEquals(p, StudentT.twoSidedP(-t, 4.2), 0);
            last = p;
        }
        assertEquals(0, StudentT.twoSidedP(Double.POSITIVE_INFINITY, 4.2), 0);
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> StudentT.quantile(1, 5));
        assertThrows(IllegalArgumentException.class, () -> StudentT.quantile(0.5, 0));
        assertThrows(IllegalArgumentException.class, () -> StudentT.twoSidedP(Double.NaN, 5));
    }
}
