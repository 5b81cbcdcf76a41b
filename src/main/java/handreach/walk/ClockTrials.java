package handreach.walk;

import handreach.geodesy.Position;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** A track and the reports with a time, both in the order of time, for trials of many clock offsets. Immutable. */
final class ClockTrials {
    /** Stands for the distance of a report outside the track, m. */
    static final double OUTSIDE_M = 1e9;

    private final List<TrackPoint> timed;
    private final long[] trackMs;
    private final List<WalkReport> reports;
    private final long[] reportMs;

    ClockTrials(GpxTrack track, List<WalkReport> all) {
        timed = track.timed();
        trackMs = timed.stream()
                .mapToLong(point -> point.time().orElseThrow().toEpochMilli())
                .toArray();
        reports = all.stream()
                .filter(report -> report.origin().time().isPresent())
                .sorted(Comparator.comparing(ClockTrials::time))
                .toList();
        reportMs = reports.stream()
                .mapToLong(report -> time(report).toEpochMilli())
                .toArray();
    }

    private static Instant time(WalkReport report) {
        return report.origin().time().orElseThrow();
    }

    /**
     * How many of the reports lie on the track with this offset.
     *
     * @shape  one offset in, one count out; O(n + m) for n reports and m points, pure
     * @unit   seconds to be added to the times of the reports
     * @valid  every offset
     * @error  none beyond the millisecond that times are held to
     * @source as {@link GpxTrack#at}
     */
    int onTrack(double offsetS) {
        long offsetMs = Math.round(1000 * offsetS);
        int count = 0;
        int low = 0;
        for (long time : reportMs) {
            low = before(low, time + offsetMs);
            if (isOn(low, time + offsetMs)) count++;
        }
        return count;
    }

    /**
     * Median distance of the reports from the track with this offset; all of them name their place.
     *
     * @shape  one offset in, one distance out; O(n log n + m) for n reports and m points, pure
     * @unit   offset in seconds, result m
     * @valid  at least one report; where half or more lie outside the track: {@link #OUTSIDE_M}
     * @error  distances over a plane, within 0.6 % of the geodesic
     * @source the upper of the two in the middle of an even number
     */
    double medianM(double offsetS) {
        if (onTrack(offsetS) <= reportMs.length / 2) return OUTSIDE_M;
        long offsetMs = Math.round(1000 * offsetS);
        double[] distance = new double[reportMs.length];
        int low = 0;
        for (int i = 0; i < distance.length; i++) {
            long time = reportMs[i] + offsetMs;
            low = before(low, time);
            distance[i] = !isOn(low, time)
                    ? OUTSIDE_M
                    : Neighbourhood.apartM(
                            at(low, time), reports.get(i).origin().at().orElseThrow());
        }
        Arrays.sort(distance);
        return distance[distance.length / 2];
    }

    /** The last point not after a moment that has one after it, from one that is known not to be later. */
    private int before(int from, long ms) {
        int low = from;
        while (low + 2 < trackMs.length && trackMs[low + 1] <= ms) low++;
        return low;
    }

    private int after(int low) {
        return Math.min(low + 1, trackMs.length - 1);
    }

    private boolean isOn(int low, long ms) {
        if (trackMs.length == 0 || ms < trackMs[0] || ms > trackMs[trackMs.length - 1]) return false;
        return ms == trackMs[low]
                || ms == trackMs[after(low)]
                || timed.get(low).segment() == timed.get(after(low)).segment();
    }

    private Position at(int low, long ms) {
        TrackPoint before = timed.get(low);
        TrackPoint after = timed.get(after(low));
        if (ms == trackMs[after(low)]) return after.at();
        if (ms == trackMs[low]) return before.at();
        double part = (double) (ms - trackMs[low]) / (trackMs[low + 1] - trackMs[low]);
        return GpxTrack.between(before.at(), after.at(), part);
    }
}
