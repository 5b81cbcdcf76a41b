package handreach.report;

import handreach.cartography.LoadoutMark;
import handreach.reach.LoadoutReach;
import handreach.reach.RadialReach;
import handreach.reach.ReachEstimate;
import handreach.report.figure.RoseFigure;
import handreach.report.figure.RosePoint;
import handreach.report.figure.RoseTrace;
import handreach.study.ReachAnswer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Reach by bearing as lines, and which loadouts are worth a line or a map. */
final class ReachRose {
    /** Loadouts whose outline or line is drawn; more would be a tangle. */
    private static final int MOST_DRAWN = 4;

    private final ReachAnswer answer;

    ReachRose(ReachAnswer answer) {
        this.answer = answer;
    }

    /** Number of the loadout with the longest median reach among those that people carry. */
    int farthest() {
        return best(this::medianM);
    }

    /** Number of the loadout that reaches most of the ground among those that people carry. */
    int mostGround() {
        return best(number -> answer.share(number).value());
    }

    /** Numbers of the loadouts that people carry; where nobody is at any antenna, all. */
    List<Integer> choices() {
        List<Integer> carried = numbers().filter(this::isCarried).toList();
        return carried.isEmpty() ? numbers().toList() : carried;
    }

    /** The first of equals. */
    private int best(ToDoubleFunction<Integer> figure) {
        return choices().stream()
                .max(Comparator.comparingDouble(figure).thenComparing(Comparator.reverseOrder()))
                .orElseThrow();
    }

    private Stream<Integer> numbers() {
        return IntStream.range(0, answer.loadouts().size()).boxed();
    }

    private boolean isCarried(int number) {
        String name = answer.loadouts().get(number).link().name();
        return answer.scene().loadout(name).carry().carry().isAtBody();
    }

    private double medianM(int number) {
        return answer.loadouts().get(number).medianM().value();
    }

    /** Numbers of the loadouts that are drawn: the control, what reaches farthest, in the plan's order. */
    List<Integer> drawn() {
        int control = answer.control();
        Stream<Integer> others = numbers()
                .filter(number -> number != control)
                .sorted(Comparator.comparing((Integer number) -> !isCarried(number))
                        .thenComparing(Comparator.comparingDouble(this::medianM).reversed()));
        return Stream.concat(Stream.of(control), others)
                .limit(MOST_DRAWN)
                .sorted()
                .toList();
    }

    RoseFigure figure(List<Integer> which) {
        int control = answer.control();
        List<RoseTrace> traces =
                which.stream().map(number -> trace(number, number == control)).toList();
        return RoseFigure.of(
                "Continuous reach by bearing",
                traces,
                answer.scene().plan().header().lengths());
    }

    RoseTrace trace(int number, boolean showsInterval) {
        LoadoutReach reach = answer.loadouts().get(number);
        List<RosePoint> points = new ArrayList<>();
        for (int i = 0; i < reach.bearings(); i++) {
            ReachEstimate metres = reach.continuousM(i);
            double value = metres.value() / 1000;
            RadialReach radial = reach.radial(i);
            boolean isKnown = radial.unknownBeyondM().isEmpty() || !radial.openEnded();
            points.add(new RosePoint(
                    reach.bearingDeg(i),
                    value,
                    Math.min(value, metres.interval95().low() / 1000),
                    Math.max(value, metres.interval95().high() / 1000),
                    isKnown,
                    kilometres(radial.unknownBeyondM()),
                    radial.farthestM() > metres.value() + RadialReach.LONGEST_GAP_M
                            ? Optional.of(new RosePoint.Again(radial.farthestM() / 1000, radial.shareBeyond()))
                            : Optional.empty()));
        }
        return new RoseTrace(LoadoutMark.of(number), reach.link().name(), points, showsInterval);
    }

    private static OptionalDouble kilometres(OptionalDouble metres) {
        return metres.isPresent() ? OptionalDouble.of(metres.getAsDouble() / 1000) : metres;
    }
}
