package handreach.walk;

import handreach.reach.Progress;
import handreach.reach.SubProgress;
import java.util.ArrayList;
import java.util.Arrays;
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
    /** Whether what was learned helps on the stretches held back. */
    public enum Verdict {
        HELPS,
        /** The odds became better, the levels worse. */
        HELPS_ODDS,
        /** The levels became better, the odds worse. */
        HELPS_LEVELS,
        DOES_NOT_HELP
    }

    private static final int STRETCHES = 5;
    private static final int LEAST_IN_STRETCH = 4;
    /** Shares of the work after which near reports are set aside, and all are weighed, as seen on long walks. */
    private static final double KEPT_APART = 0.05;

    private static final double WEIGHED = 0.25;

    /** Help is claimed only where nothing that was measured became worse. */
    public Verdict verdict() {
        boolean oddsBetter = brierAfter < brierBefore;
        boolean hasLevels = rmseBeforeDb.isPresent() && rmseAfterDb.isPresent();
        boolean levelsBetter = hasLevels ? rmseAfterDb.getAsDouble() < rmseBeforeDb.getAsDouble() : oddsBetter;
        if (oddsBetter) return levelsBetter ? Verdict.HELPS : Verdict.HELPS_ODDS;
        return levelsBetter ? Verdict.HELPS_LEVELS : Verdict.DOES_NOT_HELP;
    }

    /**
     * Holds back stretch after stretch.
     *
     * @shape  n reports in, one record out, or none where the walk is too short for stretches; the reports are weighed once for all
     *     stretches, then five calibrations; pure; stops between steps where nobody wants it
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
        SubProgress all = new SubProgress(progress, "checking on stretches held back", 0, 1);
        Neighbourhood near = Neighbourhood.of(inOrder);
        int[] learned = learnedFor(near, inOrder.size(), decorrelationM, all.part(0, KEPT_APART));
        double[][] weight = Thinning.weights(near, learned, STRETCHES, decorrelationM, all.part(KEPT_APART, WEIGHED));
        List<WalkPair> before = new ArrayList<>();
        List<WalkPair> after = new ArrayList<>();
        int used = 0;
        for (int s = 0; s < STRETCHES; s++) {
            List<WalkPair> others = new ArrayList<>();
            for (int i = 0; i < learned.length; i++) if (weight[s][i] > 0) others.add(inOrder.get(i));
            if (others.isEmpty()) continue;
            used++;
            double[] theirs = Arrays.stream(weight[s]).filter(w -> w > 0).toArray();
            SubProgress mine = all.part(WEIGHED, 1).part((double) s / STRETCHES, (s + 1.0) / STRETCHES);
            Calibration calibration = Calibration.of(others, theirs, priors, List.of(), mine);
            List<WalkPair> held = inOrder.subList(first(s, learned.length), first(s + 1, learned.length));
            before.addAll(held);
            for (WalkPair pair : held) after.add(calibration.corrected(pair));
        }
        if (before.isEmpty()) return Optional.empty();
        return Optional.of(new BlockedCheck(
                used, before.size(), rmse(before), rmse(after), Comparison.brier(before), Comparison.brier(after)));
    }

    private static int first(int stretch, int reports) {
        return (int) ((long) reports * stretch / STRETCHES);
    }

    /** For each report the stretches it may teach about, a bit for each: those that it is far from every report of. */
    private static int[] learnedFor(Neighbourhood near, int reports, double leastM, Progress progress) {
        int[] own = new int[near.places()];
        for (int s = 0; s < STRETCHES; s++)
            for (int i = first(s, reports); i < first(s + 1, reports); i++) own[near.place(i)] |= 1 << s;
        int[] touched = own.clone();
        near.within(leastM, progress, "keeping stretches apart", (a, b, apartM) -> {
            touched[a] |= own[b];
            touched[b] |= own[a];
        });
        int[] learned = new int[reports];
        for (int i = 0; i < reports; i++) learned[i] = ~touched[near.place(i)] & (1 << STRETCHES) - 1;
        return learned;
    }

    private static OptionalDouble rmse(List<WalkPair> pairs) {
        OptionalDouble square = pairs.stream()
                .filter(WalkPair::isLevel)
                .mapToDouble(pair -> pair.errorDb() * pair.errorDb())
                .average();
        return square.isPresent() ? OptionalDouble.of(Math.sqrt(square.getAsDouble())) : OptionalDouble.empty();
    }
}
