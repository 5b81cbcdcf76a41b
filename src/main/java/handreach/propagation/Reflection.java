package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;
import org.apache.commons.math3.complex.Complex;

/** Reflection of a plane wave from the ground. */
final class Reflection {
    private Reflection() {}

    /**
     * Plane-wave reflection coefficient R = (sin ψ − Δ)/(sin ψ + Δ).
     *
     * @shape  scalars in, complex out; pure
     * @unit   sine of the grazing angle ψ, 0 to 1; result dimensionless, −1 at grazing
     * @valid  plane, smooth, uniform ground; outside 0 to 1: IllegalArgumentException
     * @error  as the ground constants
     * @source Rec. ITU-R P.527 (from memory); same as the classical forms with εr sin ψ and sin ψ
     */
    public static Complex coefficient(
            Frequency frequency, Polarization polarization, Ground ground, double sinGrazing) {
        if (!(sinGrazing >= 0 && sinGrazing <= 1))
            throw new IllegalArgumentException("sine of a grazing angle " + sinGrazing);
        Complex impedance = ground.surfaceImpedance(frequency, polarization, sinGrazing);
        return impedance.negate().add(sinGrazing).divide(impedance.add(sinGrazing));
    }

    /**
     * Roughness g = 4π σ sin ψ / λ: phase spread of a reflection from uneven ground.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   standard deviation of the surface m; result radians
     * @valid  standard deviation from 0 up
     * @error  exact
     * @source Rec. ITU-R P.527 and textbooks, Rayleigh roughness (from memory)
     */
    public static double roughness(Frequency frequency, double surfaceDeviationM, double sinGrazing) {
        if (!(surfaceDeviationM >= 0)) throw new IllegalArgumentException("surface deviation " + surfaceDeviationM);
        return 4 * Math.PI * surfaceDeviationM * sinGrazing / frequency.wavelengthM();
    }

    /**
     * Factor by which roughness g weakens the reflected ray (not the surface wave): exp(−g²/2) I0(g²/2).
     *
     * @shape  scalar in, scalar out; pure
     * @unit   g radians; result 0 to 1
     * @valid  Gaussian surfaces; agrees with exp(−g²/2) for small g and does not fall too low for large
     * @error  relative 1e-12; the law itself a few dB for g above 2
     * @source Miller, Brown and Vegh (1984), from memory; I0 by its power series (Abramowitz and Stegun 9.6.12) and, above 40, 9.7.1
     */
    public static double roughnessFactor(double g) {
        double x = g * g / 2;
        if (x > 40) return scaledAsymptote(x);
        double term = 1;
        double sum = 1;
        for (int n = 1; term > 1e-17 * sum; n++) {
            term *= x * x / (4.0 * n * n);
            sum += term;
        }
        return Math.exp(-x) * sum;
    }

    private static double scaledAsymptote(double x) {
        double term = 1;
        double sum = 1;
        for (int n = 1; n < 12; n++) {
            term *= (2.0 * n - 1) * (2.0 * n - 1) / (8 * n * x);
            sum += term;
        }
        return sum / Math.sqrt(2 * Math.PI * x);
    }
}
