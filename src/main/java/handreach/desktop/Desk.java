package handreach.desktop;

import handreach.input.InputFault;
import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;

/** Opens the window. Returns when it is closed. */
public final class Desk {
    private Desk() {}

    /** Opens the window on a plan, or on the plan used last, or on the sample. */
    public static void open(Optional<Path> plan) {
        String[] arguments = plan.map(path -> new String[] {path.toString()}).orElse(new String[0]);
        try {
            Application.launch(DeskApplication.class, arguments);
        } catch (UnsupportedOperationException noScreen) {
            throw new InputFault(
                    "desk",
                    0,
                    "no screen to open a window on (" + noScreen.getMessage()
                            + "). Start it in a graphical session; all else works by command.");
        }
    }
}
