package handreach.desktop;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Window;

/** Asks for the file or folder of a key. */
final class FileAsked {
    private FileAsked() {}

    static Optional<Path> one(Window owner, EntryKey key, Path begin) {
        File first = Files.isDirectory(begin) ? begin.toFile() : null;
        String title = key.words().substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                + key.words().substring(1);
        if (key.kind() == EntryKey.Kind.FOLDER) {
            DirectoryChooser chooser = new DirectoryChooser();
            chooser.setTitle(title);
            chooser.setInitialDirectory(first);
            return Optional.ofNullable(chooser.showDialog(owner)).map(File::toPath);
        }
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.setInitialDirectory(first);
        return Optional.ofNullable(chooser.showOpenDialog(owner)).map(File::toPath);
    }
}
