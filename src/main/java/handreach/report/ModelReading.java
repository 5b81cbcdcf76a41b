package handreach.report;

import handreach.propagation.LossModels;
import handreach.propagation.PathLoss;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One line on why models differ over a path. */
public final class ModelReading {
    private ModelReading() {}

    /** How far the models are apart, which is least and most hopeful, and why. */
    public static String of(List<PathLoss> losses) {
        List<PathLoss> grounded = losses.stream()
                .filter(loss -> !loss.model().equals(LossModels.FREE_SPACE.name()))
                .toList();
        if (grounded.size() < 2) return "Only one model applies here.";
        PathLoss least = grounded.stream()
                .min(Comparator.comparingDouble(PathLoss::lossDb))
                .orElseThrow();
        PathLoss most = grounded.stream()
                .max(Comparator.comparingDouble(PathLoss::lossDb))
                .orElseThrow();
        String spread = String.format(
                Locale.ROOT,
                "They spread over %.0f dB, from %s (%.1f) to %s (%.1f)",
                most.lossDb() - least.lossDb(),
                least.model(),
                least.lossDb(),
                most.model(),
                most.lossDb());
        return spread + why(grounded);
    }

    private static String why(List<PathLoss> losses) {
        Optional<Double> edges = loss(losses, "bullington");
        Optional<Double> mirror = loss(losses, "two-ray");
        if (edges.isPresent() && mirror.isPresent() && edges.get() > mirror.get() + 6)
            return ": ridges rule this path, and models differ in how they add up edges; those that see only the flat ground"
                    + " between the antennas miss them.";
        if (edges.isPresent() && mirror.isPresent() && mirror.get() > edges.get() + 6)
            return ": the ground under the low antennas rules this path; models of edges alone leave its reflection out.";
        return ": ridges and low antennas both count here; a model that knows only one of them comes out too hopeful.";
    }

    private static Optional<Double> loss(List<PathLoss> losses, String model) {
        return losses.stream()
                .filter(loss -> loss.model().equals(model))
                .map(PathLoss::excessDb)
                .findFirst();
    }
}
