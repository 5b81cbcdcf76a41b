package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.reach.Progress;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TrackJoinTest {
    private static final Instant START = Instant.parse("2026-05-04T09:00:00Z");

    /** A walk that turns, one point a second, so that a place tells the time. */
    private static GpxTrack track(int seconds) {
        List<TrackPoint> points = new ArrayList<>();
        for (int s = 0; s < seconds; s++)
            points.add(new TrackPoint(at(s), OptionalDouble.empty(), Optional.of(START.plusSeconds(s)), 0, "", ""));
        return new GpxTrack("t", points, List.of(), List.of());
    }

    private static Position at(double s) {
        return new Position(36 + 1.2e-5 * s, -84 + 0.002 * Math.sin(s / 900));
    }

    private static WalkReport report(Optional<Instant> time, Optional<Position> at) {
        return new WalkReport(
                new WalkReport.Origin(2, time, at),
                Reception.copy(true),
                Direction.BOTH,
                Optional.empty(),
                OptionalDouble.empty(),
                "");
    }

    @Test
    void aClockThatRunsWrongIsSetFromReportsThatNameTheirPlace() {
        Random random = new Random(7);
        List<WalkReport> reports = new ArrayList<>();
        for (int s = 500; s < 6500; s += 300) {
            Position p = at(s);
            Position seen = new Position(p.latitudeDeg() + 5e-5 * random.nextGaussian(), p.longitudeDeg());
            reports.add(report(Optional.of(START.plusSeconds(s - 7200 - 83)), Optional.of(seen)));
        }
        reports.add(report(Optional.of(START.plusSeconds(3000 - 7200 - 83)), Optional.empty()));
        TrackJoin join = TrackJoin.of(Optional.of(track(7200)), reports, OptionalDouble.empty(), Progress.SILENT);
        assertEquals(7283, join.clockOffsetS(), 6);
        assertEquals(reports.size(), join.placed().size());
        assertTrue(join.notes().get(0).contains("clock offset estimated"));
    }

    @Test
    void aWrongTimeZoneIsNamedWithTheLineToSetAndNothingIsLost() {
        List<WalkReport> reports = new ArrayList<>();
        for (int s = 0; s < 3600; s += 300)
            reports.add(report(Optional.of(START.plusSeconds(s + 2 * 3600)), Optional.empty()));
        TrackJoin join = TrackJoin.of(Optional.of(track(3601)), reports, OptionalDouble.empty(), Progress.SILENT);
        assertEquals(12, join.unplaced().size());
        assertTrue(
                join.notes().toString().contains("clock_offset_s = -7200"),
                join.notes().toString());
        assertEquals(
                12,
                TrackJoin.of(Optional.of(track(3601)), reports, OptionalDouble.of(-7200), Progress.SILENT)
                        .placed()
                        .size());
    }

    /** Two hours off, half of the reports still fall on the track, in wrong places: that is a fault and not a note. */
    @Test
    void aWrongTimeZoneThatHalfFitsIsAFault() {
        List<WalkReport> wrong = new ArrayList<>();
        List<WalkReport> longer = new ArrayList<>();
        for (int s = 0; s < 14400; s += 300) {
            wrong.add(report(Optional.of(START.plusSeconds(s + 2 * 3600)), Optional.empty()));
            longer.add(report(Optional.of(START.plusSeconds(s)), Optional.empty()));
        }
        TrackJoin join = TrackJoin.of(Optional.of(track(14400)), wrong, OptionalDouble.of(10), Progress.SILENT);
        assertTrue(
                join.clockFault().orElseThrow().contains("clock_offset_s = -7190"),
                join.clockFault().get());
        // a walk that went on when the receiver stopped: no shift fits all of it
        TrackJoin stopped = TrackJoin.of(Optional.of(track(9000)), longer, OptionalDouble.empty(), Progress.SILENT);
        assertTrue(stopped.clockFault().isEmpty());
        assertTrue(TrackJoin.of(Optional.of(track(14400)), longer, OptionalDouble.empty(), Progress.SILENT)
                .clockFault()
                .isEmpty());
    }

    @Test
    void aLongGapOfTheTrackPlacesNothing() {
        List<TrackPoint> points = new ArrayList<>();
        for (int s : new int[] {0, 100, 2000})
            points.add(new TrackPoint(at(s), OptionalDouble.empty(), Optional.of(START.plusSeconds(s)), 0, "", ""));
        GpxTrack gappy = new GpxTrack("t", points, List.of(), List.of());
        List<WalkReport> reports = List.of(
                report(Optional.of(START.plusSeconds(50)), Optional.empty()),
                report(Optional.of(START.plusSeconds(900)), Optional.empty()));
        TrackJoin join = TrackJoin.of(Optional.of(gappy), reports, OptionalDouble.of(0), Progress.SILENT);
        assertEquals(1, join.placed().size());
        assertEquals(1, join.unplaced().size());
        assertTrue(
                join.notes().get(0).contains("1 reports fall in gaps"),
                join.notes().toString());
    }
}
