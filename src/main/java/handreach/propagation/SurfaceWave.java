package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;
import org.apache.commons.math3.complex.Complex;

/**
 * The wave that the ground guides along itself (Norton). Below a height of h0 an antenna stands within it and gains nothing from
 * being raised.
 */
public final class SurfaceWave {
    private static final double SERIES_LIMIT = 16;

    private SurfaceWave() {}

    /**
     * Attenuation function F(w) = 1 − j√(πw) e^(−w) erfc(j√w) of the numerical distance w.
     *
     * @shape  complex in, complex out; pure; power series to |w| = 16, continued fraction beyond
     * @unit   dimensionless; 1 at w = 0, towards −1/(2w) far away
     * @valid  all w; for ground without gain arg w lies between −180° and 0°
     * @error  relative 1e-8 within the series, 1e-4 beyond where w is nearly real and positive (sea at the low end), else 1e-9
     * @source Norton (1937); Bullington (1957); continued fraction of the complex error function: Abramowitz and Stegun 7.1.14
     */
    public static Complex attenuation(Complex w) {
        if (w.abs() == 0) return Complex.ONE;
        return w.abs() <= SERIES_LIMIT ? series(w) : fraction(w);
    }

    private static Complex series(Complex w) {
        Complex guided = w.multiply(Math.PI).sqrt().multiply(w.negate().exp()).multiply(Complex.I);
        double re = 1;
        double im = 0;
        double tr = 1;
        double ti = 0;
        double wr = -2 * w.getReal();
        double wi = -2 * w.getImaginary();
        for (int n = 1; n < 200; n++) {
            double odd = 2 * n - 1;
            double next = (tr * wr - ti * wi) / odd;
            ti = (tr * wi + ti * wr) / odd;
            tr = next;
            re += tr;
            im += ti;
            if (Math.abs(tr) + Math.abs(ti) < 1e-17) break;
        }
        return new Complex(re, im).subtract(guided);
    }

    /** F = 1 − j√π √w W(−√w), with W the complex error function of the upper half-plane from its continued fraction. */
    private static Complex fraction(Complex w) {
        Complex root = w.sqrt();
        boolean below = root.getImaginary() > 0;
        Complex z = below ? root : root.negate();
        Complex tail = z;
        for (int n = 60; n >= 1; n--) tail = z.subtract(tail.reciprocal().multiply(n / 2.0));
        Complex upper = Complex.I.divide(tail.multiply(Math.sqrt(Math.PI)));
        Complex value = below ? w.negate().exp().multiply(2).subtract(upper) : upper;
        return Complex.ONE.subtract(value.multiply(root).multiply(Complex.I).multiply(Math.sqrt(Math.PI)));
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

    /**
     * Complex height gain 1 + jkΔh of an antenna near the ground, relative to one on the ground.
     *
     * @shape  scalars in, complex out; pure
     * @unit   height above ground m; result dimensionless
     * @valid  grazing rays, k h sin ψ small
     * @error  −0.5 to +0.1 dB in the loss when |w| is above 100 and 2 k h1 h2/d below 0.3; several dB when |w| is below 10
     * @source Norton (1937, 1941), height-gain function over flat ground
     */
    public static Complex heightGain(Frequency frequency, Polarization polarization, Ground ground, double heightM) {
        return ground.surfaceImpedance(frequency, polarization)
                .multiply(new Complex(0, frequency.waveNumber() * heightM))
                .add(1);
    }
}
