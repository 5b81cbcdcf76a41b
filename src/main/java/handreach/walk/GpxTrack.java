package handreach.walk;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.CappedFile;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.reach.Progress;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A walked track: the points of a GPX file in their order, in stretches that are never joined, and its waypoints. Immutable.
 */
public final class GpxTrack {
    /** A point takes some 100 bytes of a file and 600 of memory while it is read, sorted and joined; measured. */
    private static final CappedFile.Cap CAP =
            new CappedFile.Cap(64L << 20, 10, "Export the day of the walk alone, without sensor readings.");

    /** Farther than this from the middle of the plan nobody walks who talks on its channel. */
    private static final double NEAR_M = 50_000;

    private final String name;
    private final List<TrackPoint> points;
    private final List<TrackPoint> waypoints;
    private final List<String> notes;
    private final List<TrackPoint> timed;

    GpxTrack(String name, List<TrackPoint> points, List<TrackPoint> waypoints, List<String> notes) {
        this.name = name;
        this.points = List.copyOf(points);
        this.waypoints = List.copyOf(waypoints);
        this.notes = List.copyOf(notes);
        this.timed = points.stream()
                .filter(point -> point.time().isPresent())
                .sorted(Comparator.comparing(point -> point.time().orElseThrow()))
                .toList();
    }

    /** Where somebody was at a moment. */
    public record Fix(Position at, double gapS) {}

    /** Reads a GPX 1.0 or 1.1 file of at most 64 MiB; nothing outside the file is ever opened. */
    public static GpxTrack read(Path file) {
        return read(file, Progress.SILENT);
    }

    /** The same, for whoever may lose interest in a long one meanwhile. */
    public static GpxTrack read(Path file, Progress progress) {
        String shown = String.valueOf(file.getFileName());
        try {
            try (InputStream in = CappedFile.open(file, CAP)) {
                return new GpxReader(shown, progress).read(in);
            }
        } catch (NoSuchFileException e) {
            throw new InputFault(file.toString(), 0, "there is no such file. Check the name and the folder.");
        } catch (IOException e) {
            throw new InputFault(
                    file.toString(), 0, "cannot be read (" + SourceText.reason(e) + "). Check the rights on it.");
        }
    }

    /** The lines of a file, tracks and routes, each an unbroken row of positions; a file without any is an {@link InputFault}. */
    public static List<List<Position>> lines(Path file) {
        return read(file).lines();
    }

    /** Its tracks and routes, each an unbroken row of positions; without any it is an {@link InputFault}. */
    public List<List<Position>> lines() {
        List<List<Position>> lines = new ArrayList<>();
        int last = -1;
        for (TrackPoint point : points) {
            if (point.segment() != last) lines.add(new ArrayList<>());
            lines.get(lines.size() - 1).add(point.at());
            last = point.segment();
        }
        if (lines.isEmpty())
            throw new InputFault(
                    name, 0, "has no track and no route, at least one is needed. Export the track, not waypoints.");
        return lines;
    }

    public String name() {
        return name;
    }

    public List<TrackPoint> points() {
        return points;
    }

    public List<TrackPoint> waypoints() {
        return waypoints;
    }

    /** What was doubtful while reading, one sentence each. */
    public List<String> notes() {
        return notes;
    }

    /** Points with a time, in the order of their times. */
    public List<TrackPoint> timed() {
        return timed;
    }

    public Optional<Instant> start() {
        return timed.isEmpty() ? Optional.empty() : timed.get(0).time();
    }

    public Optional<Instant> end() {
        return timed.isEmpty() ? Optional.empty() : timed.get(timed.size() - 1).time();
    }

    /**
     * Where the receiver was at a moment, between two points of one stretch.
     *
     * @shape  one moment in, one position or none out; bisection, pure
     * @unit   gap in seconds between the two points used
     * @valid  inside the times of the track; outside, and between two stretches, there is none
     * @error  that of the receiver, 3 to 30 m, where the gap is short; in a long gap up to half the way walked in it
     * @source straight line in latitude and longitude between two recorded points
     */
    public Optional<Fix> at(Instant moment) {
        int low = 0;
        int high = timed.size() - 1;
        if (high < 0 || moment.isBefore(timeOf(low)) || moment.isAfter(timeOf(high))) return Optional.empty();
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (timeOf(middle).isAfter(moment)) high = middle;
            else low = middle;
        }
        TrackPoint before = timed.get(low);
        TrackPoint after = timed.get(high);
        double gapS = seconds(timeOf(low), timeOf(high));
        if (moment.equals(timeOf(high))) return Optional.of(new Fix(after.at(), 0));
        if (moment.equals(timeOf(low))) return Optional.of(new Fix(before.at(), 0));
        if (before.segment() != after.segment()) return Optional.empty();
        double part = seconds(timeOf(low), moment) / gapS;
        return Optional.of(new Fix(between(before.at(), after.at(), part), gapS));
    }

    private Instant timeOf(int i) {
        return timed.get(i).time().orElseThrow();
    }

    private static double seconds(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }

    static Position between(Position a, Position b, double part) {
        double east = b.longitudeDeg() - a.longitudeDeg();
        if (east > 180) east -= 360;
        if (east < -180) east += 360;
        return new Position(
                a.latitudeDeg() + part * (b.latitudeDeg() - a.latitudeDeg()), a.longitudeDeg() + part * east);
    }

    /** A sentence if the points lie far from a place, but near it once latitude and longitude change places. */
    public Optional<String> swapHint(Position expected) {
        if (points.isEmpty()) return Optional.empty();
        return exchanged(points.get(points.size() / 2).at(), expected) ? Optional.of(SWAPPED) : Optional.empty();
    }

    /** What is said of exchanged coordinates. */
    public static final String SWAPPED =
            "latitude and longitude look exchanged: the other way round they lie in the area of the plan."
                    + " Exchange the two, or export again.";

    /** Whether a place lies far from where it is expected, but near it once latitude and longitude change places. */
    public static boolean exchanged(Position at, Position expected) {
        if (GeodesicLine.distanceM(at, expected) < NEAR_M || Math.abs(at.longitudeDeg()) > 90) return false;
        Position other = new Position(at.longitudeDeg(), at.latitudeDeg());
        return GeodesicLine.distanceM(other, expected) < NEAR_M;
    }
}
