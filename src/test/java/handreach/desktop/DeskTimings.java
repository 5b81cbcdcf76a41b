package handreach.desktop;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/**
 * How quick the window answers a hand, printed, never asserted: {@code mvn -Dquick test -Dtest=DeskTimings -Ddesk.timings=true}.
 */
@EnabledIfSystemProperty(named = "desk.timings", matches = "true")
class DeskTimings {
    private static final int ROUNDS = 40;

    @TempDir
    private Path folder;

    @Test
    void printHowQuickTheWindowAnswers() throws InterruptedException {
        long start = System.nanoTime();
        try (WindowRun run = WindowRun.on(folder, "high-mountains")) {
            System.out.printf(Locale.ROOT, "window to full first picture %.2f s%n", (System.nanoTime() - start) / 1e9);
            run.onScreen(() -> run.session()
                    .edit("radius", text -> handreach.plan.PlanText.withValue(text, "area", "radius_km", "10")));
            run.settle();
            Position home = run.onScreen(() -> run.session().stand());
            String name = run.onScreen(() -> run.session()
                    .scene()
                    .get()
                    .plan()
                    .questions()
                    .reach()
                    .from()
                    .orElseThrow());
            double[] coarse = new double[ROUNDS];
            double[] full = new double[ROUNDS];
            double[] repaint = new double[ROUNDS];
            for (int i = 0; i < ROUNDS; i++) {
                Position there = GeodesicLine.destination(home, 25.0 * i, 700);
                coarse[i] = millis(run, there, name, true);
                full[i] = millis(run, there.equals(home) ? home : GeodesicLine.destination(there, 10, 60), name, false);
                run.settle();
                repaint[i] = repaintMillis(run, i);
            }
            print("coarse picture at 10 km on the map", coarse);
            print("full picture at 10 km on the map", full);
            print("another loadout on the map", repaint);
        }
    }

    /** A path whose far end goes under the hand: the longest that the screen thread is away, and each drawing of the cut. */
    @Test
    void printHowSmoothAPathIsPulled() {
        try (WindowRun run = WindowRun.on(folder, "high-mountains")) {
            pull(run, run.onScreen(() -> run.session().stand()));
        }
    }

    private static void pull(WindowRun run, Position home) {
        double[] away = new double[4 * ROUNDS];
        double[] drawing = new double[4 * ROUNDS];
        for (int i = 0; i < away.length; i++) {
            Position there = GeodesicLine.destination(home, 3.0 * i, 2000 + 20 * i);
            long start = System.nanoTime();
            run.onScreen(() -> run.session()
                    .pulled()
                    .set(Optional.of(new PulledPath(
                            PulledPath.End.of(home, Optional.empty()),
                            PulledPath.End.of(there, Optional.empty()),
                            true))));
            double worst = (System.nanoTime() - start) / 1e6;
            while (!run.session().worker().isIdle()) {
                start = System.nanoTime();
                run.onScreen(() -> {});
                worst = Math.max(worst, (System.nanoTime() - start) / 1e6);
            }
            run.settle();
            away[i] = worst;
            ProfileChart chart = run.robot().lookup("#path-profile").query();
            start = System.nanoTime();
            run.onScreen(chart::redraw);
            drawing[i] = (System.nanoTime() - start) / 1e6;
        }
        print("screen thread away while a path is pulled", away);
        System.out.printf(
                Locale.ROOT,
                "  over 50 ms: %d times; the first, which opens the drawer: %.0f ms%n",
                Arrays.stream(away).filter(ms -> ms > 50).count(),
                away[0]);
        print("the cut of a path drawn", drawing);
    }

    /** From the move of the hand to the overlay on the map. */
    private static double millis(WindowRun run, Position there, String name, boolean isCoarseEnough)
            throws InterruptedException {
        CountDownLatch shown = new CountDownLatch(1);
        AtomicLong end = new AtomicLong();
        Runnable watch = () -> {
            LiveReach.Losses losses = run.live();
            if (losses.stand().equals(there) && (isCoarseEnough || !losses.isCoarse())) {
                end.compareAndSet(0, System.nanoTime());
                shown.countDown();
            }
        };
        AtomicLong start = new AtomicLong();
        run.onScreen(() -> {
            run.window().map().laid().addListener((laid, before, now) -> watch.run());
            start.set(System.nanoTime());
            run.session().moving().set(Optional.of(new Session.Moving(name, there)));
        });
        shown.await();
        return (end.get() - start.get()) / 1e6;
    }

    private static double repaintMillis(WindowRun run, int round) throws InterruptedException {
        CountDownLatch shown = new CountDownLatch(1);
        AtomicLong end = new AtomicLong();
        AtomicLong start = new AtomicLong();
        run.onScreen(() -> {
            run.window().map().laid().addListener((laid, before, now) -> {
                end.compareAndSet(0, System.nanoTime());
                shown.countDown();
            });
            start.set(System.nanoTime());
            run.session().carried().set(run.session().scene().get().loadouts().get(1 + round % 2));
        });
        shown.await();
        return (end.get() - start.get()) / 1e6;
    }

    private static void print(String what, double[] millis) {
        double[] sorted = millis.clone();
        Arrays.sort(sorted);
        System.out.printf(
                Locale.ROOT,
                "%s: median %.0f ms, slowest of %d %.0f ms%n",
                what,
                sorted[sorted.length / 2],
                sorted.length,
                sorted[sorted.length - 1]);
    }
}
