package handreach.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.input.SourceText;
import handreach.reach.Progress;
import handreach.reach.StoppedAfter;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What takes long on a long walk asks often whether to go on, and ends at the question that is answered with no. */
class WalkStopTest {
    private static final int REPORTS = 200;

    private static List<WalkPair> levels() {
        return new SimulatedWalk(4, new double[] {0, 2}, new double[] {0, 1}, 7).walk(new Random(2), REPORTS, true);
    }

    private static void stopsAtAnyQuestion(int leastQuestions, Consumer<Progress> work) {
        StoppedAfter whole = StoppedAfter.never();
        work.accept(whole);
        int questions = whole.asked();
        assertTrue(questions >= leastQuestions, questions + " questions");
        for (int number : new int[] {1, questions / 2, questions}) {
            StoppedAfter watcher = StoppedAfter.questions(number);
            assertThrows(CancellationException.class, () -> work.accept(watcher));
            assertEquals(number, watcher.asked());
            assertEquals(List.of(), watcher.afterwards());
        }
    }

    private static void tellsTheWhole(Consumer<Progress> work) {
        StoppedAfter watcher = StoppedAfter.never();
        work.accept(watcher);
        assertEquals(1, watcher.most(), 1e-12);
    }

    @Test
    void weightsAskAtEachReport() {
        List<WalkPair> pairs = levels();
        stopsAtAnyQuestion(REPORTS, progress -> Thinning.weights(pairs, 50, progress));
        tellsTheWhole(progress -> Thinning.weights(pairs, 50, progress));
    }

    @Test
    void theDecorrelationAsksAtEachReport() {
        List<WalkPair> pairs = levels();
        Calibration calibration = Calibration.of(pairs, 50, Priors.USUAL, List.of(), Progress.SILENT);
        stopsAtAnyQuestion(REPORTS, progress -> Likeness.decorrelationM(pairs, calibration, progress));
        tellsTheWhole(progress -> Likeness.decorrelationM(pairs, calibration, progress));
    }

    @Test
    void theCalibrationAsksAtEachReportAndAtEachStepOfItsFits() {
        List<WalkPair> pairs = levels();
        Consumer<Progress> learn = progress -> Calibration.of(pairs, 50, Priors.USUAL, List.of(), progress);
        stopsAtAnyQuestion(REPORTS + 30, learn);
        tellsTheWhole(learn);
    }

    @Test
    void theCheckAsksAtEachReportAndAtEachStepOfTheFitsOfEachStretch() {
        List<WalkPair> pairs = levels();
        Consumer<Progress> check = progress -> BlockedCheck.of(pairs, 50, Priors.USUAL, progress);
        stopsAtAnyQuestion(2 * REPORTS + 5 * 30, check);
        tellsTheWhole(check);
    }

    @Test
    void theProposalAsksAtEachCandidateForEachReport() {
        List<NextWalk.Candidate> places = IntStream.range(0, 50)
                .mapToObj(i -> new NextWalk.Candidate(new Position(36 + 0.01 * i, -84), 0, i - 25, 8))
                .toList();
        NextWalk.Belief belief = new NextWalk.Belief(List.of(List.of(36.0)), 50, NextWalk.Instrument.COPY, 2);
        Consumer<Progress> choose =
                progress -> NextWalk.of(List.of(new NextWalk.Question(0, 1, 1)), places, belief, 3, progress);
        stopsAtAnyQuestion(50 * 3, choose);
        tellsTheWhole(choose);
    }

    @Test
    void settingTheClockAsksAtEachTrial() {
        StringBuilder gpx = new StringBuilder("<gpx><trk><trkseg>");
        List<WalkReport> reports = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            Instant time = Instant.parse("2026-05-04T09:00:00Z").plusSeconds(60L * i);
            Position at = new Position(36 + 0.001 * i, -84);
            gpx.append("<trkpt lat=\"").append(at.latitudeDeg()).append("\" lon=\"-84\"><time>");
            gpx.append(time).append("</time></trkpt>");
            reports.add(new WalkReport(
                    new WalkReport.Origin(i + 2, Optional.of(time.minusSeconds(90)), Optional.of(at)),
                    Reception.copy(true),
                    Direction.BOTH,
                    Optional.empty(),
                    OptionalDouble.empty(),
                    ""));
        }
        Optional<GpxTrack> track = Optional.of(
                GpxText.track("t", gpx.append("</trkseg></trk></gpx>").toString()));
        stopsAtAnyQuestion(1000, progress -> TrackJoin.of(track, reports, OptionalDouble.empty(), progress));
    }

    @Test
    void readingReportsAsksAtEachLine() {
        String rows = IntStream.range(0, REPORTS)
                .mapToObj(i -> "36.2,-84." + i + ",yes\n")
                .collect(Collectors.joining());
        SourceText text = SourceText.of("walk.csv", "latitude,longitude,copy\n" + rows);
        stopsAtAnyQuestion(REPORTS, progress -> ReportFile.read(text, progress));
        tellsTheWhole(progress -> ReportFile.read(text, progress));
    }
}
