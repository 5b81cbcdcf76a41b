package handreach.desktop;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.scene.Node;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;

/** Takes files dropped on the window and hands each kind, told by the end of its name, to the one who reads it. */
final class FileDrop {
    private final Session session;
    private final Map<String, Consumer<List<Path>>> readers = new LinkedHashMap<>();
    private final BooleanProperty isOver = new SimpleBooleanProperty();
    private Consumer<Path> folders = folder -> {};

    FileDrop(Node target, Session session) {
        this.session = session;
        target.addEventHandler(DragEvent.DRAG_OVER, this::over);
        target.addEventHandler(DragEvent.DRAG_DROPPED, this::dropped);
        target.addEventHandler(DragEvent.DRAG_EXITED_TARGET, gone -> isOver.set(false));
    }

    /** Whether files are held over the window. */
    ReadOnlyBooleanProperty isOver() {
        return isOver;
    }

    /** Files whose names end like this, such as {@code .csv}, go to this reader; all of one drop together. */
    void hand(String ending, Consumer<List<Path>> reader) {
        readers.put(ending.toLowerCase(Locale.ROOT), reader);
    }

    /** Who reads a folder. */
    void handFolders(Consumer<Path> reader) {
        folders = reader;
    }

    private void over(DragEvent event) {
        boolean hasFiles = event.getDragboard().hasFiles();
        isOver.set(hasFiles);
        if (hasFiles) event.acceptTransferModes(TransferMode.COPY);
        event.consume();
    }

    private void dropped(DragEvent event) {
        boolean hasFiles = event.getDragboard().hasFiles();
        isOver.set(false);
        if (hasFiles)
            take(event.getDragboard().getFiles().stream().map(File::toPath).toList());
        event.setDropCompleted(hasFiles);
        event.consume();
    }

    /** What a drop of these files does. */
    void take(List<Path> files) {
        Map<String, List<Path>> byEnding = new LinkedHashMap<>();
        for (Path file : files) {
            if (Files.isDirectory(file)) {
                folders.accept(file);
                continue;
            }
            Optional<String> ending = endingOf(file);
            if (ending.isEmpty())
                session.tell(new Notice(
                        true,
                        file.getFileName() + ": nothing here reads such a file. Read are "
                                + String.join(", ", readers.keySet()) + "."));
            else
                byEnding.computeIfAbsent(ending.get(), fresh -> new ArrayList<>())
                        .add(file);
        }
        byEnding.forEach((ending, those) -> readers.get(ending).accept(List.copyOf(those)));
    }

    private Optional<String> endingOf(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return readers.keySet().stream().filter(name::endsWith).findFirst();
    }
}
