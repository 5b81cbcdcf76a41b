package handreach.report;

import handreach.plan.Plan;
import handreach.propagation.Foliage;
import handreach.propagation.LossModels;
import handreach.propagation.LossPart;
import handreach.propagation.PathConditions;
import handreach.propagation.PathLoss;
import handreach.propagation.Standing;
import handreach.reach.LoadoutReach;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.PathAnswer;
import handreach.study.ReachAnswer;
import handreach.study.Scene;
import handreach.units.Decibels;
import handreach.units.Frequency;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/** What the state of the trees moves, in decibels and in ground; nothing where they are in leaf. */
final class FoliageComposer {
    private FoliageComposer() {}

    /** The section of a reach answer. */
    static Optional<Section> section(ReachAnswer answer) {
        Scene scene = answer.scene();
        if (scene.foliage() == Foliage.IN_LEAF) return Optional.empty();
        String name = "Leaves and weather";
        if (answer.inLeaf().isEmpty())
            return Optional.of(Section.of(name, Paragraph.of(start(scene.foliage()) + why(scene))));
        Lengths lengths = scene.plan().header().lengths();
        List<Integer> numbers =
                IntStream.range(0, answer.loadouts().size()).boxed().toList();
        return Optional.of(Section.of(
                name,
                Paragraph.of(start(scene.foliage()) + perEnd(scene)),
                Table.of(
                        "On the median bearing, and of the ground along the bearings.",
                        numbers,
                        List.of(
                                Column.words(
                                        "loadout", i -> now(answer, i).link().name()),
                                Column.number(
                                        "reach",
                                        i -> lengths.text(
                                                now(answer, i).medianM().value())),
                                Column.number(
                                        "in leaf",
                                        i -> lengths.text(
                                                answer.inLeaf().get(i).medianM().value())),
                                Column.number(
                                        "of the ground",
                                        i -> Shares.share(now(answer, i).share().value())),
                                Column.number(
                                        "in leaf",
                                        i -> Shares.share(
                                                answer.inLeaf().get(i).share().value()))))));
    }

    private static LoadoutReach now(ReachAnswer answer, int number) {
        return answer.loadouts().get(number);
    }

    private static String start(Foliage foliage) {
        return "Trees: " + foliage.word() + ", as the plan says. ";
    }

    private static String why(Scene scene) {
        return scene.heedsFoliage()
                ? "No wood is known in this plan, so nothing is moved."
                : "The model " + scene.model().name()
                        + " takes trees as a height and knows no leaves, so nothing is moved; handheld and full-wave do.";
    }

    /** What an end deep in a wood loses more or less, and how much doubt that brings. */
    private static String perEnd(Scene scene) {
        Plan plan = scene.plan();
        Frequency frequency = plan.channel().frequency();
        double[] deep = scene.foliage().deepEndDb(frequency, plan.channel().polarization());
        double middle = (deep[0] + deep[1]) / 2;
        if (deep[0] == 0 && deep[1] == 0)
            return String.format(
                    Locale.ROOT,
                    "At %.4g MHz that moves nothing: %s.",
                    frequency.mhz(),
                    scene.foliage().source());
        return String.format(
                Locale.ROOT,
                "At %.4g MHz an end deep in a wood loses %s %s than in leaf, from %s to %s dB (%s). It adds %.1f dB to the common doubt"
                        + " where the plan states none, as for two ends deep in woods.",
                frequency.mhz(),
                Decibels.text(Math.abs(middle)),
                middle < 0 ? "less" : "more",
                Decibels.signed(deep[0], 1),
                Decibels.signed(deep[1], 1),
                scene.foliage().source(),
                scene.foliage().doubtDb(frequency, plan.channel().polarization()));
    }

    /** One line for the assumptions: the state and where its figures come from. */
    static String assumption(Scene scene) {
        return scene.foliage().word()
                + (scene.heedsFoliage()
                        ? ""
                        : ", not heeded by " + scene.model().name());
    }

    /** What it moves on one path; nothing in leaf. */
    static Optional<String> words(PathAnswer answer) {
        PathConditions conditions = answer.link().conditions();
        Foliage foliage = conditions.foliage();
        if (foliage == Foliage.IN_LEAF) return Optional.empty();
        Optional<Double> woods = woodlandDb(answer.loss());
        if (woods.isEmpty() && heedsOnTheWay(answer))
            return Optional.of(start(foliage) + "What a metre of wood takes of the march is "
                    + Shares.share(foliage.factor(conditions.frequency())) + " of that in leaf (" + foliage.source()
                    + ").");
        if (woods.isEmpty())
            return Optional.of(start(foliage) + "The model " + answer.loss().model()
                    + " takes trees as a height and knows no leaves, so nothing is moved.");
        return Optional.of(String.format(
                Locale.ROOT,
                "%sThe woods at the ends take %s, in leaf they would take %s (%s).",
                start(foliage),
                Decibels.text(woods.get()),
                Decibels.text(inLeafDb(answer).orElseThrow()),
                foliage.source()));
    }

    private static boolean heedsOnTheWay(PathAnswer answer) {
        return answer.loss().model().equals(LossModels.FULL_WAVE.name())
                && answer.link().conditions().standing() == Standing.ON_THE_WAY;
    }

    /** What the woods at the ends take by a model that computes the way out of them. */
    static Optional<Double> woodlandDb(PathLoss loss) {
        return loss.parts().stream()
                .filter(part -> part.name().equals("woodland"))
                .map(LossPart::db)
                .findFirst();
    }

    /** The same with the trees in leaf: the state is a factor on it. */
    static Optional<Double> inLeafDb(PathAnswer answer) {
        PathConditions conditions = answer.link().conditions();
        return woodlandDb(answer.loss()).map(db -> db / conditions.foliage().factor(conditions.frequency()));
    }
}
