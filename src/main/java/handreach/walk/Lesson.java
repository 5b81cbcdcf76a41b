package handreach.walk;

import handreach.reach.SubProgress;
import handreach.terrain.Cover;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;

/**
 * All that is learned from the reports of the walks, in its order: a first calibration with the usual length over which errors stay
 * alike, that length from what it leaves over, the calibration with it, and the doubts that reports alone do not show.
 *
 * @param calibration with the doubts of a trend and of silent calls
 * @param decorrelationM length over which errors stay alike, m
 * @param isEstimated whether it was learned from the reports
 * @param trend how the errors go with the predicted margin
 * @param silentCalls silent calls expected and found
 */
public record Lesson(
        Calibration calibration,
        double decorrelationM,
        boolean isEstimated,
        MarginTrend trend,
        SilentCalls silentCalls) {
    private static final double FIRST = 0.25;
    private static final double LAGGED = 0.4;
    private static final double SECOND = 0.65;

    /**
     * Learns from reports.
     *
     * @shape  n reports in, one record out; two to four calibrations; pure; stops between steps where nobody wants it
     * @unit   m, dB
     * @valid  at least one report; outside: IllegalArgumentException
     * @error  the 95 % interval of the shift at the edge of copy and in the mean of the walk holds the truth in 90 % or more of simulated
     *     walks, of levels and of copies, also with errors alike over 500 m, with a distance law 30 % off, and with seven of ten
     *     silent calls missing where that was not known
     * @source {@link Calibration}, {@link Likeness}, {@link MarginTrend}, {@link SilentCalls}
     */
    public static Lesson of(
            List<WalkPair> pairs,
            Priors priors,
            Collection<String> furtherCarries,
            boolean mayMissSilentCalls,
            SubProgress learning) {
        double usualM = Thinning.usualDecorrelationM(isMostlyOpen(pairs));
        Calibration first = Calibration.of(pairs, usualM, priors, furtherCarries, learning.part(0, FIRST));
        OptionalDouble learnedM = learned(pairs, first, usualM, learning.part(FIRST, LAGGED));
        double decorrelationM = learnedM.orElse(usualM);
        Calibration second = decorrelationM == usualM
                ? first
                : Calibration.of(pairs, decorrelationM, priors, furtherCarries, learning.part(LAGGED, SECOND));
        MarginTrend trend = MarginTrend.of(pairs, second.weights(), second);
        double silentDb = mayMissSilentCalls
                ? SilentCalls.doubtDb(pairs, second, priors, furtherCarries, learning.part(SECOND, 1))
                : 0;
        return new Lesson(
                second.widened(Math.hypot(trend.doubtDb(), silentDb)),
                decorrelationM,
                learnedM.isPresent(),
                trend,
                SilentCalls.of(pairs, second.weights()));
    }

    /** Copies tell little about short lengths: from them only a length beyond the usual is taken. */
    private static OptionalDouble learned(List<WalkPair> pairs, Calibration first, double usualM, SubProgress lagging) {
        OptionalDouble found = Likeness.decorrelationM(pairs, first, lagging);
        boolean isOfLevels = pairs.stream().filter(WalkPair::isLevel).count() >= Likeness.LEAST_REPORTS;
        return found.isEmpty() || isOfLevels || found.getAsDouble() > usualM ? found : OptionalDouble.empty();
    }

    private static boolean isMostlyOpen(List<WalkPair> pairs) {
        long open = pairs.stream()
                .filter(pair -> pair.spot().cover() == Cover.OPEN || pair.spot().cover() == Cover.WATER)
                .count();
        return 2 * open >= pairs.size();
    }
}
