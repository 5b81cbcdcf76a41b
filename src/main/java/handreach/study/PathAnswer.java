package handreach.study;

import handreach.budget.TwoWayLedger;
import handreach.plan.CalibrationFile;
import handreach.profile.Profile;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import java.util.List;
import java.util.Optional;

/**
 * One path, answered.
 *
 * @param link what was asked: terminals, conditions, places if known
 * @param profile the ground
 * @param losses loss by each model asked for, the chosen one first
 * @param geometry clearance, obstacles, angles
 * @param ledger both directions line by line by the chosen model, where loadouts are known and that model applies
 * @param calibration what walks have taught and the ledger holds
 * @param turnings what it would buy to turn round, for ends of which the plan says which way they face
 * @param spread how far the models that apply are apart, where that was asked
 * @param warnings everything that was doubtful, ground first
 */
public record PathAnswer(
        PathLink link,
        Profile profile,
        List<PathLoss> losses,
        PathGeometry geometry,
        Optional<TwoWayLedger> ledger,
        Optional<CalibrationFile> calibration,
        List<Turning> turnings,
        Optional<ModelSpread> spread,
        List<String> warnings) {
    public PathAnswer {
        losses = List.copyOf(losses);
        turnings = List.copyOf(turnings);
        warnings = List.copyOf(warnings);
    }

    /** A path whose ledger holds no calibration, or that has no ledger. */
    public PathAnswer(
            PathLink link,
            Profile profile,
            List<PathLoss> losses,
            PathGeometry geometry,
            Optional<TwoWayLedger> ledger,
            List<String> warnings) {
        this(link, profile, losses, geometry, ledger, Optional.empty(), List.of(), Optional.empty(), warnings);
    }

    /** The same with other warnings. */
    PathAnswer withWarnings(List<String> others) {
        return new PathAnswer(link, profile, losses, geometry, ledger, calibration, turnings, spread, others);
    }

    /** The same with how far the models are apart. */
    PathAnswer withSpread(Optional<ModelSpread> apart) {
        return new PathAnswer(link, profile, losses, geometry, ledger, calibration, turnings, apart, warnings);
    }

    /** Loss by the chosen model. */
    public PathLoss loss() {
        return losses.get(0);
    }
}
