package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class LinearTrendTest {
    /**
     * JCGM 100:2008 (GUM), H.3, calibration of a thermometer (data from memory): corrections over temperature less 20 °C give
     * intercept −0.1712 °C, slope 0.00218 with uncertainty 0.00067, scatter 0.0035 °C.
     */
    @Test
    void thermometerOfTheGum() {
        List<Double> temperature = List.of(1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511);
        List<Double> correction =
                List.of(-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160);
        LinearTrend found = LinearTrend.of(temperature, correction);
        assertEquals(0.00218, found.slope().value(), 5e-6);
        assertEquals(0.00067, found.slope().standardUncertainty(), 5e-6);
        assertEquals(9, found.slope().degreesOfFreedom(), 0);
        assertEquals(-0.1712, at(found, 0), 5e-5);
        assertEquals(0.0035, found.residual(), 5e-5);
    }

    @Test
    void agreesWithTheLibrarysRegression() {
        Random random = new Random(3);
        for (int round = 0; round < 100; round++) {
            SimpleRegression library = new SimpleRegression();
            List<Double> x = new ArrayList<>();
            List<Double> y = new ArrayList<>();
            for (int i = 0; i < 3 + random.nextInt(20); i++) {
                x.add(i + random.nextDouble());
                y.add(-40 + random.nextGaussian());
                library.addData(x.get(i), y.get(i));
            }
            LinearTrend found = LinearTrend.of(x, y);
            assertEquals(library.getSlope(), found.slope().value(), 1e-10);
            assertEquals(library.getSlopeStdErr(), found.slope().standardUncertainty(), 1e-10);
            assertEquals(library.getSignificance(), found.slope().twoSidedP(), 1e-9);
            assertEquals(library.predict(5), at(found, 5), 1e-9);
        }
    }

    @Test
    void aStraightLineHasNoDoubt() {
        LinearTrend found = LinearTrend.of(List.of(0.0, 1.0, 2.0), List.of(1.0, 3.0, 5.0));
        assertEquals(2, found.slope().value(), 0);
        assertEquals(0, found.residual(), 0);
        assertEquals(9, at(found, 4), 0);
    }

    /** Value of the line. */
    private static double at(LinearTrend line, double x) {
        return line.level() + line.slope().value() * (x - line.meanX());
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> LinearTrend.of(List.of(1.0, 2.0), List.of(1.0, 2.0)));
        assertThrows(
                IllegalArgumentException.class, () -> LinearTrend.of(List.of(1.0, 1.0, 1.0), List.of(1.0, 2.0, 3.0)));
    }
}
