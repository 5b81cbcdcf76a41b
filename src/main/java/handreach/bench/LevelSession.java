package handreach.bench;

import handreach.bench.Declarations.EarlierScatter;
import handreach.uncertainty.CombinedUncertainty;
import handreach.uncertainty.Estimate;
import handreach.uncertainty.LinearTrend;
import handreach.uncertainty.MeanDifference;
import handreach.uncertainty.UncertaintyPart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** All levels read in one mounting at one frequency, in the order they were read. */
final class LevelSession {
    /** A slope this unlikely by chance is drift; scatter alone passes it once in a thousand sessions. */
    private static final double DRIFT_P = 0.001;

    /** Taking out a drift that is none costs little, as its doubt goes with it; leaving one in costs the interval its name. */
    private static final double DRIFT_P_IN_TURNS = 0.05;

    private static final int DRIFT_TRIALS = 5;
    private static final int DRIFT_TURNS = 4;
    /** No verdict from fewer: t of two trials is 12.7, and whether they agree is luck. */
    static final int LEAST_TRIALS = 4;

    private static final int MOST_TRIALS_NAMED = 8;
    private static final double LEAST_DEGREES = LEAST_TRIALS - 1;
    private static final double NO_SCATTER_DB = 1e-9;

    private final Declarations declarations;
    private final Map<String, AntennaReadings> byAntenna = new LinkedHashMap<>();
    private int count = 0;
    private Optional<ControlDrift> controlDrift = Optional.empty();
    private Optional<ControlDrift> turnsDrift = Optional.empty();
    private AntennaReadings control;

    LevelSession(Declarations declarations) {
        this.declarations = declarations;
    }

    void add(Reading reading, double levelDb, double step) {
        byAntenna
                .computeIfAbsent(identity(reading.antenna()), key -> new AntennaReadings(reading.antenna()))
                .add(levelDb, count++, reading.trial(), step);
    }

    Declarations declarations() {
        return declarations;
    }

    static String identity(String antenna) {
        return antenna.toLowerCase(Locale.ROOT);
    }

    Optional<AntennaReadings> antenna(String name) {
        return Optional.ofNullable(byAntenna.get(identity(name)));
    }

    List<AntennaReadings> antennas() {
        return List.copyOf(byAntenna.values());
    }

    /** Names the control, and looks at how levels moved during the session. */
    void setControl(String name) {
        control = antenna(name).orElseThrow();
        if (byAntenna.size() <= AlikeGroups.MOST_ANTENNAS)
            turnsDrift = TrialLayout.of(antennas(), declarations.order())
                    .filter(layout -> layout.trials() >= DRIFT_TURNS)
                    .map(layout -> drift(ControlDrift.Basis.TURNS, layout.trend(), DRIFT_P_IN_TURNS));
        if (control.n() < 3) return;
        LinearTrend trend = LinearTrend.of(control.places(), control.levels());
        controlDrift = Optional.of(drift(ControlDrift.Basis.CONTROL, trend, control.n() < DRIFT_TRIALS ? 0 : DRIFT_P));
    }

    private static ControlDrift drift(ControlDrift.Basis basis, LinearTrend trend, double level) {
        double p = trend.slope().twoSidedP();
        return new ControlDrift(basis, trend, p, p < level);
    }

    Optional<AntennaReadings> control() {
        return Optional.ofNullable(control);
    }

    /** Seen from all antennas where they were read in turns, from the control alone otherwise. */
    Optional<ControlDrift> drift() {
        return turnsDrift.or(() -> controlDrift);
    }

    /** The first antenna less the second. */
    LevelDifference difference(AntennaReadings first, AntennaReadings second) {
        List<String> remarks = new ArrayList<>();
        Optional<TrialPairs> pairs = TrialPairs.of(first, second, declarations.order());
        if (pairs.isPresent()) return paired(pairs.get(), first, second, remarks);
        List<Integer> left = TrialPairs.unpaired(first, second);
        if (second == control && declarations.order().isEmpty() && !left.isEmpty())
            remarks.add(unpaired(left) + ", too many to compare within trials. " + again(left));
        if (first.n() < 2 || second.n() < 2) return ofSingleTrials(first, second, remarks);
        if (second == control && declarations.order().isEmpty() && TrialPairs.areNumberedAlikeInBlocks(first, second))
            remarks.add("its trial numbers match those of the control, but the rows do not stand in turns: compared as"
                    + " independent sets. If they were taken in turns, put the rows in that order or declare # order ="
                    + " interleaved.");
        boolean drifts = controlDrift.map(ControlDrift::significant).orElse(false);
        if (drifts && isBracketed(first) && isBracketed(second)) return driftCorrected(first, second, remarks);
        if (drifts && second == control)
            remarks.add("the control drifted and was not read both before and after this antenna: the drift cannot be"
                    + " taken out. Read the control first, last and between.");
        Estimate plain = MeanDifference.welch(first.levels(), second.levels());
        double squareA = square(first);
        double squareB = square(second);
        double total = squareA + squareB;
        double perTrial = total == 0 ? 2 : total * total / (squareA * squareA + squareB * squareB);
        if (Math.min(first.n(), second.n()) < LEAST_TRIALS
                && declarations.instrument().earlierScatter().isPresent()) {
            double own = first.n() + second.n() - 2;
            double both = 2 * ((first.n() - 1) * squareA + (second.n() - 1) * squareB) / own;
            double perTrials = (1.0 / first.n() + 1.0 / second.n()) / 2;
            return pooled(plain.value(), both, own, perTrials, first, second, remarks);
        }
        List<UncertaintyPart> seen = List.of(
                UncertaintyPart.seen("scatter of the trials", plain.standardUncertainty(), plain.degreesOfFreedom()));
        return compared(
                ComparisonMethod.WELCH,
                plain.value(),
                seen,
                new Spread(Math.sqrt(total), perTrial, Math.min(first.n(), second.n())),
                first,
                second,
                remarks);
    }

    /** Scatter of one difference, the degrees of freedom each further trial adds, and the trials made. */
    private record Spread(double db, double degreesPerTrial, int trials) {}

    private LevelDifference paired(
            TrialPairs pairs, AntennaReadings first, AntennaReadings second, List<String> remarks) {
        Optional<ControlDrift> drift = turnsDrift.filter(ControlDrift::significant);
        Estimate plain = MeanDifference.paired(straightened(pairs, drift), pairs.second());
        int n = pairs.first().size();
        if (!pairs.left().isEmpty())
            remarks.add(unpaired(pairs.left())
                    + (n < LEAST_TRIALS
                            ? ", and fewer than " + LEAST_TRIALS + " are left. " + again(pairs.left())
                            : "."));
        if (n < LEAST_TRIALS && declarations.instrument().earlierScatter().isPresent())
            return pooled(
                    plain.value(),
                    n * plain.standardUncertainty() * plain.standardUncertainty(),
                    plain.degreesOfFreedom(),
                    1.0 / n,
                    first,
                    second,
                    remarks);
        List<UncertaintyPart> seen = new ArrayList<>();
        seen.add(UncertaintyPart.seen(
                "scatter of the differences within trials", plain.standardUncertainty(), plain.degreesOfFreedom()));
        drift.ifPresent(known -> {
            Estimate slope = known.trend().slope();
            double u = Math.abs(MeanDifference.mean(pairs.apart())) * slope.standardUncertainty();
            seen.add(UncertaintyPart.seen("doubt of the drift taken out", u, slope.degreesOfFreedom()));
        });
        return compared(
                drift.isPresent() ? ComparisonMethod.PAIRED_DRIFT_CORRECTED : ComparisonMethod.PAIRED,
                plain.value(),
                seen,
                new Spread(plain.standardUncertainty() * Math.sqrt(n), 1, n),
                first,
                second,
                remarks);
    }

    private static String unpaired(List<Integer> left) {
        return Remarks.unpaired((left.size() == 1 ? "trial " : "trials ") + listed(left), left.size() == 1);
    }

    private static String again(List<Integer> left) {
        return "Repeat " + (left.size() == 1 ? "trial " : "trials ") + listed(left)
                + " with both antennas, and drop the old rows of "
                + (left.size() == 1 ? "it." : "them.");
    }

    private static String listed(List<Integer> trials) {
        int shown = Math.min(trials.size(), MOST_TRIALS_NAMED);
        String list = trials.subList(0, shown).stream().map(String::valueOf).collect(Collectors.joining(", "));
        return shown < trials.size() ? list + " and " + (trials.size() - shown) + " more" : list;
    }

    /** Levels of the first antenna as if each had been read at the place of its partner. */
    private static List<Double> straightened(TrialPairs pairs, Optional<ControlDrift> drift) {
        if (drift.isEmpty()) return pairs.first();
        List<Double> levels = new ArrayList<>();
        for (int i = 0; i < pairs.first().size(); i++)
            levels.add(pairs.first().get(i)
                    - drift.get().dbPerReading() * pairs.apart().get(i));
        return levels;
    }

    /** The control's straight line is taken out of all readings; the doubt of its slope weighs with the distance in order. */
    private LevelDifference driftCorrected(AntennaReadings first, AntennaReadings second, List<String> remarks) {
        LinearTrend trend = controlDrift.orElseThrow().trend();
        double slope = trend.slope().value();
        double apart = first.meanPlace() - second.meanPlace();
        double value = first.mean() - second.mean() - slope * apart;
        double slopeDoubt = Math.abs(apart) * trend.slope().standardUncertainty();
        List<UncertaintyPart> seen = new ArrayList<>();
        boolean slopeCounted = false;
        double squares = 0;
        double fourths = 0;
        for (AntennaReadings one : List.of(first, second)) {
            double scatter = one == control ? trend.residual() : MeanDifference.standardDeviation(one.levels(slope));
            squares += scatter * scatter;
            fourths += Math.pow(scatter, 4);
            double u = scatter / Math.sqrt(one.n());
            if (one == control) {
                // both come from one residual scatter, so they are one part
                seen.add(UncertaintyPart.seen(
                        "scatter of the control about its drift, and doubt of the drift taken out",
                        Math.hypot(u, slopeDoubt),
                        one.n() - 2));
                slopeCounted = true;
            } else {
                seen.add(UncertaintyPart.seen("scatter of " + one.antenna() + " about the drift", u, one.n() - 1));
            }
        }
        if (!slopeCounted) seen.add(UncertaintyPart.seen("doubt of the drift taken out", slopeDoubt, control.n() - 2));
        double perTrial = squares == 0 ? 2 : squares * squares / fourths;
        return compared(
                ComparisonMethod.WELCH_DRIFT_CORRECTED,
                value,
                seen,
                new Spread(Math.sqrt(squares), perTrial, Math.min(first.n(), second.n())),
                first,
                second,
                remarks);
    }

    private LevelDifference compared(
            ComparisonMethod method,
            double value,
            List<UncertaintyPart> seen,
            Spread spread,
            AntennaReadings first,
            AntennaReadings second,
            List<String> remarks) {
        List<UncertaintyPart> declared = declarations.doubtsOf(first.antenna(), second.antenna());
        List<UncertaintyPart> parts = new ArrayList<>(seen);
        boolean scatters = seen.stream().anyMatch(part -> part.standardUncertainty() >= NO_SCATTER_DB);
        OptionalDouble resolution = declarations.instrument().resolutionDb();
        if (resolution.isPresent()) {
            parts.set(0, withStep(seen.get(0), "the display step of the instrument", resolution.getAsDouble()));
        } else if (!scatters) {
            double step = Math.max(first.step(), second.step());
            parts.set(0, withStep(seen.get(0), "the step in which the readings are written", step));
            remarks.add(String.format(
                    Locale.ROOT,
                    "the readings do not scatter at all, so the step in which they are written (%s dB) is taken as their"
                            + " doubt, known as well as that many trials know a scatter. Read finer, or declare resolution_db.",
                    step));
        }
        double ownOdds = CombinedUncertainty.of(parts).estimate(value).twoSidedP();
        double lastingSquare = Math.pow(parts.get(0).standardUncertainty(), 2)
                - Math.pow(seen.get(0).standardUncertainty(), 2);
        List<UncertaintyPart> lasting = new ArrayList<>(declared);
        lasting.add(UncertaintyPart.declared(
                "step", Math.sqrt(Math.max(0, lastingSquare)), UncertaintyPart.Shape.STANDARD, 0));
        parts.addAll(declared);
        Estimate estimate = CombinedUncertainty.of(parts).estimate(value);
        DetectionLimit detection = new DetectionLimit(estimate, spread.db(), spread.degreesPerTrial(), lasting);
        // a declared doubt knows nothing of the scatter, and two or three trials little: either must leave out zero
        double odds = spread.trials() < LEAST_TRIALS ? Math.max(ownOdds, estimate.twoSidedP()) : estimate.twoSidedP();
        return new LevelDifference(
                method,
                value,
                Optional.of(estimate),
                parts,
                Optional.of(detection),
                OptionalDouble.of(odds),
                isEnough(spread.trials(), declared, estimate),
                remarks);
    }

    /**
     * Each of two levels is rounded by up to half a step. Readings that agree within it say no more about their scatter than any
     * others: so the step joins the scatter and is known as well as that, no better.
     */
    private static UncertaintyPart withStep(UncertaintyPart scatter, String name, double stepDb) {
        double step = stepDb / 2 / Math.sqrt(3) * Math.sqrt(2);
        return UncertaintyPart.seen(
                scatter.name() + ", and " + name,
                Math.hypot(scatter.standardUncertainty(), step),
                scatter.degreesOfFreedom());
    }

    /** Whether a verdict may be given: from four trials on, or where declared doubts make the whole doubt as well known as that. */
    boolean isEnough(int trials, List<UncertaintyPart> declared, Estimate estimate) {
        if (trials >= LEAST_TRIALS) return true;
        boolean isDeclared = declared.stream().anyMatch(part -> part.standardUncertainty() > 0)
                || declarations.instrument().earlierScatter().isPresent();
        return isDeclared && estimate.degreesOfFreedom() >= LEAST_DEGREES;
    }

    /** Fewer than two readings on one side: only what is known from elsewhere can say how sure the difference is. */
    private LevelDifference ofSingleTrials(AntennaReadings first, AntennaReadings second, List<String> remarks) {
        double value = first.mean() - second.mean();
        Optional<EarlierScatter> earlier = declarations.instrument().earlierScatter();
        if (earlier.isEmpty()) {
            remarks.add(loneRemark(first, second));
            return new LevelDifference(
                    ComparisonMethod.NO_SCATTER,
                    value,
                    Optional.empty(),
                    List.of(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    false,
                    remarks);
        }
        double single = earlier.get().db();
        double u = single * Math.sqrt(1.0 / first.n() + 1.0 / second.n());
        return withEarlierScatter(value, u, earlier.get().trials() - 1, single * Math.sqrt(2), first, second, remarks);
    }

    /** Few trials of their own: their scatter counts together with that of earlier sessions, each by its degrees of freedom. */
    private LevelDifference pooled(
            double value,
            double ownSquare,
            double ownDegrees,
            double perTrials,
            AntennaReadings first,
            AntennaReadings second,
            List<String> remarks) {
        EarlierScatter earlier = declarations.instrument().earlierScatter().orElseThrow();
        double earlierDegrees = earlier.trials() - 1;
        double degrees = ownDegrees + earlierDegrees;
        double square = (ownDegrees * ownSquare + earlierDegrees * 2 * earlier.db() * earlier.db()) / degrees;
        return withEarlierScatter(
                value, Math.sqrt(square * perTrials), degrees, Math.sqrt(square), first, second, remarks);
    }

    private LevelDifference withEarlierScatter(
            double value,
            double u,
            double degrees,
            double spreadDb,
            AntennaReadings first,
            AntennaReadings second,
            List<String> remarks) {
        List<UncertaintyPart> declared = declarations.doubtsOf(first.antenna(), second.antenna());
        List<UncertaintyPart> parts = new ArrayList<>();
        parts.add(UncertaintyPart.seen("scatter known from earlier sessions", u, degrees));
        parts.addAll(declared);
        Estimate estimate = CombinedUncertainty.of(parts).estimate(value);
        DetectionLimit detection = new DetectionLimit(estimate, spreadDb, 2, declared);
        return new LevelDifference(
                ComparisonMethod.EARLIER_SCATTER,
                value,
                Optional.of(estimate),
                parts,
                Optional.of(detection),
                OptionalDouble.of(estimate.twoSidedP()),
                estimate.degreesOfFreedom() >= LEAST_DEGREES,
                remarks);
    }

    private static String loneRemark(AntennaReadings first, AntennaReadings second) {
        String start = "one trial gives a difference but no scatter, so no interval and no verdict.";
        AntennaReadings other = first.n() >= 2 ? first : second;
        if (other.n() < 2) return start + " Repeat with the antenna taken off and put on again, five times or more.";
        double s = MeanDifference.standardDeviation(other.levels());
        Estimate ifAlike = new Estimate(0, s * Math.sqrt(1 + 1.0 / other.n()), other.n() - 1);
        return String.format(
                Locale.ROOT,
                "%s If it scatters as %s does, a difference below %.1f dB means nothing. Repeat it five times or more.",
                start,
                other.antenna(),
                ifAlike.expandedUncertainty95());
    }

    /** Whether the control was read before the first and after the last reading of the antenna. */
    boolean isBracketed(AntennaReadings readings) {
        if (control == null) return false;
        if (readings == control) return true;
        double first = control.places().get(0);
        double last = control.places().get(control.n() - 1);
        return readings.places().stream().allMatch(place -> place > first && place < last);
    }

    private static double square(AntennaReadings readings) {
        double s = MeanDifference.standardDeviation(readings.levels());
        return s * s;
    }
}
