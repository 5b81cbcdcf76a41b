package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Trials on rows of numbers against one look at the track for each report. */
class ClockTrialsTest {
    private static final Instant START = Instant.parse("2026-05-04T09:00:00Z");
    /** Of distances over a plane, as the medians say in their @error. */
    private static final double PLANE = 0.006;

    /** Steps of none to forty seconds, some of which begin another stretch. */
    private static GpxTrack track(Random random, int count) {
        List<TrackPoint> points = new ArrayList<>();
        Instant time = START;
        Position at = new Position(36, -84);
        int segment = 0;
        for (int i = 0; i < count; i++) {
            points.add(new TrackPoint(at, OptionalDouble.empty(), Optional.of(time), segment, "", ""));
            time = time.plusSeconds(random.nextInt(41));
            at = GeodesicLine.destination(at, 60 * random.nextGaussian(), 40 * random.nextDouble());
            if (random.nextInt(40) == 0) segment++;
        }
        return new GpxTrack("t", points, List.of(), List.of());
    }

    private static List<WalkReport> reports(Random random, int count) {
        List<WalkReport> reports = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Instant time = START.plusSeconds(random.nextInt(1800));
            Position at = new Position(36 + 0.01 * random.nextDouble(), -84 + 0.01 * random.nextGaussian());
            reports.add(new WalkReport(
                    new WalkReport.Origin(i + 2, Optional.of(time), Optional.of(at)),
                    Reception.copy(true),
                    Direction.BOTH,
                    Optional.empty(),
                    OptionalDouble.empty(),
                    ""));
        }
        return reports;
    }

    private static Optional<GpxTrack.Fix> fix(GpxTrack track, WalkReport report, double offsetS) {
        return track.at(report.origin().time().orElseThrow().plusMillis(Math.round(1000 * offsetS)));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 20, 100})
    void theyFindWhatTheTrackSaysOfEachReport(int points) {
        int inside = 0;
        for (int seed = 0; seed < 20; seed++) {
            Random random = new Random(seed);
            GpxTrack track = track(random, points);
            List<WalkReport> reports = reports(random, 1 + random.nextInt(40));
            ClockTrials trials = new ClockTrials(track, reports);
            for (double offsetS : new double[] {-5000, -600, -90, -2.25, 0, 10, 11.5, 300, 5000}) {
                double[] distances = reports.stream()
                        .mapToDouble(report -> fix(track, report, offsetS)
                                .map(fix -> GeodesicLine.distanceM(
                                        fix.at(), report.origin().at().orElseThrow()))
                                .orElse(ClockTrials.OUTSIDE_M))
                        .sorted()
                        .toArray();
                long on = reports.stream()
                        .filter(report -> fix(track, report, offsetS).isPresent())
                        .count();
                assertEquals(on, trials.onTrack(offsetS), "seed " + seed + ", offset " + offsetS);
                double median = distances[distances.length / 2];
                assertEquals(median, trials.medianM(offsetS), PLANE * median, "seed " + seed + ", offset " + offsetS);
                if (median < ClockTrials.OUTSIDE_M) inside++;
            }
        }
        assertTrue(points < 100 || inside > 20, inside + " medians on the track");
    }
}
