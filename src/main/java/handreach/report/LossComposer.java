package handreach.report;

import handreach.propagation.LossModels;
import handreach.propagation.LossPart;
import handreach.propagation.PathLoss;
import handreach.propagation.Step;
import handreach.report.page.Column;
import handreach.report.page.Table;
import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The loss of a path for every face: by parts, model by model, step by step. */
public final class LossComposer {
    private LossComposer() {}

    /**
     * What one model says of a path.
     *
     * @param model its name
     * @param loss what it says, where it applies
     * @param refusal why it does not apply; else empty
     */
    public record Said(String model, Optional<PathLoss> loss, String refusal) {
        static Said of(PathLoss loss) {
            return new Said(loss.model(), Optional.of(loss), "");
        }
    }

    /** The parts of a loss and their sum. */
    public static Table<LossPart> parts(PathLoss loss) {
        LossPart sum = new LossPart("basic transmission loss", loss.lossDb(), "sum before rounding");
        List<LossPart> rows = new ArrayList<>(loss.parts());
        rows.add(sum);
        return Table.of(
                        "By " + loss.model() + "; the same both ways.",
                        rows,
                        List.of(
                                Column.words("part", LossPart::name),
                                Column.number("dB", part -> Decibels.number(part.db(), 1)),
                                Column.words("source", LossPart::source)))
                .summing(sum::equals);
    }

    /** Models beside each other, in the order given. */
    public static Table<Said> models(List<Said> said) {
        List<PathLoss> losses =
                said.stream().flatMap(each -> each.loss().stream()).toList();
        double least = losses.stream().mapToDouble(PathLoss::lossDb).min().orElse(0);
        double most = losses.stream().mapToDouble(PathLoss::lossDb).max().orElse(0);
        return Table.of(
                "",
                said,
                List.of(
                        Column.words("model", Said::model),
                        Column.number("loss, dB", each -> db(each, PathLoss::lossDb, false)),
                        Column.number("over free space, dB", each -> db(each, PathLoss::excessDb, true)),
                        Column.words(
                                "",
                                each -> each.loss()
                                        .map(loss -> mark(loss.lossDb(), least, most))
                                        .orElse(each.refusal()))));
    }

    private static String db(Said said, java.util.function.ToDoubleFunction<PathLoss> figure, boolean isSigned) {
        if (said.loss().isEmpty()) return "\u2013";
        double db = figure.applyAsDouble(said.loss().get());
        return isSigned ? Decibels.signed(db, 1) : Decibels.number(db, 1);
    }

    private static String mark(double lossDb, double leastDb, double mostDb) {
        if (lossDb == leastDb) return "least";
        return lossDb == mostDb ? "most" : "";
    }

    /** Intermediate values of a model, in the order of its document. */
    static Table<Step> steps(PathLoss loss) {
        return Table.of(
                "",
                loss.steps(),
                List.of(
                        Column.words("step", Step::symbol),
                        Column.number(
                                "value",
                                step -> String.format(Locale.ROOT, "%.8g", step.value())
                                        .replace('-', '\u2212')),
                        Column.words("unit", Step::unit)));
    }

    /** What is lost beyond free space, and most of it to what. */
    static String beyondFreeSpace(PathLoss loss) {
        double excessDb = loss.excessDb();
        if (excessDb < 0.05) return "The path loses no more than free space does.";
        String words = "Beyond free space the path loses " + Decibels.number(excessDb, 1) + " dB";
        Optional<LossPart> most = loss.parts().stream().skip(1).max(Comparator.comparingDouble(LossPart::db));
        if (loss.parts().size() < 3 || most.isEmpty()) return words + ".";
        String name = most.get().name();
        double partDb = most.get().db();
        if (partDb > excessDb + 0.05)
            return words + ": " + name + " takes " + Decibels.number(partDb, 1) + " dB, and "
                    + Decibels.number(partDb - excessDb, 1) + " dB of it come back.";
        return words + ", most of it to " + name + " (" + Decibels.number(partDb, 1) + " dB).";
    }

    /** How far the models are apart, which is least and most hopeful, and why. */
    public static String reading(List<PathLoss> losses) {
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
        Optional<Double> edges = excessDb(losses, "bullington");
        Optional<Double> mirror = excessDb(losses, "two-ray");
        if (edges.isPresent() && mirror.isPresent() && edges.get() > mirror.get() + 6)
            return ": ridges rule this path, and models differ in how they add up edges; those that see only the flat ground"
                    + " between the antennas miss them.";
        if (edges.isPresent() && mirror.isPresent() && mirror.get() > edges.get() + 6)
            return ": the ground under the low antennas rules this path; models of edges alone leave its reflection out.";
        return ": ridges and low antennas both count here; a model that knows only one of them comes out too hopeful.";
    }

    private static Optional<Double> excessDb(List<PathLoss> losses, String model) {
        return losses.stream()
                .filter(loss -> loss.model().equals(model))
                .map(PathLoss::excessDb)
                .findFirst();
    }
}
