package handreach.study;

import handreach.profile.Profile;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.NoAnswer;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.propagation.march.FieldMarch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How far the models that apply to one path are apart. It stands beside the ledger's doubt and is not added to it: models share what
 * they leave out, so that their spread may be narrower than their error, and those made for high antennas widen it.
 *
 * @param applicable losses by the models that apply, at least one
 * @param leftOut the other models, and why
 */
public record ModelSpread(List<PathLoss> applicable, List<LeftOut> leftOut) {
    /** Models that see the ground between the ends as smooth, whatever it is. */
    private static final Set<String> SMOOTH = Set.of("two-ray", "smooth-earth");
    /** Models that know edges and nothing of the ground under the antennas. */
    private static final Set<String> EDGES =
            Set.of("single-edge", "epstein-peterson", "deygout", "deygout-corrected", "giovaneli", "bullington");
    /** Models that were made for this job, and tell of a path whatever it is: their notes are not refusals. */
    private static final List<LossModel> OWN = List.of(LossModels.HANDHELD, LossModels.FULL_WAVE);
    /** A march foretold to take longer is left to {@code --model all}, s. */
    private static final double LONGEST_MARCH_S = 2;

    /** Losses that agree to one part in so many of a decibel are of one method. */
    private static final double SAME = 1e6;

    /** A model that does not apply here. */
    public record LeftOut(String model, String why) {}

    public ModelSpread {
        if (applicable.isEmpty()) throw new IllegalArgumentException("no model applies");
        applicable = List.copyOf(applicable);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Runs every model over the path of an answer.
     *
     * @return empty where none applies
     */
    static Optional<ModelSpread> of(PathAnswer path) {
        List<PathLoss> applicable = new ArrayList<>();
        List<LeftOut> leftOut = new ArrayList<>();
        for (LossModel model : LossModels.all()) {
            Optional<String> why = unfit(model, path);
            try {
                PathLoss loss = why.isEmpty() ? loss(model, path) : null;
                if (loss != null && !OWN.contains(model) && !loss.warnings().isEmpty())
                    why = Optional.of(loss.warnings().get(0));
                if (why.isEmpty()) applicable.add(loss);
            } catch (NoAnswer refused) {
                why = Optional.of(refused.getMessage());
            }
            why.ifPresent(reason -> leftOut.add(new LeftOut(model.name(), reason)));
        }
        return applicable.isEmpty() ? Optional.empty() : Optional.of(new ModelSpread(applicable, leftOut));
    }

    /** The loss that is there already, else the model's. */
    private static PathLoss loss(LossModel model, PathAnswer path) {
        return path.losses().stream()
                .filter(loss -> loss.model().equals(model.name()))
                .findFirst()
                .orElseGet(() -> model.loss(
                        path.profile(), path.link().terminals(), path.link().conditions()));
    }

    private static Optional<String> unfit(LossModel model, PathAnswer path) {
        PathGeometry geometry = path.geometry();
        if (model == LossModels.FREE_SPACE) return Optional.of("It is a bound: no ground at all.");
        if (SMOOTH.contains(model.name()) && !geometry.lineOfSight())
            return Optional.of("It takes the ground as smooth, and the ground blocks the line of sight.");
        if (EDGES.contains(model.name()) && geometry.lineOfSight())
            return Optional.of("It knows edges alone, and none blocks the line of sight.");
        boolean isThere = path.losses().stream().anyMatch(loss -> loss.model().equals(model.name()));
        if (model == LossModels.FULL_WAVE && !isThere && marchS(path) > LONGEST_MARCH_S)
            return Optional.of("It takes long on this path; ask for it with --model all.");
        return Optional.empty();
    }

    private static double marchS(PathAnswer path) {
        Profile profile = path.profile();
        return FieldMarch.cost(
                        profile,
                        path.link().terminals().txHeightM(),
                        path.link().terminals().rxHeightM(),
                        path.link().conditions())
                .seconds();
    }

    public double leastDb() {
        return applicable.stream().mapToDouble(PathLoss::lossDb).min().orElseThrow();
    }

    public double mostDb() {
        return applicable.stream().mapToDouble(PathLoss::lossDb).max().orElseThrow();
    }

    /**
     * Standard deviation of the losses, with n − 1. Models that come to one figure, being the same method on this path, count once.
     *
     * @shape  n losses in, scalar out; pure
     * @unit   dB
     * @valid  0 for one figure alone
     * @error  rounding only
     * @source the definition
     */
    public double standardDeviationDb() {
        double[] db = applicable.stream()
                .mapToDouble(loss -> Math.rint(loss.lossDb() * SAME) / SAME)
                .distinct()
                .toArray();
        if (db.length == 1) return 0;
        double mean = Arrays.stream(db).average().orElseThrow();
        double squares =
                Arrays.stream(db).map(one -> (one - mean) * (one - mean)).sum();
        return Math.sqrt(squares / (db.length - 1));
    }
}
