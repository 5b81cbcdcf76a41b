package handreach.bench;

import handreach.bench.Declarations.EarlierScatter;
import handreach.uncertainty.CombinedUncertainty;
import handreach.uncertainty.Estimate;
import handreach.uncertainty.LinearTrend;
import handreach.uncertainty.MeanDifference;
import handreach.uncertainty.UncertaintyPart;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Differences between any two antennas of a session, with one scatter for all of them: a few trials that two happen to share say
 * too little about how they scatter, all trials of all antennas say enough.
 */
final class CommonScatter {
    private static final double NO_SCATTER_DB = 1e-9;

    private final LevelSession session;
    private final List<AntennaReadings> antennas;
    private final Optional<TrialLayout> layout;
    private final Optional<ControlDrift> drift;
    private final double scatterDb;
    private final double degrees;

    /** Of all antennas of a session, in the order given. */
    CommonScatter(LevelSession session, List<AntennaReadings> antennas) {
        this.session = session;
        this.antennas = antennas;
        this.drift = session.drift().filter(ControlDrift::significant);
        this.layout =
                TrialLayout.of(antennas, session.declarations().order()).filter(known -> known.degreesOfFreedom() >= 1);
        double slope = drift.map(ControlDrift::dbPerReading).orElse(0.0);
        if (layout.isPresent()) {
            degrees = layout.get().degreesOfFreedom();
            scatterDb = seenOrStep(layout.get().scatterDb(slope));
            return;
        }
        double squares = 0;
        double sum = 0;
        for (AntennaReadings one : antennas) {
            if (one.n() < 2) continue;
            double s = MeanDifference.standardDeviation(session.isBracketed(one) ? one.levels(slope) : one.levels());
            squares += (one.n() - 1) * s * s;
            sum += one.n() - 1;
        }
        Optional<EarlierScatter> earlier = session.declarations().instrument().earlierScatter();
        if (sum == 0 && earlier.isPresent()) {
            degrees = earlier.get().trials() - 1;
            scatterDb = earlier.get().db();
        } else {
            degrees = sum;
            scatterDb = sum == 0 ? 0 : seenOrStep(Math.sqrt(squares / sum));
        }
    }

    private double seenOrStep(double seenDb) {
        if (seenDb >= NO_SCATTER_DB) return seenDb;
        return antennas.stream().mapToDouble(AntennaReadings::step).max().orElse(0) / Math.sqrt(12);
    }

    /** The first antenna less the second, by their places in the list. */
    double difference(int first, int second) {
        double slope = drift.map(ControlDrift::dbPerReading).orElse(0.0);
        if (layout.isPresent()) return layout.get().difference(first, second, slope);
        return antennas.get(first).mean() - antennas.get(second).mean() - slope * apart(first, second);
    }

    private double apart(int first, int second) {
        if (layout.isPresent()) return layout.get().apart(first, second);
        AntennaReadings one = antennas.get(first);
        AntennaReadings other = antennas.get(second);
        return session.isBracketed(one) && session.isBracketed(other) ? one.meanPlace() - other.meanPlace() : 0;
    }

    /** The same with its doubt, declared doubts among it; nothing where no scatter is known or trials are too few for a verdict. */
    Optional<Estimate> judged(int first, int second) {
        if (degrees <= 0) return Optional.empty();
        AntennaReadings one = antennas.get(first);
        AntennaReadings other = antennas.get(second);
        double share = layout.map(known -> known.errorOf(first, second))
                .orElseGet(() -> Math.sqrt(1.0 / one.n() + 1.0 / other.n()));
        List<UncertaintyPart> parts = new ArrayList<>();
        parts.add(UncertaintyPart.seen("scatter common to the mounting", share * scatterDb, degrees));
        drift.ifPresent(known -> {
            LinearTrend trend = known.trend();
            double u = Math.abs(apart(first, second)) * trend.slope().standardUncertainty();
            parts.add(UncertaintyPart.seen(
                    "doubt of the drift taken out", u, trend.slope().degreesOfFreedom()));
        });
        List<UncertaintyPart> declared = session.declarations().doubtsOf(one.antenna(), other.antenna());
        parts.addAll(declared);
        Estimate estimate = CombinedUncertainty.of(parts).estimate(difference(first, second));
        return session.isEnough(Math.min(one.n(), other.n()), declared, estimate)
                ? Optional.of(estimate)
                : Optional.empty();
    }
}
