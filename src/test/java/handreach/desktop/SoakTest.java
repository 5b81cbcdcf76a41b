package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.lang.management.ManagementFactory;
import java.lang.ref.WeakReference;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.management.JMException;
import javax.management.ObjectName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * A long day at the window in a short loop: a position goes round, layers change, edits are made and taken back. Memory may not
 * grow with the number of moves. Twenty moves as a rule; {@code -Dsoak.moves=3000} stands for a day of a move every half minute.
 */
@Isolated
class SoakTest {
    private static final int MOVES = Integer.getInteger("soak.moves", 20);
    private static final int STRETCHES = 3;
    private static final double ALLOWED_GROWTH_MB = 24;
    /** What the window on the forest sample may add to what the process of the tests holds already; docs/performance.md states it. */
    private static final double ALLOWED_MB = 200;

    private static final int COLLECTIONS = 4;

    @TempDir
    private Path folder;

    @Test
    void memoryDoesNotGrowWithTheNumberOfMoves() {
        double before = countedMb();
        try (WindowRun run = WindowRun.on(folder, "forest-hills")) {
            Position home = run.position("spike camp");
            List<WeakReference<LiveReach.Losses>> old = new ArrayList<>();
            move(run, home, 0, MOVES / 4 + 5, old);
            double early = aliveMb(run);
            int moved = MOVES / 4 + 5;
            double late = early;
            // what other tests of the process left behind may still move in one stretch; a leak grows in every one
            for (int stretch = 0; stretch < STRETCHES; stretch++) {
                early = late;
                move(run, home, moved, moved + MOVES, old);
                moved += MOVES;
                late = aliveMb(run);
                if (late - early < ALLOWED_GROWTH_MB) break;
            }
            long alive =
                    old.stream().filter(reference -> reference.get() != null).count();
            System.out.printf(
                    Locale.ROOT,
                    "soak: %d moves, heap %.1f MB before the last stretch, %.1f MB at the end, %d of %d old pictures still held%n",
                    moved,
                    early,
                    late,
                    alive,
                    old.size());
            assertTrue(late - early < ALLOWED_GROWTH_MB, "heap grew from " + early + " to " + late + " MB");
            assertTrue(late - before < ALLOWED_MB, late + " MB are alive, " + before + " before");
            assertTrue(alive <= 3, alive + " old pictures are still held");
        }
    }

    private static void move(
            WindowRun run, Position home, int from, int to, List<WeakReference<LiveReach.Losses>> old) {
        for (int i = from; i < to; i++) {
            Position there = GeodesicLine.destination(home, 37.0 * i, 300 + 40 * (i % 20));
            run.onScreen(() -> run.session().moving().set(Optional.of(new Session.Moving("spike camp", there))));
            run.await(() -> run.live().stand().equals(there));
            old.add(new WeakReference<>(run.live()));
            if (i % 4 == 0) {
                run.onScreen(() -> new PlaceVerbs(run.session()).move("spike camp", there));
                run.settle();
                run.onScreen(run.session()::undo);
                run.settle();
            }
            Layer layer = Layer.values()[i % 4];
            run.onScreen(() -> run.session().layer().set(layer));
            if (i % 5 == 0) run.settle();
        }
        run.onScreen(() -> run.session().moving().set(Optional.empty()));
        run.settle();
    }

    /**
     * What stays alive, as the virtual machine itself counts it: the least of several full collections with the screen at rest
     * between them, since what the toolkit holds weakly goes only with a later one.
     */
    private static double aliveMb(WindowRun run) {
        double least = Double.MAX_VALUE;
        for (int i = 0; i < COLLECTIONS; i++) {
            run.settle();
            least = Math.min(least, countedMb());
        }
        return least;
    }

    private static double countedMb() {
        try {
            Object histogram = ManagementFactory.getPlatformMBeanServer()
                    .invoke(
                            new ObjectName("com.sun.management:type=DiagnosticCommand"),
                            "gcClassHistogram",
                            new Object[] {new String[0]},
                            new String[] {String[].class.getName()});
            String total = ((String) histogram)
                    .lines()
                    .filter(line -> line.startsWith("Total"))
                    .findFirst()
                    .orElseThrow();
            return Long.parseLong(total.strip().split("\\s+")[2]) / 1e6;
        } catch (JMException e) {
            throw new IllegalStateException(e);
        }
    }
}
