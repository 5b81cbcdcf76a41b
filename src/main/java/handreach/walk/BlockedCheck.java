package handreach.walk;

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

    /**
     * Holds back stretch after stretch.
     *
     * @shape  n reports in, one record out, or none where the walk is too short for stretches; five calibrations, pure
     * @unit   dB; Brier score 0 to 1
     * @valid  at least 20 reports. Reports nearer than the decorrelation distance to a held-back one are not learned from
     * @error  that of the figures themselves: with few independent reports a difference may be luck
     * @source cross-validation by blocks, Roberts et al., Ecography 40 (2017) 913 (from memory)
     */
    public static Optional<BlockedCheck> of(List<WalkPair> pairs, double decorrelationM, Priors priors) {
        List<WalkPair> inOrder = new ArrayList<>(pairs);
        inOrder.sort(Comparator.comparingDouble(pair -> pair.spot().alongM()));
        if (inOrder.size() < STRETCHES * LEAST_IN_STRETCH) return Optional.empty();
        List<WalkPair> before = new ArrayList<>();
        List<WalkPair> after = new ArrayList<>();
        int used = 0;
        for (int s = 0; s < STRETCHES; s++) {
            int first = inOrder.size() * s / STRETCHES;
            int end = inOrder.size() * (s + 1) / STRETCHES;
            List<WalkPair> held = inOrder.subList(first, end);
            List<WalkPair> learned = new ArrayList<>();
            for (int i = 0; i < inOrder.size(); i++)
                if ((i < first || i >= end) && isFar(inOrder.get(i), held, decorrelationM)) learned.add(inOrder.get(i));
            if (learned.isEmpty()) continue;
            used++;
            Calibration calibration = Calibration.of(learned, decorrelationM, priors, List.of());
            before.addAll(held);
            for (WalkPair pair : held) after.add(calibration.corrected(pair));
        }
        if (before.isEmpty()) return Optional.empty();
        return Optional.of(new BlockedCheck(
                used, before.size(), rmse(before), rmse(after), Comparison.brier(before), Comparison.brier(after)));
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
