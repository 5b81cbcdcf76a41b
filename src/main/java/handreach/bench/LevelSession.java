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

/** All levels read in one mounting at one frequency, in the order they were read. */
final class LevelSession {
    /** A slope this unlikely by chance is drift; scatter alone passes it once in a thousand sessions. */
    private static final double DRIFT_P = 0.001;

    private static final int DRIFT_TRIALS = 5;
    private static final double NO_SCATTER_DB = 1e-9;

    private final Declarations declarations;
    private final Map<String, AntennaReadings> byAntenna = new LinkedHashMap<>();
    private int count = 0;
    private Optional<ControlDrift> drift = Optional.empty();
    private AntennaReadings control;

    LevelSession(Declarations declarations) {
        this.declarations = declarations;
    }

    void add(Reading reading, double levelDb, double step) {
        byAntenna
                .computeIfAbsent(identity(reading.antenna()), key -> new AntennaReadings(reading.antenna()))
                .add(levelDb, count++, reading.trial(), step);
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

    /** Names the control, and looks at how it moved during the session. */
    void setControl(String name) {
        control = antenna(name).orElseThrow();
        if (control.n() < 3) return;
        LinearTrend trend = LinearTrend.of(control.places(), control.levels());
        double p = trend.slope().twoSidedP();
        drift = Optional.of(new ControlDrift(trend, p, p < DRIFT_P && control.n() >= DRIFT_TRIALS));
    }

    Optional<AntennaReadings> control() {
        return Optional.ofNullable(control);
    }

    Optional<ControlDrift> drift() {
        return drift;
    }

    /** The first antenna less the second. */
    LevelDifference difference(AntennaReadings first, AntennaReadings second) {
        List<String> remarks = new ArrayList<>();
        Optional<TrialPairs> pairs = TrialPairs.of(first, second, declarations.order());
        if (pairs.isPresent()) return paired(pairs.get(), first, second, remarks);
        if (first.n() < 2 || second.n() < 2) return lone(first, second, remarks);
        if (second == control && declarations.order().isEmpty() && TrialPairs.areNumberedAlikeInBlocks(first, second))
            remarks.add("its trial numbers match those of the control, but the rows do not stand in turns: compared as"
                    + " independent sets. If they were taken in turns, put the rows in that order or declare # order ="
                    + " interleaved.");
        boolean drifts = drift.map(ControlDrift::significant).orElse(false);
        if (drifts && isBracketed(first) && isBracketed(second)) return driftCorrected(first, second, remarks);
        if (drifts && second == control)
            remarks.add("the control drifted and was not read both before and after this antenna: the drift cannot be"
                    + " taken out. Read the control first, last and between.");
        Estimate plain = MeanDifference.welch(first.levels(), second.levels());
        double squareA = square(first);
        double squareB = square(second);
        double total = squareA + squareB;
        double perTrial = total == 0 ? 2 : total * total / (squareA * squareA + squareB * squareB);
        List<UncertaintyPart> seen = List.of(
                UncertaintyPart.seen("scatter of the trials", plain.standardUncertainty(), plain.degreesOfFreedom()));
        return compared(
                ComparisonMethod.WELCH,
                plain.value(),
                seen,
                new Spread(Math.sqrt(total), perTrial),
                first,
                second,
                remarks);
    }

    /** Scatter of one difference, and the degrees of freedom each further trial adds. */
    private record Spread(double db, double degreesPerTrial) {}

    private LevelDifference paired(
            TrialPairs pairs, AntennaReadings first, AntennaReadings second, List<String> remarks) {
        Estimate plain = MeanDifference.paired(pairs.first(), pairs.second());
        if (pairs.left() > 0)
            remarks.add(pairs.left() + (pairs.left() == 1 ? " trial has" : " trials have") + " no partner and "
                    + (pairs.left() == 1 ? "is" : "are") + " left out of the pairs.");
        if (second == control && drift.map(ControlDrift::significant).orElse(false)) {
            double bias = drift.get().dbPerReading() * pairs.meanPlacesApart();
            remarks.add(String.format(
                    Locale.ROOT,
                    "the control drifted; pairs cancel it but for about %.2f dB, since one was always read after the other."
                            + " Swap the order from trial to trial.",
                    bias));
        }
        int n = pairs.first().size();
        List<UncertaintyPart> seen = List.of(UncertaintyPart.seen(
                "scatter of the differences within trials", plain.standardUncertainty(), plain.degreesOfFreedom()));
        return compared(
                ComparisonMethod.PAIRED,
                plain.value(),
                seen,
                new Spread(plain.standardUncertainty() * Math.sqrt(n), 1),
                first,
                second,
                remarks);
    }

    /** The control's straight line is taken out of all readings; the doubt of its slope weighs with the distance in order. */
    private LevelDifference driftCorrected(AntennaReadings first, AntennaReadings second, List<String> remarks) {
        LinearTrend trend = drift.orElseThrow().trend();
        double slope = trend.slope().value();
        double apart = first.meanPlace() - second.meanPlace();
        double value = first.mean() - second.mean() - slope * apart;
        double slopeDoubt = Math.abs(apart) * trend.slope().standardUncertainty();
        List<UncertaintyPart> seen = new ArrayList<>();
        boolean slopeCounted = false;
        double squares = 0;
        double fourths = 0;
        for (AntennaReadings one : List.of(first, second)) {
            double scatter = one == control ? trend.residual() : detrended(one, slope);
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
                new Spread(Math.sqrt(squares), perTrial),
                first,
                second,
                remarks);
    }

    private static double detrended(AntennaReadings readings, double slope) {
        List<Double> levels = new ArrayList<>();
        for (int i = 0; i < readings.n(); i++)
            levels.add(readings.levels().get(i) - slope * readings.places().get(i));
        return MeanDifference.standardDeviation(levels);
    }

    private LevelDifference compared(
            ComparisonMethod method,
            double value,
            List<UncertaintyPart> seen,
            Spread spread,
            AntennaReadings first,
            AntennaReadings second,
            List<String> remarks) {
        List<UncertaintyPart> declared = new ArrayList<>(declarations.doubtsOf(first.antenna(), second.antenna()));
        if (seen.stream().allMatch(part -> part.standardUncertainty() < NO_SCATTER_DB)) {
            double step = Math.max(first.step(), second.step());
            declared.add(UncertaintyPart.declared(
                    "step in which the readings are written",
                    step / 2 / Math.sqrt(3) * Math.sqrt(2),
                    UncertaintyPart.Shape.STANDARD,
                    0));
            remarks.add(String.format(
                    Locale.ROOT,
                    "the readings do not scatter at all, so the step in which they are written (%s dB) is taken as their"
                            + " doubt. Declare resolution_db, or read finer.",
                    step));
        }
        List<UncertaintyPart> parts = new ArrayList<>(seen);
        parts.addAll(declared);
        Estimate estimate = CombinedUncertainty.of(parts).estimate(value);
        DetectionLimit detection = new DetectionLimit(estimate, spread.db(), spread.degreesPerTrial(), declared);
        return new LevelDifference(method, value, Optional.of(estimate), parts, Optional.of(detection), remarks);
    }

    /** Fewer than two readings on one side: only what is known from elsewhere can say how sure the difference is. */
    private LevelDifference lone(AntennaReadings first, AntennaReadings second, List<String> remarks) {
        double value = first.mean() - second.mean();
        Optional<EarlierScatter> earlier = declarations.instrument().earlierScatter();
        if (earlier.isEmpty()) {
            remarks.add(loneRemark(first, second));
            return new LevelDifference(
                    ComparisonMethod.NO_SCATTER, value, Optional.empty(), List.of(), Optional.empty(), remarks);
        }
        double single = earlier.get().db();
        double degrees = earlier.get().trials() - 1;
        double u = single * Math.sqrt(1.0 / first.n() + 1.0 / second.n());
        List<UncertaintyPart> declared = declarations.doubtsOf(first.antenna(), second.antenna());
        List<UncertaintyPart> parts = new ArrayList<>();
        parts.add(UncertaintyPart.seen("scatter known from earlier sessions", u, degrees));
        parts.addAll(declared);
        Estimate estimate = CombinedUncertainty.of(parts).estimate(value);
        DetectionLimit detection = new DetectionLimit(estimate, single * Math.sqrt(2), 2, declared);
        return new LevelDifference(
                ComparisonMethod.EARLIER_SCATTER, value, Optional.of(estimate), parts, Optional.of(detection), remarks);
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
    private boolean isBracketed(AntennaReadings readings) {
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
