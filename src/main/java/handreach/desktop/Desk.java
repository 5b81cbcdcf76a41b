package handreach.desktop;

import handreach.input.InputFault;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javafx.application.Application;

/** Opens the window. Returns when it is closed. */
public final class Desk {
    /** The toolkit makes the application itself and hands nothing over but words. */
    private static final AtomicReference<Optional<FirstPlan>> FIRST = new AtomicReference<>(Optional.empty());

    private Desk() {}

    /** Opens the window on a plan, or on the plan used last, or on the sample. */
    public static void open(Optional<Path> plan) {
        FIRST.set(FirstPlan.of(plan));
        try {
            Application.launch(DeskApplication.class);
        } catch (UnsupportedOperationException noScreen) {
            throw new InputFault(
                    "desk",
                    0,
                    "no screen to open a window on (" + noScreen.getMessage()
                            + "). Start it in a graphical session; all else works by command.");
        }
    }

    static Optional<FirstPlan> first() {
        return FIRST.get();
    }
}
