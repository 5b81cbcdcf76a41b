package handreach.bench.match;

/** The one-resonance picture of a whip: how bandwidth, quality factor and resistance hang together. */
final class SeriesResonance {
    private SeriesResonance() {}

    /**
     * Width of the band in which the SWR stays at or below a limit.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   MHz; quality none; resistance over line impedance r = R0/Z0
     * @valid  1/s < r < s, else the limit is never met: IllegalArgumentException; fractional bandwidth below about 30 %, one
     *     resonance, no matching network with a resonance of its own
     * @error  2 % for a quarter-wave whip (Q 7) against method-of-moments values; exact for a narrow series circuit
     * @source matched: Yaghjian and Best, IEEE Trans. AP 53 (2005) 1298 (from memory); with r other than 1: from |Γ| of R0 + jX
     */
    public static double bandwidthMhz(double resonanceMhz, double quality, Match limit, double resistanceRatio) {
        if (!(resonanceMhz > 0) || !(quality > 0))
            throw new IllegalArgumentException("resonance " + resonanceMhz + " MHz, Q " + quality);
        return resonanceMhz / quality * factor(limit, resistanceRatio);
    }

    /**
     * Quality factor that goes with a measured bandwidth.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   MHz; result none
     * @valid  as {@link #bandwidthMhz}
     * @error  as {@link #bandwidthMhz}
     * @source inverse of {@link #bandwidthMhz}
     */
    public static double quality(double resonanceMhz, double bandwidthMhz, Match limit, double resistanceRatio) {
        if (!(resonanceMhz > 0) || !(bandwidthMhz > 0))
            throw new IllegalArgumentException("resonance " + resonanceMhz + " MHz, bandwidth " + bandwidthMhz);
        return resonanceMhz / bandwidthMhz * factor(limit, resistanceRatio);
    }

    /**
     * The least quality factor that a lossless antenna of this size can have: a lower one is bought with loss.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   radius of the sphere around antenna and chassis m, wavelength m; result none
     * @valid  radius above 0
     * @error  a bound, seldom approached: a loaded whip on a box has several times as much
     * @source Chu 1948, McLean 1996 (from memory): 1/(ka)³ + 1/(ka)
     */
    public static double losslessBound(double radiusM, double wavelengthM) {
        if (!(radiusM > 0) || !(wavelengthM > 0))
            throw new IllegalArgumentException("radius " + radiusM + ", wavelength " + wavelengthM);
        double ka = 2 * Math.PI * radiusM / wavelengthM;
        return 1 / (ka * ka * ka) + 1 / ka;
    }

    private static double factor(Match limit, double r) {
        double s = limit.swr();
        if (!(r * s > 1 && r < s))
            throw new IllegalArgumentException("resistance ratio " + r + " never meets SWR " + s);
        return Math.sqrt((s - r) * (s * r - 1) / s) / r;
    }
}
