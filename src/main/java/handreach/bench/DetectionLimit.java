package handreach.bench;

import handreach.uncertainty.CombinedUncertainty;
import handreach.uncertainty.Estimate;
import handreach.uncertainty.NoncentralT;
import handreach.uncertainty.UncertaintyPart;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * What a session can show at all: test at 5 % from both sides, seen four times out of five.
 *
 * @param made the doubt of the comparison as made; its value does not matter here
 * @param scatterDb scatter of one difference, antenna less control
 * @param degreesPerTrial degrees of freedom that each trial after the first adds: 1 for pairs, up to 2 for independent sets
 * @param declared the declared doubts, which no number of trials lessens
 */
public record DetectionLimit(Estimate made, double scatterDb, double degreesPerTrial, List<UncertaintyPart> declared) {
    private static final double LEVEL = 0.05;
    private static final double POWER = 0.80;
    private static final int MOST_TRIALS = 100_000;

    public DetectionLimit {
        declared = List.copyOf(declared);
        if (!(scatterDb >= 0) || Double.isInfinite(scatterDb))
            throw new IllegalArgumentException("scatter " + scatterDb);
        if (!(degreesPerTrial >= 1 - 1e-9 && degreesPerTrial <= 2 + 1e-9))
            throw new IllegalArgumentException("degrees per trial " + degreesPerTrial);
    }

    /**
     * The least true difference that this session would have told from zero four times out of five.
     *
     * @shape  scalar out; pure
     * @unit   dB
     * @valid  one comparison on its own; with several antennas on one control the Holm step asks for somewhat more
     * @error  below 1e-6 of the value for the formula; the scatter itself is known to 1/√(2ν) of its value only
     * @source exact noncentral t, {@link NoncentralT}
     */
    public double minimumDifferenceDb() {
        double degrees = Math.min(1e6, Math.max(1, made.degreesOfFreedom()));
        return NoncentralT.detectableDifference(degrees, LEVEL, POWER) * made.standardUncertainty();
    }

    /**
     * Trials of either antenna, those made included, that would tell a true difference of this size from zero.
     *
     * @shape  scalar in, scalar or nothing out; O(log n), pure
     * @unit   difference dB, result trials
     * @valid  nothing comes back when the declared doubts alone hide the difference, or above 100 000 trials
     * @error  as uncertain as the scatter seen so far: with six trials a factor of two either way is usual
     * @source least n at which {@link NoncentralT#power} reaches 80 % at the 5 % level
     */
    public OptionalInt trialsFor(double differenceDb) {
        double size = Math.abs(differenceDb);
        if (!(size > 0) || !seen(size, MOST_TRIALS)) return OptionalInt.empty();
        int low = 1;
        int high = 2;
        while (!seen(size, high)) {
            low = high;
            high = Math.min(MOST_TRIALS, 2 * high);
        }
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (seen(size, middle)) high = middle;
            else low = middle;
        }
        return OptionalInt.of(high);
    }

    private boolean seen(double sizeDb, int trials) {
        List<UncertaintyPart> parts = new ArrayList<>(declared);
        parts.add(UncertaintyPart.seen("scatter", scatterDb / Math.sqrt(trials), degreesPerTrial * (trials - 1)));
        Estimate estimate = CombinedUncertainty.of(parts).estimate(0);
        if (estimate.standardUncertainty() == 0) return true;
        double degrees = Math.min(1e6, Math.max(1, estimate.degreesOfFreedom()));
        return NoncentralT.power(Math.min(1e4, sizeDb / estimate.standardUncertainty()), degrees, LEVEL) >= POWER;
    }
}
