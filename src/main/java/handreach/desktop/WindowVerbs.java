package handreach.desktop;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Alert;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonType;
import javafx.stage.FileChooser;
import javafx.stage.Stage;

/** Opening, saving and closing, with the question that keeps unsaved edits from getting lost. */
final class WindowVerbs {
    private final Stage stage;
    private final Session session;

    WindowVerbs(Stage stage, Session session, Runnable closed) {
        this.stage = stage;
        this.session = session;
        stage.setOnCloseRequest(request -> {
            request.consume();
            guarded(() -> {
                closed.run();
                stage.close();
            });
        });
    }

    /** Runs a step that would lose unsaved edits only after the person has said what to do with them. */
    void guarded(Runnable step) {
        if (!session.isEdited().get()) {
            step.run();
            return;
        }
        ButtonType save = new ButtonType("Save, then go on", ButtonBar.ButtonData.YES);
        ButtonType lose = new ButtonType("Go on without saving", ButtonBar.ButtonData.NO);
        ButtonType stay = new ButtonType("Stay", ButtonBar.ButtonData.CANCEL_CLOSE);
        Alert alert = new Alert(Alert.AlertType.NONE, "The plan has edits that are not saved yet.", save, lose, stay);
        alert.setTitle("Unsaved edits");
        alert.initOwner(stage);
        Optional<ButtonType> chosen = alert.showAndWait();
        if (chosen.isEmpty() || chosen.get() == stay) return;
        if (chosen.get() == save) session.save(step);
        else step.run();
    }

    /** Files to bring into the plan. */
    Optional<List<Path>> filesAsked() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Bring in");
        List<File> files = chooser.showOpenMultipleDialog(stage);
        return Optional.ofNullable(files)
                .map(all -> all.stream().map(File::toPath).toList());
    }

    void openAsked() {
        guarded(() -> {
            FileChooser chooser = plans("Open a plan");
            File file = chooser.showOpenDialog(stage);
            if (file != null) session.open(file.toPath());
        });
    }

    void open(Path plan) {
        guarded(() -> session.open(plan));
    }

    void save() {
        session.save(() -> {});
    }

    void saveAsAsked() {
        if (session.scene().get() == null) return;
        FileChooser chooser = plans("Save the plan under another name");
        chooser.setInitialDirectory(session.scene().get().file().folder().toFile());
        chooser.setInitialFileName("plan.toml");
        File file = chooser.showSaveDialog(stage);
        if (file != null) session.saveAs(file.toPath(), () -> {});
    }

    private static FileChooser plans(String title) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter("Plans (*.toml)", "*.toml"));
        return chooser;
    }
}
