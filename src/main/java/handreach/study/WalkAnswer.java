package handreach.study;

import handreach.plan.CalibrationFile;
import handreach.walk.BlockedCheck;
import handreach.walk.Calibration;
import handreach.walk.Comparison;
import handreach.walk.WalkPair;
import java.util.List;
import java.util.Optional;

/**
 * The walks of a plan beside its predictions.
 *
 * @param scene the plan
 * @param pairs reports with their predictions, as predicted before any walk
 * @param comparison how good the prediction was
 * @param learned what the walks teach
 * @param check whether that helps on stretches it was not learned from, where the walk is long enough
 * @param warnings everything that was doubtful
 */
public record WalkAnswer(
        Scene scene,
        List<WalkPair> pairs,
        Comparison comparison,
        Learned learned,
        Optional<BlockedCheck> check,
        List<String> warnings) {
    /**
     * What the walks teach.
     *
     * @param calibration the update itself
     * @param file the value for the plan
     * @param decorrelationM decorrelation distance used, m
     * @param estimated whether it was estimated from the walk
     */
    public record Learned(Calibration calibration, CalibrationFile file, double decorrelationM, boolean estimated) {}

    public WalkAnswer {
        pairs = List.copyOf(pairs);
        warnings = List.copyOf(warnings);
    }
}
