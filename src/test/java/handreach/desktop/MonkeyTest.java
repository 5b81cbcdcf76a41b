package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import javafx.geometry.Point2D;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * Random hands on the real window: nothing may throw, and the screen thread may never be away for long. Twenty seconds as a rule;
 * {@code mvn -Dquick -Pmonkey test} runs ten minutes five times, each with other hands, and holds the median of the longest waits to
 * 200 ms (on a quiet machine). The waits are told as a distribution.
 */
@Isolated
class MonkeyTest {
    private static final int SECONDS = Integer.getInteger("monkey.seconds", 8);
    private static final int RUNS = Integer.getInteger("monkey.runs", 1);
    /** From this length on the machine is taken to be quiet. */
    private static final int LONG_S = 60;

    private static final long SEED = Long.getLong("monkey.seed", 20_261_125L);
    /** Beyond this a person would think that the window hangs, however busy the machine is. */
    private static final double HANGS_MS = 5000;

    private static final double SWIFT_MS = 200;
    /** A wait this long is told with what the screen thread was at. */
    private static final long TOLD_MS = 90;

    private static final int LOOK_EVERY_MS = 5;

    private static final List<KeyCode> KEYS = List.of(
            KeyCode.LEFT,
            KeyCode.RIGHT,
            KeyCode.UP,
            KeyCode.DOWN,
            KeyCode.PLUS,
            KeyCode.MINUS,
            KeyCode.HOME,
            KeyCode.P,
            KeyCode.ESCAPE,
            KeyCode.DIGIT1,
            KeyCode.DIGIT4,
            KeyCode.TAB,
            KeyCode.SPACE);

    @TempDir
    private Path folder;

    @Test
    void randomHandsNeitherBreakNorStallTheWindow() throws InterruptedException {
        double[] worst = new double[RUNS];
        for (int i = 0; i < RUNS; i++) worst[i] = worstMs(SEED + i, folder.resolve("run-" + i));
        Arrays.sort(worst);
        double medianMs = worst[RUNS / 2];
        double allowedMs = SECONDS >= LONG_S ? SWIFT_MS : HANGS_MS;
        assertTrue(medianMs < allowedMs, "the screen thread was away for " + medianMs + " ms");
    }

    /** One run of random hands: the longest that the screen thread was away. */
    private static double worstMs(long seed, Path folder) throws InterruptedException {
        List<Throwable> thrown = new CopyOnWriteArrayList<>();
        try (WindowRun run = WindowRun.on(folder, "forest-hills")) {
            run.onScreen(
                    () -> Thread.currentThread().setUncaughtExceptionHandler((thread, wrong) -> thrown.add(wrong)));
            double[] sorted;
            try (ScreenWatch watch = ScreenWatch.on(run, LOOK_EVERY_MS, TOLD_MS)) {
                int steps = play(run, new Random(seed));
                sorted = watch.sorted(ScreenWatch.Wait::clockMs);
                System.out.printf(
                        Locale.ROOT,
                        "monkey: seed %d, %d steps in %d s; %d looks at the screen thread, waits in ms: %s; its own work in"
                                + " them: %s%n",
                        seed,
                        steps,
                        SECONDS,
                        sorted.length,
                        ScreenWatch.words(sorted),
                        ScreenWatch.words(watch.sorted(ScreenWatch.Wait::ownMs)));
            }
            run.settle();
            run.snapshot("after-the-monkey");
            assertEquals(List.of(), thrown);
            List<String> defects = run.noticeTexts().stream()
                    .filter(text -> text.contains("A defect of the program"))
                    .toList();
            assertEquals(List.of(), defects);
            return sorted[sorted.length - 1];
        }
    }

    private static int play(WindowRun run, Random chance) {
        long end = System.nanoTime() + SECONDS * 1_000_000_000L;
        int steps = 0;
        while (System.nanoTime() < end) {
            step(run, chance);
            steps++;
        }
        return steps;
    }

    private static void step(WindowRun run, Random chance) {
        Point2D at = place(run, chance);
        switch (chance.nextInt(12)) {
            case 0, 1 -> run.robot().moveTo(at);
            case 2 -> run.robot().clickOn(at);
            case 3, 4 ->
                run.robot()
                        .drag(at, MouseButton.PRIMARY)
                        .moveTo(place(run, chance))
                        .drop();
            case 5 -> dragTheStand(run, chance);
            case 6 ->
                run.robot()
                        .scroll(
                                1 + chance.nextInt(3),
                                chance.nextBoolean()
                                        ? javafx.geometry.VerticalDirection.UP
                                        : javafx.geometry.VerticalDirection.DOWN);
            case 7 -> run.robot().push(KEYS.get(chance.nextInt(KEYS.size())));
            case 8 ->
                run.onScreen(() -> run.session().layer().set(Layer.values()[chance.nextInt(Layer.values().length)]));
            case 9 ->
                run.onScreen(() -> {
                    if (chance.nextBoolean()) run.session().undo();
                    else run.session().redo();
                });
            case 10 -> run.onScreen(() -> run.window().way().open(chance.nextInt(5)));
            default -> run.robot().rightClickOn(at).push(KeyCode.ESCAPE);
        }
    }

    private static void dragTheStand(WindowRun run, Random chance) {
        run.onScreen(() -> run.window().map().lookAt(run.session().scene().get()));
        Point2D stand = run.pixel(run.onScreen(() -> run.session().stand()));
        run.robot()
                .drag(stand, MouseButton.PRIMARY)
                .moveTo(stand.add(chance.nextInt(120) - 60, chance.nextInt(120) - 60))
                .drop();
    }

    private static Point2D place(WindowRun run, Random chance) {
        return run.onScreen(() -> run.stage()
                .getScene()
                .getRoot()
                .localToScreen(
                        chance.nextDouble() * run.stage().getScene().getWidth(),
                        40 + chance.nextDouble() * (run.stage().getScene().getHeight() - 45)));
    }
}
