package handreach.desktop;

import javafx.application.Application;
import javafx.stage.Stage;

/** What the screen toolkit starts; does nothing but make the window. */
public final class DeskApplication extends Application {
    @Override
    public void start(Stage stage) {
        DeskWindow window = new DeskWindow(stage);
        window.session()
                .showWith(file -> getHostServices().showDocument(file.toUri().toString()));
        window.begin(Desk.first());
        stage.show();
    }
}
