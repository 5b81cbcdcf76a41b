package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * Random hands on the real window: nothing may throw, and the screen thread may never be away for long. Eight seconds as a
 * rule; {@code -Dmonkey.seconds=60} for the long run, which also holds the screen thread to 200 ms (on a quiet machine).
 */
@Isolated
class MonkeyTest {
    private static final int SECONDS = Integer.getInteger("monkey.seconds", 8);
    private static final long SEED = Long.getLong("monkey.seed", 20_261_125L);
    /** Beyond this a person would think that the window hangs, however busy the machine is. */
    private static final double HANGS_MS = 5000;

    private static final double SWIFT_MS = 200;
    /** A wait this long is told with what the screen thread was at. */
    private static final long TOLD_MS = 110;

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
        List<Throwable> thrown = new CopyOnWriteArrayList<>();
        try (WindowRun run = WindowRun.on(folder, "forest-hills")) {
            run.onScreen(
                    () -> Thread.currentThread().setUncaughtExceptionHandler((thread, wrong) -> thrown.add(wrong)));
            AtomicBoolean isOver = new AtomicBoolean();
            AtomicLong worstNs = new AtomicLong();
            Thread watch = watch(run.onScreen(Thread::currentThread), isOver, worstNs);
            int steps = play(run, new Random(SEED));
            isOver.set(true);
            watch.join();
            run.settle();
            run.snapshot("after-the-monkey");
            double worstMs = worstNs.get() / 1e6;
            System.out.printf(
                    Locale.ROOT,
                    "monkey: seed %d, %d steps in %d s, screen thread away at most %.0f ms%n",
                    SEED,
                    steps,
                    SECONDS,
                    worstMs);
            assertEquals(List.of(), thrown);
            List<String> defects = run.noticeTexts().stream()
                    .filter(text -> text.contains("A defect of the program"))
                    .toList();
            assertEquals(List.of(), defects);
            double allowedMs = SECONDS >= 60 ? SWIFT_MS : HANGS_MS;
            assertTrue(worstMs < allowedMs, "the screen thread was away for " + worstMs + " ms");
        }
    }

    /** Asks the screen thread again and again for a sign of life and notes the longest wait. */
    private static Thread watch(Thread screen, AtomicBoolean isOver, AtomicLong worstNs) {
        Thread thread = new Thread(() -> {
            AtomicBoolean isBack = new AtomicBoolean(true);
            long asked = 0;
            boolean isTold = false;
            while (!isOver.get()) {
                if (!isBack.get() && !isTold && System.nanoTime() - asked > TOLD_MS * 1_000_000L) {
                    isTold = true;
                    System.out.println("the screen thread is busy: " + List.of(screen.getStackTrace()));
                }
                if (isBack.getAndSet(false)) {
                    isTold = false;
                    asked = System.nanoTime();
                    long since = asked;
                    Platform.runLater(() -> {
                        worstNs.accumulateAndGet(System.nanoTime() - since, Math::max);
                        isBack.set(true);
                    });
                }
                Thread.onSpinWait();
                java.util.concurrent.locks.LockSupport.parkNanos(5_000_000);
            }
        });
        thread.setDaemon(true);
        thread.start();
        return thread;
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
