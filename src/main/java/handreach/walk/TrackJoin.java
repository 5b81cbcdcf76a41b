package handreach.walk;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.reach.Progress;
import handreach.reach.SubProgress;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reports put in their places: by their own position, or else by the track at their time.
 *
 * @param placed reports with a place, in the order walked
 * @param unplaced reports without one; they are told, never dropped in silence
 * @param clockOffsetS seconds that were added to the times of the reports
 * @param notes what was doubtful, one sentence each
 * @param clockFault why the times cannot be right, where one shift by quarter hours would bring all reports onto the track of which
 *     many now lie outside: then those that do lie on it lie in the wrong places
 */
public record TrackJoin(
        List<Placed> placed,
        List<WalkReport> unplaced,
        double clockOffsetS,
        List<String> notes,
        Optional<String> clockFault) {
    /** A longer gap between two points of the track is told. */
    private static final double LONG_GAP_S = 60;
    /** A place in a longer gap is not known. */
    private static final double LONGEST_GAP_S = 600;

    private static final int LONGEST_OFFSET_S = 14 * 3600;
    private static final int ZONE_STEP_S = 900;
    /** Share of reports outside the track from which a shift that fits all is no accident; our suggestion. */
    private static final double MANY_OUTSIDE = 0.2;
    /** Share of all reports that a shift must bring onto the track to be called a fit. */
    private static final double FITS = 0.9;
    /** With fewer reports that have time and place, a clock is not set from them. */
    private static final int LEAST_FOR_OFFSET = 5;
    /** Reports must come this near to the track to set a clock, m. */
    private static final double FIT_M = 60;

    public TrackJoin {
        placed = List.copyOf(placed);
        unplaced = List.copyOf(unplaced);
        notes = List.copyOf(notes);
    }

    /**
     * A report with its place.
     *
     * @param report the report
     * @param at where
     * @param alongM way from the first report, over the places in between, m
     */
    public record Placed(WalkReport report, Position at, double alongM) {}

    /** Joins the reports with a track, if there is one; a given clock offset is used as it is, else it is estimated. */
    public static TrackJoin of(
            Optional<GpxTrack> track, List<WalkReport> reports, OptionalDouble givenOffsetS, Progress progress) {
        List<String> notes = new ArrayList<>();
        double offsetS = givenOffsetS.orElseGet(() ->
                track.map(t -> estimatedOffsetS(t, reports, notes, progress)).orElse(0.0));
        List<WalkReport> unplaced = new ArrayList<>();
        List<Placed> found = new ArrayList<>();
        int longGaps = 0;
        for (WalkReport report : inOrder(reports)) {
            Optional<GpxTrack.Fix> fix = report.origin().at().map(at -> new GpxTrack.Fix(at, 0));
            if (fix.isEmpty() && track.isPresent())
                fix = report.origin().time().flatMap(time -> track.get().at(shifted(time, offsetS)));
            if (fix.isEmpty() || fix.get().gapS() > LONGEST_GAP_S) unplaced.add(report);
            else {
                if (fix.get().gapS() > LONG_GAP_S) longGaps++;
                found.add(new Placed(report, fix.get().at(), 0));
            }
        }
        if (longGaps > 0)
            notes.add(longGaps + " reports fall in gaps of the track of more than " + (int) LONG_GAP_S
                    + " s; their places are guessed between the ends of the gap.");
        if (!unplaced.isEmpty()) notes.add(unplacedNote(track, unplaced, offsetS, progress));
        Optional<String> fault = track.flatMap(t -> clockFault(t, reports, offsetS, progress));
        return new TrackJoin(along(found), unplaced, offsetS, notes, fault);
    }

    /** Reports that name their place are left out: they lie where they say. */
    private static Optional<String> clockFault(
            GpxTrack track, List<WalkReport> reports, double offsetS, Progress progress) {
        List<WalkReport> byTime =
                reports.stream().filter(r -> r.origin().at().isEmpty()).toList();
        ClockTrials trials = new ClockTrials(track, byTime);
        int outside = byTime.size() - trials.onTrack(offsetS);
        if (track.timed().isEmpty() || outside < MANY_OUTSIDE * byTime.size() || outside == 0) return Optional.empty();
        return zoneHintS(trials, byTime.size(), offsetS, progress)
                .map(shift -> String.format(
                        Locale.ROOT,
                        "the times of %d of %d reports lie outside the track, and shifted by %s h all but a few fit: the clock looks to"
                                + " be of another time zone, and the rest would be put in wrong places. Set clock_offset_s = %d; or,"
                                + " if the clock was right, give the reports outside the track a position or take them out.",
                        outside,
                        byTime.size(),
                        hours(shift),
                        Math.round(offsetS + shift)));
    }

    private static List<WalkReport> inOrder(List<WalkReport> reports) {
        if (reports.stream().anyMatch(report -> report.origin().time().isEmpty())) return reports;
        return reports.stream()
                .sorted(Comparator.comparing(report -> report.origin().time().orElseThrow()))
                .toList();
    }

    private static Instant shifted(Instant time, double offsetS) {
        return time.plusMillis(Math.round(1000 * offsetS));
    }

    private static List<Placed> along(List<Placed> found) {
        List<Placed> placed = new ArrayList<>();
        double way = 0;
        for (int i = 0; i < found.size(); i++) {
            if (i > 0)
                way += GeodesicLine.distanceM(
                        found.get(i - 1).at(), found.get(i).at());
            placed.add(new Placed(found.get(i).report(), found.get(i).at(), way));
        }
        return placed;
    }

    /** What to do about reports without a place: most often the clock ran in another time zone. */
    private static String unplacedNote(
            Optional<GpxTrack> track, List<WalkReport> unplaced, double offsetS, Progress progress) {
        String lines = unplaced.size() + " reports have no place (the first is line "
                + unplaced.get(0).origin().line() + ")";
        if (track.isEmpty()) return lines + ": they name no position and the walk has no track.";
        if (track.get().timed().isEmpty()) return lines + ": the track has no times. Give the reports positions.";
        Optional<Integer> zone = zoneHintS(new ClockTrials(track.get(), unplaced), unplaced.size(), offsetS, progress);
        String range = ": their times lie outside the track, "
                + track.get().start().orElseThrow() + " to " + track.get().end().orElseThrow() + ", or in a gap of it.";
        if (zone.isEmpty()) return lines + range + " Check the clock, or set clock_offset_s.";
        return lines
                + range
                + String.format(
                        Locale.ROOT,
                        " Shifted by %s h they fit: was the clock in another time zone? If so, set clock_offset_s = %d.",
                        hours(zone.get()),
                        Math.round(offsetS + zone.get()));
    }

    /** A shift to the hundredth of an hour, with its sign. */
    private static String hours(int shiftS) {
        return (shiftS < 0 ? "\u2212" : "+") + String.format(Locale.ROOT, "%.2f", Math.abs(shiftS) / 3600.0);
    }

    /** A shift that puts nearly all of these reports on the track: by whole hours if one does, else by halves, else by quarters. */
    private static Optional<Integer> zoneHintS(ClockTrials trials, int reports, double offsetS, Progress progress) {
        for (int step = 4 * ZONE_STEP_S; step >= ZONE_STEP_S; step /= 2) {
            int best = 0;
            int most = 0;
            for (int size = step; size <= LONGEST_OFFSET_S; size += step)
                for (int shift : new int[] {size, -size}) {
                    progress.goOn();
                    int fits = trials.onTrack(offsetS + shift);
                    if (fits > most) {
                        most = fits;
                        best = shift;
                    }
                }
            if (most >= FITS * reports) return Optional.of(best);
        }
        return Optional.empty();
    }

    /**
     * Clock offset at which reports that name both time and place lie nearest to the track.
     *
     * @shape  one track of m points and n reports in, one offset out; some thousands of trials of O(n log n + m), pure; stops
     *     between trials where nobody wants it
     * @unit   seconds to be added to the times of the reports; metres for the fit
     * @valid  at least five reports with time and place that come within 60 m in the median; else 0
     * @error  some seconds on a moving walk; nothing can be said where the walker stood still
     * @source least median of distances, search by quarter hours, then by seconds; our suggestion
     */
    static double estimatedOffsetS(GpxTrack track, List<WalkReport> reports, List<String> notes, Progress progress) {
        List<WalkReport> both = reports.stream()
                .filter(r -> r.origin().time().isPresent() && r.origin().at().isPresent())
                .toList();
        if (both.size() < LEAST_FOR_OFFSET || track.timed().isEmpty()) return 0;
        ClockTrials trials = new ClockTrials(track, both);
        double best = 0;
        double bestM = trials.medianM(0);
        SubProgress setting = new SubProgress(progress, "setting the clock", 0, 1);
        for (int zone = -LONGEST_OFFSET_S; zone <= LONGEST_OFFSET_S; zone += ZONE_STEP_S) {
            for (int minute = -420; minute <= 420; minute += 60) {
                setting.goOn();
                double distanceM = trials.medianM(zone + minute);
                if (distanceM < bestM - 1) {
                    bestM = distanceM;
                    best = zone + minute;
                }
            }
            setting.done((zone + LONGEST_OFFSET_S) / (2.0 * LONGEST_OFFSET_S));
        }
        for (int stepS : new int[] {10, 1}) {
            double middle = best;
            for (int i = -12; i <= 12; i++) {
                setting.goOn();
                double distanceM = trials.medianM(middle + i * stepS);
                if (distanceM < bestM) {
                    bestM = distanceM;
                    best = middle + i * stepS;
                }
            }
        }
        if (bestM > FIT_M || best == 0) return 0;
        notes.add(String.format(
                Locale.ROOT,
                "clock offset estimated from %d reports with time and place: %s%.0f s (median distance %.0f m).",
                both.size(),
                best < 0 ? "\u2212" : "+",
                Math.abs(best),
                bestM));
        return best;
    }
}
