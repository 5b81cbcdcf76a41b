package handreach.walk;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Promised against found.
 *
 * @param kept promised and found
 * @param falseHopes promised and not found: the costly ones
 * @param falseFears found and not promised
 * @param rightlyDoubted neither
 */
public record CopyTable(int kept, int falseHopes, int falseFears, int rightlyDoubted) {
    /** Copy counts as promised from these odds up. */
    public static final double PROMISED_FROM = 0.5;

    static CopyTable of(List<WalkPair> pairs) {
        int[] count = new int[4];
        for (WalkPair pair : pairs) count[(pair.odds() >= PROMISED_FROM ? 0 : 2) + (pair.copied() ? 0 : 1)]++;
        return new CopyTable(count[0], count[1], count[2], count[3]);
    }

    public int count() {
        return kept + falseHopes + falseFears + rightlyDoubted;
    }

    /**
     * Share predicted right.
     *
     * @shape  counts in, share out; pure
     * @unit   0 to 1
     * @valid  at least one report; none: empty
     * @error  none; it flatters where one outcome is rare
     * @source Finley's table as treated by Murphy, Weather and Forecasting 11 (1996) 3
     */
    public OptionalDouble shareRight() {
        return count() == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) (kept + rightlyDoubted) / count());
    }
}
