package handreach.bench;

import handreach.uncertainty.Interval;
import handreach.uncertainty.UncertaintyPart;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One antenna in one mounting, compared with the control.
 *
 * @param level its readings taken together
 * @param delta how much stronger than the control, with doubt
 * @param method how the two were compared
 * @param parts where the doubt comes from
 * @param verdict whether the two can be told apart; none without a known scatter
 * @param detection what the session could have shown; none without a known scatter
 */
public record AntennaResult(
        LevelSummary level,
        DeltaOverControl delta,
        ComparisonMethod method,
        List<UncertaintyPart> parts,
        Optional<Verdict> verdict,
        Optional<DetectionLimit> detection) {
    /** What a comparison comes to. */
    public enum Finding {
        TOLD_APART("told apart"),
        NOT_TOLD_APART("not told apart"),
        /** Two or three trials are too few for a verdict, unless declared doubts carry it. */
        TOO_FEW_TRIALS("no verdict from fewer than four trials"),
        /** One trial, and nothing declared about its scatter. */
        NO_SCATTER("no verdict from one trial");

        private final String words;

        Finding(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * Told apart, or not.
     *
     * @param p odds of such a difference by chance alone, this comparison on its own
     * @param adjustedP the same made stricter for all antennas of the mounting together (Holm)
     * @param finding told apart when the adjusted odds are below 5 % and the trials are enough for a verdict
     * @param together how many antennas of the mounting are looked at together
     */
    public record Verdict(double p, double adjustedP, Finding finding, int together) {
        public Verdict {
            Objects.requireNonNull(finding);
            if (together < 1) throw new IllegalArgumentException(together + " antennas together");
        }

        public boolean toldApart() {
            return finding == Finding.TOLD_APART;
        }
    }

    public AntennaResult {
        Objects.requireNonNull(level);
        Objects.requireNonNull(delta);
        Objects.requireNonNull(method);
        Objects.requireNonNull(verdict);
        Objects.requireNonNull(detection);
        parts = List.copyOf(parts);
    }

    public String antenna() {
        return delta.antenna();
    }

    public int n() {
        return level.n();
    }

    public Finding finding() {
        return verdict.map(Verdict::finding).orElse(Finding.NO_SCATTER);
    }

    /**
     * An interval that holds the truth 19 times out of 20 for all antennas of the mounting at once, and so for the one that is
     * picked as the best of them too; its own 95 % interval does not, once it was picked.
     *
     * @shape  at most one interval out; pure
     * @unit   dB over the control
     * @valid  nothing without a known scatter
     * @error  wider than need be where antennas share the control's readings: with twenty antennas by some tenth
     * @source Bonferroni's inequality, Dunn, J. American Statistical Association 56 (1961) 52
     */
    public Optional<Interval> intervalTogether() {
        if (verdict.isEmpty()) return Optional.empty();
        return delta.estimate()
                .map(estimate -> estimate.interval95Among(verdict.get().together()));
    }

    /**
     * Trials in all that would tell a true difference of this size from zero, and bring a verdict.
     *
     * @shape  scalar in, scalar or nothing out; pure
     * @unit   difference dB, result trials
     * @valid  as {@link DetectionLimit#trialsFor}; nothing without a known scatter; never fewer than a verdict needs, but where declared
     *     doubts opened one from fewer
     * @error  as {@link DetectionLimit#trialsFor}
     * @source {@link DetectionLimit#trialsFor}
     */
    public OptionalInt trialsToSettle(double differenceDb) {
        if (detection.isEmpty()) return OptionalInt.empty();
        OptionalInt trials = detection.get().trialsFor(differenceDb);
        boolean isJudgedEarly = n() < LevelSession.LEAST_TRIALS && finding() != Finding.TOO_FEW_TRIALS;
        return trials.isEmpty() || isJudgedEarly
                ? trials
                : OptionalInt.of(Math.max(LevelSession.LEAST_TRIALS, trials.getAsInt()));
    }

    /** Why the finding is what it is, in a sentence for all faces. */
    public String reason() {
        return switch (finding()) {
            case TOLD_APART ->
                "The odds of such a difference by chance, all antennas of the mounting judged together, are below 5 %.";
            case NOT_TOLD_APART ->
                "The odds of such a difference by chance, all antennas of the mounting judged together, are 5 % or more.";
            case TOO_FEW_TRIALS ->
                "No verdict is given from fewer than four trials unless declared doubts carry it: two or three that agree may do so"
                        + " by luck.";
            case NO_SCATTER -> "One trial says nothing about its scatter.";
        };
    }

    /** Whether antenna and control are surely different; false as long as nothing is known about scatter. */
    public boolean toldApart() {
        return verdict.map(Verdict::toldApart).orElse(false);
    }
}
