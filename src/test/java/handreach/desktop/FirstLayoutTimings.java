package handreach.desktop;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * What the screen thread has to do before something shows for the first time, counted as its processor time: that says the same on a busy
 * machine. Prints, and asks nothing: run by hand, as {@link DeskTimings}.
 */
@Isolated
class FirstLayoutTimings {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    @TempDir
    private Path folder;

    private WindowRun run;
    private final List<String> told = new ArrayList<>();

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    /** The step, and what the toolkit would do with the next picture. */
    private void measure(String what, Runnable step) {
        double ms = run.onScreen(() -> {
            long before = THREADS.getCurrentThreadCpuTime();
            step.run();
            run.stage().getScene().getRoot().applyCss();
            run.stage().getScene().getRoot().layout();
            return (THREADS.getCurrentThreadCpuTime() - before) / 1e6;
        });
        told.add(String.format(Locale.ROOT, "%s %.0f", what, ms));
        run.settle();
    }

    @Test
    void printWhatTheScreenThreadDoesAtFirstSights() {
        run = WindowRun.on(folder, "forest-hills");
        for (int question = 1; question <= 5; question++) {
            int number = question;
            measure("question " + number, () -> run.window().way().open(number - 1));
        }
        for (EntryKind kind : EntryKind.values())
            measure("form " + kind.section(), () -> run.window().showEquipment(Entry.of(kind.section())));
        measure("bench", () -> run.window().showBench());
        measure("text", () -> run.window().showPlanText());
        for (HelpPane.Topic topic : HelpPane.Topic.values())
            measure("help " + topic.words(), () -> run.window().showHelp(topic));
        measure("new plan", () -> run.window().showNewPlan());
        measure("night", () -> run.session().palette().set(Palette.NIGHT));
        System.out.println("first layouts, ms of the screen thread: " + String.join(", ", told));
    }
}
