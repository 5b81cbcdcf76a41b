package handreach.desktop;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javafx.application.Application;
import javafx.stage.Stage;

/**
 * Opens the window on a plan as {@code desk} does and says when, from the start of the virtual machine, relief and layer came to
 * the screen: the first time, and with the full picture. Run by {@code src/bench/opening-times.sh}.
 */
public final class OpeningTime {
    private static final AtomicReference<Optional<FirstPlan>> FIRST = new AtomicReference<>();

    private OpeningTime() {}

    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");
        FIRST.set(FirstPlan.of(Optional.of(Path.of(args[0]))));
        Application.launch(Opened.class);
    }

    /** The window, watched. */
    public static final class Opened extends Application {
        private long firstMs;

        @Override
        public void start(Stage stage) {
            DeskWindow window = new DeskWindow(stage);
            window.map().laid().addListener((laid, before, now) -> painted(window));
            window.begin(FIRST.get());
            stage.show();
        }

        private void painted(DeskWindow window) {
            if (firstMs == 0) firstMs = sinceStartMs();
            LiveReach.Losses losses = window.live().losses().get();
            if (losses == null || losses.isCoarse()) return;
            System.out.printf(Locale.ROOT, "first map %d ms, full picture %d ms%n", firstMs, sinceStartMs());
            Thread end = new Thread(() -> System.exit(0));
            end.start();
        }

        private static long sinceStartMs() {
            return System.currentTimeMillis()
                    - ManagementFactory.getRuntimeMXBean().getStartTime();
        }
    }
}
