package handreach.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.reach.StoppedAfter;
import handreach.walk.NextWalk;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The studies of walks tell how far they are, and end where nobody wants their answer any more. */
class WalkStopTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills");
    private static final Scene SCENE = Scene.open(PlanFile.open(SAMPLE));

    private static void compared(Progress progress) {
        WalkStudy.run(SCENE, progress);
    }

    private static void proposed(Progress progress) {
        WalkNextStudy.run(
                SCENE,
                WalkNextAnswer.Decision.LOADOUT,
                NextWalk.Instrument.COPY,
                List.of(SAMPLE.resolve("walk-track.gpx")),
                4,
                progress);
    }

    private static StoppedAfter watched(Consumer<Progress> study) {
        StoppedAfter watcher = StoppedAfter.never();
        study.accept(watcher);
        return watcher;
    }

    @Test
    void theyTellTheirStepsInOrderUpToTheWhole() {
        StoppedAfter compared = watched(WalkStopTest::compared);
        assertEquals(
                List.of(
                        "reading the track of round the camp",
                        "reading the reports of round the camp",
                        "predicting round the camp",
                        "learning",
                        "checking what was learned",
                        "the worst places"),
                List.copyOf(compared.steps().keySet()));
        StoppedAfter proposed = watched(WalkStopTest::proposed);
        assertEquals(
                List.of("reading tracks", "predicting along the tracks", "what is at stake", "choosing stops"),
                List.copyOf(proposed.steps().keySet()));
        for (StoppedAfter watcher : List.of(compared, proposed)) {
            List<Double> shares = new ArrayList<>(watcher.steps().values());
            assertEquals(shares.stream().sorted().toList(), shares);
            assertEquals(0, shares.get(0));
            assertEquals(1, watcher.most());
        }
    }

    @TestFactory
    Stream<DynamicTest> stoppedAtAStepTheComparisonGoesNoFurther() {
        return stoppedAtEachStep(WalkStopTest::compared, "the worst places");
    }

    @TestFactory
    Stream<DynamicTest> stoppedAtAStepTheProposalGoesNoFurther() {
        return stoppedAtEachStep(WalkStopTest::proposed, "");
    }

    /** Each thread may finish the piece it has in hand and tell of it; nobody begins another. */
    private static Stream<DynamicTest> stoppedAtEachStep(Consumer<Progress> study, String last) {
        return watched(study).steps().keySet().stream()
                .filter(step -> !step.equals(last))
                .map(step -> DynamicTest.dynamicTest(step, () -> {
                    StoppedAfter watcher = StoppedAfter.hearing(step);
                    assertThrows(CancellationException.class, () -> study.accept(watcher));
                    List<String> afterwards = watcher.afterwards();
                    assertTrue(afterwards.size() < Scene.threads(), afterwards.toString());
                }));
    }

    /** From the first question to the last, a stop is heard at once. */
    @Test
    void whateverIsAskedAStopIsHeard() {
        int questions = watched(WalkStopTest::proposed).asked();
        for (int i = 1; i <= 10; i++) {
            StoppedAfter watcher = StoppedAfter.questions(questions * i / 10);
            assertThrows(CancellationException.class, () -> proposed(watcher));
            assertTrue(watcher.asked() < questions * i / 10 + Scene.threads(), watcher.asked() + " questions");
        }
    }
}
