package handreach.desktop;

import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Long work that goes on: what, how far, and a way to stop it. */
final class WorkPane extends VBox {
    private final Worker worker;

    WorkPane(Worker worker) {
        this.worker = worker;
        getStyleClass().add("work");
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        worker.watched().addListener((ListChangeListener<WatchedWork>) change -> show());
        show();
    }

    private void show() {
        getChildren().clear();
        setVisible(!worker.watched().isEmpty());
        for (WatchedWork work : worker.watched()) {
            Label what = new Label(work.what());
            Label step = new Label();
            step.getStyleClass().add("quiet");
            step.textProperty().bind(work.step());
            ProgressBar bar = new ProgressBar();
            bar.setPrefWidth(180);
            bar.progressProperty().bind(work.share());
            Button stop = new Button("Stop");
            stop.setId("work-stop");
            stop.setOnAction(pressed -> {
                work.stop();
                stop.setDisable(true);
            });
            HBox line = new HBox(10, what, bar, stop, step);
            line.setAlignment(Pos.CENTER_LEFT);
            getChildren().add(line);
        }
    }
}
