package handreach.desktop;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.application.Application;
import javafx.stage.Stage;

/** What the screen toolkit starts; does nothing but make the window. */
public final class DeskApplication extends Application {
    @Override
    public void start(Stage stage) {
        DeskWindow window = new DeskWindow(stage);
        List<String> given = getParameters().getRaw();
        window.begin(given.isEmpty() ? Optional.empty() : Optional.of(Path.of(given.get(0))));
        stage.show();
    }
}
