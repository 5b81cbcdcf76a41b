package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeastSquaresTest {
    @ParameterizedTest
    @CsvSource({"161, 36, 1", "36, 36, 2", "7, 2, 3", "40, 1, 4"})
    void agreesToTheBitWithTheLibrary(int rows, int columns, long seed) { // oracle
        Random random = new Random(seed);
        double[][] nodes = new double[columns][rows];
        for (double[] column : nodes) for (int i = 0; i < rows; i++) column[i] = random.nextGaussian();
        double[] values = random.doubles(rows, -100, 100).toArray();
        double[] expected = new QRDecomposition(new Array2DRowRealMatrix(nodes).transpose())
                .getSolver()
                .solve(new ArrayRealVector(values))
                .toArray();
        double[] given = values.clone();
        assertArrayEquals(expected, new LeastSquares(nodes).factors(values));
        assertArrayEquals(given, values, "the values are only read");
    }

    @Test
    void aLineThroughThreePoints() { // by hand: mean 2; slope (1·(3 − 2) + (−1)·(0 − 2)) / 2 = 1.5
        double[] factors = new LeastSquares(new double[][] {{1, 1, 1}, {-1, 0, 1}}).factors(new double[] {0, 3, 3});
        assertEquals(2, factors[0], 1e-14);
        assertEquals(1.5, factors[1], 1e-14);
    }

    @Test
    void aColumnOfNothingIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new LeastSquares(new double[][] {{0, 0}}));
    }
}
