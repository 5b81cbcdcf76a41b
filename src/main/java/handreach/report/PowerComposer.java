package handreach.report;

import handreach.reach.LoadoutReach;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.PowerStep;
import handreach.study.ReachAnswer;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** What full power buys over a lower one, and what it costs the battery. */
record PowerComposer(ReachAnswer answer) {
    /** The section; none where no radio of the plan can be turned down. */
    Optional<Section> section() {
        List<PowerStep> steps = answer.powerSteps();
        if (steps.isEmpty()) return Optional.empty();
        boolean hasHours = steps.stream().anyMatch(step -> step.hours().isPresent());
        return Optional.of(new Section(
                "Lower power",
                List.of(
                        Paragraph.of(words(farthest(steps))),
                        Table.of(
                                ReachComposer.BEARINGS_COUNTED,
                                steps,
                                List.of(
                                        Column.words("loadout", this::name),
                                        Column.number("power, W", step -> watts(step.powerW())),
                                        Column.number(
                                                "reach",
                                                step -> text(
                                                        step.reach().medianM().value())),
                                        Column.number(
                                                "of the ground",
                                                step -> Shares.share(
                                                        step.reach().share().value())),
                                        Column.number("full power buys", step -> text(boughtM(step))),
                                        Column.number("battery, h", step -> hours(step.hours())),
                                        Column.number("at full power, h", step -> hours(step.fullHours())))),
                        Paragraph.quiet(
                                hasHours
                                        ? "Hours by the shares of time that the plan gives, 5 % sending and 5 % receiving where it gives none"
                                                + " (common practice, no source); a new battery near 20 \u00b0C. Cold and age take a third"
                                                + " and more."
                                        : "For hours of battery give [[radio]] battery_mah, send_ma, receive_ma and wait_ma, and the"
                                                + " steps their send_ma."))));
    }

    private PowerStep farthest(List<PowerStep> steps) {
        return steps.stream()
                .max(Comparator.comparingDouble(step -> step.reach().medianM().value()))
                .orElseThrow();
    }

    private double boughtM(PowerStep step) {
        LoadoutReach full = answer.loadouts().get(step.loadout());
        return full.medianM().value() - step.reach().medianM().value();
    }

    /** {@code quarter-wave at chest: 5 W over 1 W buys 340 m on the median bearing and costs 4.9 h of battery (15.5 h to 10.6 h).} */
    String words(PowerStep step) {
        double boughtM = boughtM(step);
        String start = name(step) + ": " + watts(step.fullW()) + " W over " + watts(step.powerW()) + " W buys "
                + (boughtM > 0 ? text(boughtM) : "nothing") + " on the median bearing";
        if (step.hours().isEmpty() || step.fullHours().isEmpty()) return start + ".";
        return start
                + String.format(
                        Locale.ROOT,
                        " and costs %s h of battery (%s h in place of %s h).",
                        Decibels.number(
                                step.hours().getAsDouble() - step.fullHours().getAsDouble(), 1),
                        hours(step.fullHours()),
                        hours(step.hours()));
    }

    private String name(PowerStep step) {
        return answer.loadouts().get(step.loadout()).link().name();
    }

    private static String watts(double watts) {
        return Decibels.number(watts, watts < 1 ? 2 : Math.abs(watts - Math.rint(watts)) < 0.05 ? 0 : 1);
    }

    private static String hours(OptionalDouble hours) {
        return hours.isPresent() ? Decibels.number(hours.getAsDouble(), 1) : "unknown";
    }

    private String text(double metres) {
        Lengths lengths = answer.scene().plan().header().lengths();
        return lengths.text(metres);
    }
}
