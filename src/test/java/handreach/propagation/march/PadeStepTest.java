package handreach.propagation.march;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class PadeStepTest {
    @Test
    void agreesWithTheExactStepAtTheStatedAngles() { // oracle: exp(−jσ(cos θ − 1)), X = −sin²θ
        double sigma = 2 * Math.PI * 15;
        PadeStep step = PadeStep.of(sigma, 4);
        assertEquals(0, error(step, sigma, 5), 2e-10);
        assertEquals(0, error(step, sigma, 10), 1.3e-5);
        assertEquals(0, error(step, sigma, 15), 6e-3);
        assertTrue(error(step, sigma, 20) > 0.1, "the stated limit of the step is real");
        assertEquals(0, error(PadeStep.of(2 * Math.PI * 5, 4), 2 * Math.PI * 5, 25), 3.5e-3);
        assertEquals(0, error(PadeStep.of(sigma, 6), sigma, 15), 1e-5);
    }

    private static double error(PadeStep step, double sigma, double deg) {
        double c = Math.cos(Math.toRadians(deg));
        double s = Math.sin(Math.toRadians(deg));
        Complex exact = new Complex(0, -sigma * (c - 1)).exp();
        return step.at(-s * s).subtract(exact).abs();
    }

    @Test
    void neverAmplifiesAWave() { // law: |step| ≤ 1 for every X the grid can hold
        for (int order : new int[] {4, 6})
            for (double wavelengths = 0.05; wavelengths <= 20; wavelengths *= 1.37) {
                PadeStep step = PadeStep.of(2 * Math.PI * wavelengths, order);
                for (double x = 0; x > -1; x -= 0.002)
                    assertTrue(step.at(x).abs() < 1 + 1e-9, order + " " + wavelengths + " X " + x);
            }
    }

    @Test
    void twoHalvesMakeAWhole() { // law
        double sigma = 40;
        Complex half = PadeStep.of(sigma / 2, 4).at(-0.02);
        assertEquals(
                0, half.multiply(half).subtract(PadeStep.of(sigma, 4).at(-0.02)).abs(), 1e-7);
    }

    @Test
    void aWaveAlongTheGroundOnlyKeepsItsPhase() { // limit
        assertEquals(0, PadeStep.of(12, 4).at(0).subtract(Complex.ONE).abs(), 0);
    }

    @Test
    void vanishesAtTheChosenEvanescentWave() { // by hand: the numerator has its zero at X = −3
        assertEquals(0, PadeStep.of(12, 4).at(-3).abs(), 1e-9);
    }
}
