package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;
import org.apache.commons.math3.complex.Complex;

/** Two antennas over flat ground: direct ray, reflected ray, surface wave; and the asymptotes for low antennas. */
public final class TwoRay {
    private TwoRay() {}

    /**
     * Excess loss of the full sum E/E0 = 1 + (r1/r2) e^(−jk(r2−r1)) [R + (1 − R) F(w)].
     *
     * @shape  scalars in, scalar out; pure
     * @unit   ground distance m, heights above the flat ground m; result dB over the free-space loss of the direct ray, positive weakens
     * @valid  flat uniform ground, closer than about 80/∛f(MHz) km; below a few wavelengths the induction field is left out
     * @error  within 0.1 dB of the exact field beyond one wavelength where |Δ| is below 0.3
     * @source Norton (1937); Bullington (1947, 1957, 1977)
     */
    public static double excessDb(
            double distanceM, double h1M, double h2M, Frequency frequency, Polarization polarization, Ground ground) {
        Rays rays = Rays.of(distanceM, h1M, h2M);
        Complex r = Reflection.coefficient(frequency, polarization, ground, rays.sinGrazing());
        Complex w =
                SurfaceWave.numericalDistance(frequency, polarization, ground, rays.reflectedM(), rays.sinGrazing());
        Complex second =
                Complex.ONE.subtract(r).multiply(SurfaceWave.attenuation(w)).add(r);
        return sumDb(rays, second, frequency);
    }

    /**
     * Excess loss without the surface wave, the reflected ray weakened by the roughness of the ground.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   as {@link #excessDb}; standard deviation of the ground m
     * @valid  both antennas well above {@link SurfaceWave#effectiveHeightM}; closer to the ground it loses up to 25 dB too much
     * @error  within 0.1 dB of the full sum once both heights exceed about 5 h0
     * @source Rec. ITU-R P.527 and textbooks; roughness: {@link Reflection#roughnessFactor}
     */
    public static double plainExcessDb(
            double distanceM, double h1M, double h2M, PathConditions conditions, double surfaceDeviationM) {
        Rays rays = Rays.of(distanceM, h1M, h2M);
        Frequency frequency = conditions.frequency();
        double rough =
                Reflection.roughnessFactor(Reflection.roughness(frequency, surfaceDeviationM, rays.sinGrazing()));
        Complex r = Reflection.coefficient(frequency, conditions.polarization(), conditions.ground(), rays.sinGrazing())
                .multiply(rough);
        return sumDb(rays, r, frequency);
    }

    /** In a perfect null the sum vanishes: the excess is held at 120 dB, deeper than any null in air. */
    private static double sumDb(Rays rays, Complex second, Frequency frequency) {
        double lag = frequency.waveNumber() * rays.lagM();
        Complex turned = new Complex(Math.cos(lag), -Math.sin(lag)).multiply(rays.directM() / rays.reflectedM());
        double field = turned.multiply(second).add(1).abs();
        return -20 * Math.log10(Math.max(field, 1e-6));
    }

    /** Distance beyond which flat ground no longer stands for the earth, km: 80/∛f(MHz) (from memory). */
    static double flatEarthLimitKm(Frequency frequency) {
        return 80 / Math.cbrt(frequency.mhz());
    }

    /** Lengths of the two rays, their difference without cancellation, and the sine of the grazing angle. */
    private record Rays(double directM, double reflectedM, double lagM, double sinGrazing) {
        static Rays of(double distanceM, double h1M, double h2M) {
            if (!(distanceM > 0) || !(h1M >= 0) || !(h2M >= 0))
                throw new IllegalArgumentException(
                        "distance " + distanceM + " m, heights " + h1M + " and " + h2M + " m");
            double direct = Math.hypot(distanceM, h1M - h2M);
            double reflected = Math.hypot(distanceM, h1M + h2M);
            return new Rays(direct, reflected, 4 * h1M * h2M / (direct + reflected), (h1M + h2M) / reflected);
        }
    }
}
