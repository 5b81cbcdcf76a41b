package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;

class ComplexErrorFunctionTest {
    private static final double STATED_ERROR = 1e-12;

    @Test
    void agreesWithRowsOfManyDigits() { // published form, re-made with 40 digits
        List<Map<String, String>> rows = FullWaveRows.read("complex-error-function-mpmath.csv");
        assertTrue(rows.size() > 80);
        for (Map<String, String> row : rows) {
            Complex z = new Complex(FullWaveRows.number(row, "re"), FullWaveRows.number(row, "im"));
            Complex w = new Complex(FullWaveRows.number(row, "w_re"), FullWaveRows.number(row, "w_im"));
            double allowed = STATED_ERROR * Math.max(1, w.abs());
            assertEquals(0, ComplexErrorFunction.faddeeva(z).subtract(w).abs(), allowed, row.toString());
        }
    }

    @Test
    void onTheImaginaryAxisItIsTheScaledErrorFunction() { // law: w(jy) = exp(y²) erfc(y)
        for (double y = 0; y < 4; y += 0.25) {
            Complex w = ComplexErrorFunction.faddeeva(new Complex(0, y));
            assertEquals(Math.exp(y * y) * Erf.erfc(y), w.getReal(), 1e-9, "y " + y);
            assertEquals(0, w.getImaginary(), STATED_ERROR, "y " + y);
        }
    }

    @Test
    void knownValuesOfErfc() { // Abramowitz and Stegun table 7.1: erf(0.5) = 0.5204998778, erf(1) = 0.8427007929
        assertEquals(1 - 0.5204998778, erfc(0.5), 1e-10);
        assertEquals(1 - 0.8427007929, erfc(1), 1e-10);
    }

    private static double erfc(double x) {
        return Math.exp(-x * x)
                * ComplexErrorFunction.faddeeva(new Complex(0, x)).getReal();
    }

    @Test
    void farAwayItFallsWithTheDistance() { // limit: w(z) → j/(√π z)
        Complex z = new Complex(3e6, 4e6);
        Complex w = ComplexErrorFunction.faddeeva(z).multiply(z).multiply(Math.sqrt(Math.PI));
        assertEquals(0, w.subtract(Complex.I).abs(), 1e-11);
    }

    @Test
    void surfaceWaveAgreesWithKnownRows() { // F(w) for 15/0.005 ground: rows computed with the complex error
        // function of scipy
        // w itself is rounded to 4 digits there, and F changes by up to 0.15 of w
        assertRow(0.2186, -1.4688, 0.113921, -0.220151, 1e-5);
        assertRow(3.6665, -100.0385, -0.000108157, -0.004994983, 1e-8);
    }

    private static void assertRow(double re, double im, double fRe, double fIm, double rounding) {
        Complex f = SurfaceWave.attenuation(new Complex(re, im));
        assertEquals(fRe, f.getReal(), rounding);
        assertEquals(fIm, f.getImaginary(), rounding);
    }

    @Test
    void surfaceWaveHasNoStepWhereTheSeriesBegins() {
        for (double deg = -179; deg <= 0; deg += 1) {
            Complex direction = new Complex(Math.cos(Math.toRadians(deg)), Math.sin(Math.toRadians(deg)));
            Complex in = SurfaceWave.attenuation(direction.multiply(36 - 1e-9));
            Complex out = SurfaceWave.attenuation(direction.multiply(36 + 1e-9));
            assertEquals(0, in.subtract(out).abs() / out.abs(), 1e-8, "argument " + deg);
        }
    }
}
