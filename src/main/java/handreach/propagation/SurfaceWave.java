package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;
import org.apache.commons.math3.complex.Complex;

/**
 * The wave that the ground guides along itself (Norton). Below a height of h0 an antenna stands within it and gains nothing from
 * being raised.
 */
public final class SurfaceWave {
    /** Beyond this |w| the divergent series of F has a term below 1e-14. */
    private static final double FAR = 36;

    private static final double ROOT_PI = Math.sqrt(Math.PI);

    private SurfaceWave() {}

    /**
     * Attenuation function F(w) = 1 − j√(πw) e^(−w) erfc(j√w) of the numerical distance w.
     *
     * @shape  complex in, complex out; pure; complex error function to |w| = 36, asymptotic series beyond
     * @unit   dimensionless; 1 at w = 0, towards −1/(2w) far away
     * @valid  all w; for ground without gain arg w lies between −180° and 0°
     * @error  relative 1e-8, worst at |w| = 36
     * @source Norton (1937); Bullington (1957); asymptotic series as Abramowitz and Stegun 7.1.23
     */
    public static Complex attenuation(Complex w) {
        if (w.abs() == 0) return Complex.ONE;
        Complex root = w.sqrt();
        if (w.abs() > FAR && root.getImaginary() <= 0) return far(w);
        Complex guided = ComplexErrorFunction.faddeeva(root.negate()).multiply(root);
        return Complex.ONE.subtract(guided.multiply(Complex.I).multiply(ROOT_PI));
    }

    private static Complex far(Complex w) {
        Complex step = w.multiply(2).reciprocal();
        Complex term = step.negate();
        Complex sum = term;
        for (int m = 2; m <= 36; m++) {
            Complex next = term.multiply(step).multiply(2 * m - 1);
            if (next.abs() >= term.abs() || next.abs() < 1e-17 * sum.abs()) break;
            sum = sum.add(next);
            term = next;
        }
        return sum;
    }

    /**
     * Numerical distance w = −j (k r/2)(sin ψ + Δ)².
     *
     * @shape  scalars in, complex out; pure
     * @unit   length of the reflected ray m, sine of its grazing angle; result dimensionless
     * @valid  flat uniform ground
     * @error  exact
     * @source Norton (1937); Bullington (1957)
     */
    public static Complex numericalDistance(
            Frequency frequency, Polarization polarization, Ground ground, double rayM, double sinGrazing) {
        Complex sum =
                ground.surfaceImpedance(frequency, polarization, sinGrazing).add(sinGrazing);
        return sum.multiply(sum).multiply(new Complex(0, -frequency.waveNumber() * rayM / 2));
    }

    /**
     * Height h0 = 1/(k|Δ|) below which an antenna gains nothing from being raised.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   result m
     * @valid  grazing rays over flat ground
     * @error  exact within its definition
     * @source Bullington (1947, 1957), minimum effective height
     */
    public static double effectiveHeightM(Frequency frequency, Polarization polarization, Ground ground) {
        return 1
                / (frequency.waveNumber()
                        * ground.surfaceImpedance(frequency, polarization).abs());
    }
}
