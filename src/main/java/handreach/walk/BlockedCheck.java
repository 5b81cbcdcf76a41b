package handreach.walk;

import handreach.reach.Progress;
import handreach.reach.Stretch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether a calibration helps where it was not made: each stretch of the walk is held back in turn, learned from the others, and
 * predicted.
 *
 * @param stretches how many stretches were held back
 * @param reports how many reports were predicted
 * @param rmseBeforeDb RMSE of the levels as predicted before any walk, dB
 * @param rmseAfterDb the same, learned from the other stretches
 * @param brierBefore Brier score of all reports before
 * @param brierAfter after
 */
public record BlockedCheck(
        int stretches,
        int reports,
        OptionalDouble rmseBeforeDb,
        OptionalDouble rmseAfterDb,
        double brierBefore,
        double brierAfter) {
    private static final int STRETCHES = 5;
    private static final int LEAST_IN_STRETCH = 4;
    /** Share of a stretch's work after which the reports near it are set aside, as seen on long walks. */
    private static final double KEPT_APART = 0.2;

    /**
     * Holds back stretch after stretch.
     *
     * @shape  n reports in, one record out, or none where the walk is too short for stretches; five calibrations, pure; stops between
     *     steps where nobody wants it
     * @unit   dB; Brier score 0 to 1
     * @valid  at least 20 reports. Reports nearer than the decorrelation distance to a held-back one are not learned from
     * @error  that of the figures themselves: with few independent reports a difference may be luck
     * @source cross-validation by blocks, Roberts et al., Ecography 40 (2017) 913 (from memory)
     */
    public static Optional<BlockedCheck> of(
            List<WalkPair> pairs, double decorrelationM, Priors priors, Progress progress) {
        List<WalkPair> inOrder = new ArrayList<>(pairs);
        inOrder.sort(Comparator.comparingDouble(pair -> pair.spot().alongM()));
        if (inOrder.size() < STRETCHES * LEAST_IN_STRETCH) return Optional.empty();
        List<WalkPair> before = new ArrayList<>();
        List<WalkPair> after = new ArrayList<>();
        int used = 0;
        Stretch all = new Stretch(progress, "checking on stretches held back", 0, 1);
        for (int s = 0; s < STRETCHES; s++) {
            int first = inOrder.size() * s / STRETCHES;
            int end = inOrder.size() * (s + 1) / STRETCHES;
            List<WalkPair> held = inOrder.subList(first, end);
            List<WalkPair> others = new ArrayList<>(inOrder.subList(0, first));
            others.addAll(inOrder.subList(end, inOrder.size()));
            Stretch mine = all.part((double) s / STRETCHES, (s + 1.0) / STRETCHES);
            List<WalkPair> learned = far(others, held, decorrelationM, mine.part(0, KEPT_APART));
            if (learned.isEmpty()) continue;
            used++;
            Calibration calibration =
                    Calibration.of(learned, decorrelationM, priors, List.of(), mine.part(KEPT_APART, 1));
            before.addAll(held);
            for (WalkPair pair : held) after.add(calibration.corrected(pair));
        }
        if (before.isEmpty()) return Optional.empty();
        return Optional.of(new BlockedCheck(
                used, before.size(), rmse(before), rmse(after), Comparison.brier(before), Comparison.brier(after)));
    }

    /** Those that lie at least so far from every one held back. */
    private static List<WalkPair> far(List<WalkPair> others, List<WalkPair> held, double leastM, Stretch keeping) {
        List<WalkPair> far = new ArrayList<>();
        for (int i = 0; i < others.size(); i++) {
            keeping.goOn();
            if (isFar(others.get(i), held, leastM)) far.add(others.get(i));
            keeping.done((i + 1.0) / others.size());
        }
        return far;
    }

    private static boolean isFar(WalkPair pair, List<WalkPair> held, double decorrelationM) {
        for (WalkPair other : held) if (Thinning.apartM(pair, other) < decorrelationM) return false;
        return true;
    }

    private static OptionalDouble rmse(List<WalkPair> pairs) {
        OptionalDouble square = pairs.stream()
                .filter(WalkPair::isLevel)
                .mapToDouble(pair -> pair.errorDb() * pair.errorDb())
                .average();
        return square.isPresent() ? OptionalDouble.of(Math.sqrt(square.getAsDouble())) : OptionalDouble.empty();
    }
}
