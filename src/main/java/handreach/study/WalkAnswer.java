package handreach.study;

import handreach.plan.CalibrationFile;
import handreach.walk.BlockedCheck;
import handreach.walk.Calibration;
import handreach.walk.Comparison;
import handreach.walk.MarginTrend;
import handreach.walk.WalkPair;
import java.util.List;
import java.util.Optional;

/**
 * The walks of a plan beside its predictions.
 *
 * @param scene the plan
 * @param pairs reports with their predictions, as predicted before any walk
 * @param comparison how good the prediction was
 * @param worst the reports farthest from their prediction, with the ground that was predicted over, worst first
 * @param learned what the walks teach
 * @param warnings everything that was doubtful
 */
public record WalkAnswer(
        Scene scene,
        List<WalkPair> pairs,
        Comparison comparison,
        List<Seen> worst,
        Learned learned,
        List<String> warnings) {
    /**
     * What the walks teach.
     *
     * @param calibration the update itself
     * @param file the value for the plan
     * @param decorrelationM decorrelation distance used, m
     * @param estimated whether it was estimated from the walk
     * @param check whether it helps on stretches it was not learned from, where the walk is long enough
     * @param logging whether the log may be trusted to hold the calls without an answer
     * @param trend how the errors go with the predicted margin
     */
    public record Learned(
            Calibration calibration,
            CalibrationFile file,
            double decorrelationM,
            boolean estimated,
            Optional<BlockedCheck> check,
            SilentLogging logging,
            MarginTrend trend) {
        /** Why nothing may be taken over from this walk; empty where it may. */
        public Optional<String> refusal() {
            return logging.refusal();
        }
    }

    /**
     * A report with the ground that its prediction rests on.
     *
     * @param pair the report beside its prediction
     * @param base who was called
     * @param path from there to the walker, with both ledgers
     */
    public record Seen(WalkPair pair, WalkBase base, PathAnswer path) {}

    public WalkAnswer {
        pairs = List.copyOf(pairs);
        worst = List.copyOf(worst);
        warnings = List.copyOf(warnings);
    }

    /** Whether what was learned helps on stretches it was not learned from. */
    public Optional<BlockedCheck> check() {
        return learned.check();
    }
}
