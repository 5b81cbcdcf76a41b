package handreach.desktop;

import handreach.plan.PlanFile;
import handreach.study.Scene;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.control.Alert;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonType;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Stage;

/** Opening, saving and closing, with the question that keeps unsaved edits from getting lost. */
final class WindowVerbs {
    private final Stage stage;
    private final Session session;
    private final Runnable closed;

    WindowVerbs(Stage stage, Session session, Runnable closed) {
        this.stage = stage;
        this.session = session;
        this.closed = closed;
        stage.setOnCloseRequest(request -> {
            request.consume();
            leaveAsked();
        });
    }

    /** Closes the window, once nothing is lost by that. */
    void leaveAsked() {
        guarded(() -> {
            closed.run();
            stage.close();
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
        Optional<ButtonType> chosen =
                asked("Unsaved edits", "The plan has edits that are not saved yet.", save, lose, stay);
        if (chosen.isEmpty() || chosen.get() == stay) return;
        if (chosen.get() == save) save(step);
        else step.run();
    }

    private Optional<ButtonType> asked(String title, String words, ButtonType... choices) {
        Alert alert = question(session.palette().get(), words, choices);
        alert.setTitle(title);
        alert.initOwner(stage);
        return alert.showAndWait();
    }

    /** A question in the colours of the window; its answers stand in the order given, whatever the system is used to. */
    static Alert question(Palette palette, String words, ButtonType... choices) {
        Alert alert = new Alert(Alert.AlertType.NONE, words, choices);
        Theme.apply(alert.getDialogPane(), palette);
        alert.getDialogPane().getStyleClass().add("question");
        ((ButtonBar) alert.getDialogPane().lookup(".button-bar")).setButtonOrder(ButtonBar.BUTTON_ORDER_NONE);
        return alert;
    }

    /** Files to bring into the plan. */
    Optional<List<Path>> filesAsked() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Bring in");
        planFolder().ifPresent(chooser::setInitialDirectory);
        List<File> files = chooser.showOpenMultipleDialog(stage);
        return Optional.ofNullable(files)
                .map(all -> all.stream().map(File::toPath).toList());
    }

    /** A folder of elevation tiles. */
    Optional<Path> folderAsked() {
        return folderAsked("Folder of elevation tiles");
    }

    private Optional<Path> folderAsked(String title) {
        DirectoryChooser chooser = new DirectoryChooser();
        chooser.setTitle(title);
        planFolder().ifPresent(chooser::setInitialDirectory);
        return Optional.ofNullable(chooser.showDialog(stage)).map(File::toPath);
    }

    /** A folder that the atlas command made. */
    Optional<Path> atlasAsked() {
        return folderAsked("Folder of an atlas");
    }

    /** One elevation tile. */
    Optional<Path> tileAsked() {
        return oneAsked("Elevation tile", "Elevation tiles", "*.hgt", "*.zip", "*.gz", "*.tif", "*.tiff", "*.asc");
    }

    /** A map picture to lay under the reach. */
    Optional<Path> pictureAsked() {
        return oneAsked("Map picture under the reach", "Map pictures", "*.tif", "*.tiff", "*.mbtiles");
    }

    /** A file with names of places. */
    Optional<Path> namesAsked() {
        return oneAsked("Names on the map", "Named points", "*.gpx", "*.geojson", "*.json");
    }

    private Optional<Path> oneAsked(String title, String kind, String... endings) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(kind, endings));
        planFolder().ifPresent(chooser::setInitialDirectory);
        return Optional.ofNullable(chooser.showOpenDialog(stage)).map(File::toPath);
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
        save(() -> {});
    }

    /** A plan that was never saved is asked for its place first. */
    void save(Runnable then) {
        Scene scene = session.scene().get();
        if (scene != null && scene.file().isFresh()) saveAsAsked(then);
        else session.save(then, this::offerAnotherPlace);
    }

    private void offerAnotherPlace(RuntimeException wrong) {
        session.tell(Notice.of(wrong).with(new Notice.Verb("Save elsewhere\u2026", this::saveAsAsked, true)));
    }

    void saveAsAsked() {
        saveAsAsked(() -> {});
    }

    private void saveAsAsked(Runnable then) {
        Scene scene = session.scene().get();
        if (scene == null) return;
        FileChooser chooser = plans(scene.file().isFresh() ? "Save the plan" : "Save the plan under another name");
        chooser.setInitialFileName(String.valueOf(scene.file().file().getFileName()));
        File file = chooser.showSaveDialog(stage);
        if (file != null) saveTo(file.toPath(), then);
    }

    /** Saves as this file; asks what is to become of the files that the plan names, if they lie in another folder then. */
    private void saveTo(Path chosen, Runnable then) {
        Optional<Path> whole = named(session, chosen, ".toml");
        if (whole.isEmpty()) return;
        Path file = whole.get();
        PlanFile plan = session.scene().get().file();
        Path folder = file.toAbsolutePath().getParent();
        if (folder.equals(plan.folder())) {
            session.saveAs(file, PlanFile.Named.WHERE_THEY_ARE, then);
            return;
        }
        ButtonType stays = new ButtonType("Leave them where they are", ButtonBar.ButtonData.YES);
        ButtonType along = new ButtonType("Copy them along", ButtonBar.ButtonData.NO);
        ButtonType stay = new ButtonType("Stay", ButtonBar.ButtonData.CANCEL_CLOSE);
        Optional<ButtonType> answer = asked(
                "Files of the plan",
                "The plan goes into another folder. Its tiles and other files can stay, and the plan then names them"
                        + " from there; or they are copied beside it.",
                stays,
                along,
                stay);
        if (answer.isEmpty() || answer.get() == stay) return;
        session.saveAs(file, answer.get() == along ? PlanFile.Named.TAKEN_ALONG : PlanFile.Named.WHERE_THEY_ARE, then);
    }

    /** A name as it was typed, with its ending if that was left out. */
    static Path withEnding(Path file, String ending) {
        String name = file.getFileName().toString();
        return name.toLowerCase(Locale.ROOT).endsWith(ending) ? file : file.resolveSibling(name + ending);
    }

    /** The same; a file that is there already under a name that nobody typed is not written over. */
    static Optional<Path> named(Session session, Path chosen, String ending) {
        Path file = withEnding(chosen, ending);
        if (file.equals(chosen) || !Files.exists(file)) return Optional.of(file);
        session.tell(
                new Notice(true, file + " is there already. Type the whole name to write over it, or take another."));
        return Optional.empty();
    }

    /** Where dialogs begin: beside the plan, or else where the person's own files are. */
    private Optional<File> planFolder() {
        return Optional.ofNullable(session.scene().get())
                .map(scene -> scene.file().folder().toFile())
                .or(() -> session.faulty()
                        .get()
                        .map(plan -> plan.file().toAbsolutePath().getParent().toFile()))
                .or(() -> Optional.of(new File(System.getProperty("user.home"))))
                .filter(File::isDirectory);
    }

    /** A dialog for plans, which begins beside the one that is open. */
    FileChooser plans(String title) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter("Plans (*.toml)", "*.toml"));
        planFolder().ifPresent(chooser::setInitialDirectory);
        return chooser;
    }
}
