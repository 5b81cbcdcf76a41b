package handreach.bench.match;

/** The one-resonance picture of a whip: how bandwidth, quality factor and resistance hang together. */
final class SeriesResonance {
    private SeriesResonance() {}

    /**
     * Quality factor that goes with a measured bandwidth.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   MHz; result none
     * @valid  1/s < r < s with r = R0/Z0 and s the SWR of the limit, else the limit is never met: IllegalArgumentException;
     *     fractional bandwidth below about 30 %, one resonance, no matching network with a resonance of its own
     * @error  2 % for a quarter-wave whip (Q 7) against method-of-moments values; exact for a narrow series circuit
     * @source matched: Yaghjian and Best, IEEE Trans. AP 53 (2005) 1298 (from memory); with r other than 1: from |Γ| of R0 + jX
     */
    public static double quality(double resonanceMhz, double bandwidthMhz, Match limit, double resistanceRatio) {
        if (!(resonanceMhz > 0) || !(bandwidthMhz > 0))
            throw new IllegalArgumentException("resonance " + resonanceMhz + " MHz, bandwidth " + bandwidthMhz);
        return resonanceMhz / bandwidthMhz * factor(limit, resistanceRatio);
    }

    private static double factor(Match limit, double r) {
        double s = limit.swr();
        if (!(r * s > 1 && r < s))
            throw new IllegalArgumentException("resistance ratio " + r + " never meets SWR " + s);
        return Math.sqrt((s - r) * (s * r - 1) / s) / r;
    }
}
