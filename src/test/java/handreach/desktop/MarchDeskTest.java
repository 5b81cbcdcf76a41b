package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sweep while a hand drags, the march once it rests, where the program has chosen the march. */
class MarchDeskTest {
    /** Longest stretch of the screen thread's own work that is no wait, ms: some pictures of a slow machine. */
    private static final double NO_WAIT_MS = 400;

    @TempDir
    Path folder;

    private WindowRun run;
    private final List<LiveReach.Losses> shown = new CopyOnWriteArrayList<>();

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private void begin(String model) throws IOException {
        WindowRun.copy(Path.of("elevation-samples", "high-mountains"), folder.resolve("plan"));
        WindowRun.copy(Path.of("elevation-samples", "invented-bench"), folder.resolve("invented-bench"));
        Path plan = folder.resolve("plan").resolve("plan.toml");
        Files.writeString(
                plan,
                Files.readString(plan)
                        .replace("radius_km = 10\n", "radius_km = 4\n")
                        .replace("cell_m = 30", "cell_m = 60\nmodel = \"" + model + "\"")
                        .replace("bearing_step_deg = 5", "bearing_step_deg = 30"));
        RecentPlans.wayShown();
        run = WindowRun.bare(folder, Optional.of(plan));
        run.await(() -> run.session().scene().get() != null);
        run.onScreen(() -> {
            if (run.live() != null) shown.add(run.live());
            run.window().live().losses().addListener((losses, before, now) -> shown.add(now));
        });
    }

    private static boolean isBy(LossModel model, LiveReach.Losses losses) {
        return losses != null && !losses.isCoarse() && losses.model().equals(model);
    }

    private String key() {
        Node key = run.node("#map-key");
        return run.onScreen(() -> key.lookupAll(".label").stream()
                .map(label -> ((Label) label).getText())
                .reduce("", (a, b) -> a + " " + b));
    }

    @Test
    void theMarchArrivesWhenTheHandRestsAndGoesWhenItMoves() throws IOException {
        begin("auto");
        run.await(() -> isBy(LossModels.FULL_WAVE, run.live()));
        run.settle();
        assertTrue(isBy(
                LossModels.HANDHELD,
                shown.stream().filter(one -> !one.isCoarse()).findFirst().orElseThrow()));
        assertTrue(key().contains("By full-wave."), key());
        assertTrue(run.noticeTexts().stream().noneMatch(told -> told.contains("chosen by the program")));
        Label choice = run.node("#model-choice");
        assertTrue(choice.getText().startsWith("The model is full-wave, chosen by the program"), choice.getText());
        run.snapshot("march-at-rest");
        Position before = run.position("staging meadow");
        Point2D from = run.pixel(before);
        try (ScreenWatch watch = ScreenWatch.on(run, 5, 10_000)) {
            run.robot().drag(from, MouseButton.PRIMARY).moveTo(from.add(20, 20)).moveTo(from.add(40, 40));
            run.await(() -> isBy(LossModels.HANDHELD, run.live())
                    && run.session().moving().get().isPresent()
                    && run.live()
                            .stand()
                            .equals(run.session().moving().get().get().to()));
            run.await(() -> key().contains("Live by handheld; full-wave follows once the hand rests."));
            run.snapshot("march-under-the-hand");
            run.robot().drop();
            run.settle();
            double[] own = watch.sorted(ScreenWatch.Wait::screenMs);
            assertTrue(own[own.length - 1] < NO_WAIT_MS, ScreenWatch.words(own));
        }
        Position after = run.position("staging meadow");
        assertNotEquals(before, after);
        assertTrue(isBy(LossModels.FULL_WAVE, run.live()));
        assertEquals(after, run.live().stand());
        assertTrue(key().contains("By full-wave."), key());
    }

    @Test
    void aMarchUnderWayIsGivenUpForTheNextDrag() throws IOException {
        begin("auto");
        run.await(() -> run.window().reach().found().get() != null);
        Position before = run.position("staging meadow");
        Point2D from = run.pixel(before);
        run.robot().drag(from, MouseButton.PRIMARY).moveTo(from.add(30, 10)).moveTo(from.add(50, 20));
        run.await(() -> run.session().moving().get().isPresent());
        assertFalse(
                shown.stream().anyMatch(one -> isBy(LossModels.FULL_WAVE, one)), "it was there before the hand moved");
        run.await(() -> run.session().worker().isIdle());
        assertFalse(
                shown.stream().anyMatch(one -> isBy(LossModels.FULL_WAVE, one)), "nothing is marched under the hand");
        run.robot().drop();
        run.settle();
        List<LiveReach.Losses> marched =
                shown.stream().filter(one -> isBy(LossModels.FULL_WAVE, one)).toList();
        assertEquals(1, marched.size());
        assertEquals(run.position("staging meadow"), marched.get(0).stand());
    }

    @Test
    void aMarchThatThePlanNamesIsLeftToTheReport() throws IOException {
        begin("full-wave");
        run.await(() -> isBy(LossModels.HANDHELD, run.live()));
        run.settle();
        assertFalse(shown.stream().anyMatch(one -> isBy(LossModels.FULL_WAVE, one)));
        assertTrue(key().contains("Live by handheld; the report uses full-wave."), key());
    }
}
