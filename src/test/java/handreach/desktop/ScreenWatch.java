package handreach.desktop;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.ToDoubleFunction;
import javafx.application.Platform;

/**
 * Asks the screen thread again and again for a sign of life. A wait has two lengths: by the clock, and what the screen thread and the
 * thread that draws for it worked meanwhile, in their processor time. On a busy machine the first is the machine's, the second the
 * program's.
 */
final class ScreenWatch implements AutoCloseable {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final int LOOK_EVERY_MS = 25;

    private final Queue<Wait> waits = new ConcurrentLinkedQueue<>();
    private final AtomicBoolean isOver = new AtomicBoolean();
    private final Thread screen;
    private final Thread drawing;
    private final long everyMs;
    private final long toldMs;
    private final Thread watch;

    /**
     * One wait, in ms.
     *
     * @param clockMs by the clock
     * @param ownMs what the screen thread and the drawing thread worked in it
     * @param screenMs what the screen thread alone worked in it
     */
    record Wait(double clockMs, double ownMs, double screenMs) {}

    private ScreenWatch(Thread screen, long everyMs, long toldMs) {
        this.screen = screen;
        this.drawing = drawing();
        this.everyMs = everyMs;
        this.toldMs = toldMs;
        this.watch = new Thread(this::look);
        watch.setDaemon(true);
        watch.start();
    }

    /** A wait of at least {@code toldMs} is told with what the screen thread was at. */
    static ScreenWatch on(WindowRun run, long everyMs, long toldMs) {
        return new ScreenWatch(run.onScreen(Thread::currentThread), everyMs, toldMs);
    }

    private void look() {
        List<String> seen = new ArrayList<>();
        while (!isOver.get()) {
            AtomicReference<Wait> back = new AtomicReference<>();
            long asked = System.nanoTime();
            long drawn = THREADS.getThreadCpuTime(drawing.getId());
            long worked = THREADS.getThreadCpuTime(screen.getId());
            Platform.runLater(() -> {
                double screenMs = (THREADS.getThreadCpuTime(screen.getId()) - worked) / 1e6;
                double drawnMs = (THREADS.getThreadCpuTime(drawing.getId()) - drawn) / 1e6;
                back.set(new Wait((System.nanoTime() - asked) / 1e6, screenMs + drawnMs, screenMs));
            });
            while (back.get() == null && !isOver.get()) {
                long awayMs = (System.nanoTime() - asked) / 1_000_000;
                if (awayMs > toldMs + (long) LOOK_EVERY_MS * seen.size()) seen.add(at(screen));
                LockSupport.parkNanos(1_000_000);
            }
            Wait wait = back.get();
            if (wait == null) return;
            waits.add(wait);
            if (!seen.isEmpty())
                System.out.printf(
                        Locale.ROOT,
                        "away for %.0f ms, %.0f of them its own: %s%n",
                        wait.clockMs,
                        wait.ownMs,
                        String.join("; ", seen));
            seen.clear();
            LockSupport.parkNanos(everyMs * 1_000_000);
        }
    }

    private static Thread drawing() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().startsWith("QuantumRenderer"))
                .findFirst()
                .orElseThrow();
    }

    /** Lengths of all waits so far, shortest first. */
    double[] sorted(ToDoubleFunction<Wait> length) {
        return waits.stream().mapToDouble(length).sorted().toArray();
    }

    /** A distribution in words. */
    static String words(double[] sorted) {
        return String.format(
                Locale.ROOT,
                "median %.1f, 90 %% %.0f, 99 %% %.0f, 99.9 %% %.0f, longest %.0f; over 50 ms %d, over 200 ms %d",
                share(sorted, 0.5),
                share(sorted, 0.9),
                share(sorted, 0.99),
                share(sorted, 0.999),
                share(sorted, 1),
                over(sorted, 50),
                over(sorted, 200));
    }

    private static double share(double[] sorted, double share) {
        return sorted[(int) Math.min(sorted.length - 1.0, share * sorted.length)];
    }

    private static long over(double[] sorted, double ms) {
        return Arrays.stream(sorted).filter(each -> each > ms).count();
    }

    /** What the screen thread is at, and the drawing thread where it waits for that one. */
    private static String at(Thread screen) {
        String own = callsOf(screen);
        if (!own.contains("waitForRendering")) return own;
        return own + " for " + callsOf(drawing());
    }

    /** The innermost call and the last ones that tell something. */
    private static String callsOf(Thread thread) {
        List<StackTraceElement> calls = List.of(thread.getStackTrace());
        if (calls.isEmpty()) return "nothing";
        List<String> own = calls.stream()
                .filter(call -> call.getClassName().startsWith("handreach.")
                        || call.getClassName().startsWith("com.sun.javafx.tk")
                        || call.getClassName().contains(".NG")
                        || call.getClassName().startsWith("com.sun.prism.sw")
                        || call.getClassName().startsWith("javafx.scene.Scene"))
                .limit(6)
                .map(ScreenWatch::brief)
                .toList();
        return brief(calls.get(0)) + " < " + String.join(" < ", own);
    }

    private static String brief(StackTraceElement call) {
        String name = call.getClassName();
        return name.substring(name.lastIndexOf('.') + 1) + "." + call.getMethodName() + ":" + call.getLineNumber();
    }

    @Override
    public void close() {
        isOver.set(true);
        try {
            watch.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
