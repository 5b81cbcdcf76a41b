package handreach.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import handreach.bench.AntennaResult;
import handreach.bench.BenchAnalysis;
import handreach.bench.ComparisonMethod;
import handreach.bench.ControlDrift;
import handreach.bench.DetectionLimit;
import handreach.bench.Effect;
import handreach.bench.MeterResult;
import handreach.bench.MeterScale;
import handreach.bench.MountKind;
import handreach.bench.MountResult;
import handreach.bench.match.MatchReadings;
import handreach.uncertainty.Estimate;
import handreach.uncertainty.Interval;
import handreach.uncertainty.RankAgreement;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A bench session with the keys of the command line's contract. What is marked as not always there is left out where nothing is known. */
public record BenchJson(
        Optional<String> control,
        List<Mount> mounts,
        List<Meter> fieldMeter,
        List<Readings> match,
        List<String> warnings) {
    /** A session, and how many trials would settle a difference of this size. */
    public static BenchJson of(BenchAnalysis analysis, double settleDb) {
        return new BenchJson(
                analysis.control(),
                analysis.mounts().stream()
                        .map(mount -> Mount.of(mount, settleDb))
                        .toList(),
                analysis.meters().stream()
                        .map(meter -> Meter.of(meter, settleDb))
                        .toList(),
                analysis.matches().stream().map(Readings::of).toList(),
                analysis.warnings());
    }

    private static List<Double> ends(Interval interval) {
        return List.of(interval.low(), interval.high());
    }

    /** Nothing for what has no end. */
    private static OptionalDouble finite(double value) {
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    private record Mount(
            String mount,
            MountKind mountKind,
            OptionalDouble frequencyMhz,
            Control control,
            List<Antenna> antennas,
            List<List<String>> alike,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Drift> drift) {
        static Mount of(MountResult mount, double settleDb) {
            return new Mount(
                    mount.mounting().name(),
                    mount.mounting().kind(),
                    mount.frequencyMhz(),
                    new Control(
                            mount.control().n(),
                            mount.control().mean(),
                            mount.control().standardDeviationDb()),
                    mount.antennas().stream()
                            .map(antenna -> Antenna.of(antenna, settleDb))
                            .toList(),
                    mount.alike(),
                    mount.drift().map(Drift::of));
        }
    }

    private record Control(int n, double meanDbm, OptionalDouble standardDeviationDb) {}

    private record Drift(double dbPerReading, double p, boolean significant, ControlDrift.Basis basis) {
        static Drift of(ControlDrift drift) {
            return new Drift(drift.dbPerReading(), drift.p(), drift.significant(), drift.basis());
        }
    }

    private record Antenna(
            String antenna,
            int n,
            double meanDbm,
            double deltaDb,
            OptionalDouble standardUncertaintyDb,
            Optional<List<Double>> interval95Db,
            boolean toldApart,
            AntennaResult.Finding verdict,
            String reason,
            Optional<List<Double>> interval95TogetherDb,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<OptionalDouble> degreesOfFreedom,
            ComparisonMethod method,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> p,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> adjustedP,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<OptionalDouble> minimumDifferenceDb,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Settle> settle,
            List<Effect> alreadyHolds) {
        static Antenna of(AntennaResult result, double settleDb) {
            return new Antenna(
                    result.antenna(),
                    result.n(),
                    result.level().mean(),
                    result.delta().db(),
                    result.delta().standardUncertaintyDb(),
                    result.delta().interval95().map(BenchJson::ends),
                    result.toldApart(),
                    result.finding(),
                    result.reason(),
                    result.intervalTogether().map(BenchJson::ends),
                    result.delta().estimate().map(Estimate::degreesOfFreedom).map(BenchJson::finite),
                    result.method(),
                    result.verdict().map(AntennaResult.Verdict::p),
                    result.verdict().map(AntennaResult.Verdict::adjustedP),
                    result.detection().map(DetectionLimit::minimumDifferenceDb).map(BenchJson::finite),
                    result.detection().map(limit -> new Settle(settleDb, result.trialsToSettle(settleDb))),
                    result.delta().effects().effects().stream().sorted().toList());
        }
    }

    private record Settle(double differenceDb, OptionalInt trials) {}

    private record Meter(
            String mount,
            OptionalDouble frequencyMhz,
            MeterScale.Basis basis,
            List<Rank> ranks,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<RankAgreement> agreement,
            List<Antenna> deltas) {
        static Meter of(MeterResult meter, double settleDb) {
            return new Meter(
                    meter.mounting().name(),
                    meter.frequencyMhz(),
                    meter.basis(),
                    meter.ranks().stream().map(Rank::of).toList(),
                    meter.agreement(),
                    meter.deltas().stream()
                            .map(delta -> Antenna.of(delta, settleDb))
                            .toList());
        }
    }

    private record Rank(
            String antenna,
            int rank,
            int n,
            double medianUa,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<List<Double>> bracketDb) {
        static Rank of(MeterResult.Rank rank) {
            return new Rank(
                    rank.antenna(),
                    rank.rank(),
                    rank.n(),
                    rank.medianMicroamps(),
                    rank.bracketDb().map(BenchJson::ends));
        }
    }

    private record Readings(
            String antenna,
            String mount,
            OptionalDouble resonanceMhz,
            OptionalDouble bandwidthMhz,
            List<Point> points) {
        static Readings of(MatchReadings readings) {
            return new Readings(
                    readings.antenna(),
                    readings.mounting().name(),
                    readings.resonanceMhz(),
                    readings.bandwidthMhz(),
                    readings.points().stream().map(Point::of).toList());
        }
    }

    private record Point(double frequencyMhz, double swr, double returnLossDb, double mismatchLossDb) {
        static Point of(MatchReadings.Point point) {
            return new Point(
                    point.frequencyMhz(),
                    point.match().swr(),
                    point.match().returnLossDb(),
                    point.match().mismatchLossDb());
        }
    }
}
