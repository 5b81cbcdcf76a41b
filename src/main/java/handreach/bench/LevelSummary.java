package handreach.bench;

import java.util.OptionalDouble;

/**
 * The readings of one antenna taken together.
 *
 * @param n how many
 * @param mean arithmetic mean of the decibels: dBm for levels, decibels over an unknown reference for a field meter
 * @param standardDeviationDb scatter of single readings; none with one reading
 */
public record LevelSummary(int n, double mean, OptionalDouble standardDeviationDb) {
    public LevelSummary {
        if (n < 1) throw new IllegalArgumentException(n + " readings");
        if (!Double.isFinite(mean)) throw new IllegalArgumentException("mean " + mean);
    }
}
