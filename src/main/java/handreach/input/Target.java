package handreach.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Locale;
import java.util.Set;

/**
 * Where something is to be written, looked at before it is: never a file that was read, no folder of tiles, no device and no pipe, no
 * write-protected file. A symbolic link stays, and the file that it leads to is written.
 */
public final class Target {
    private static final int MOST_LINKS = 40;

    private static final Set<PosixFilePermission> WRITE =
            Set.of(PosixFilePermission.OWNER_WRITE, PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE);

    /** Endings that people and programs take for a kind of file. */
    private static final Set<String> OTHER_KINDS = Set.of(
            ".pdf", ".html", ".htm", ".txt", ".csv", ".json", ".png", ".jpg", ".svg", ".kmz", ".gpx", ".tif", ".toml");

    private Target() {}

    /** Whether a file may be written; what forbids it is a fault. */
    public static void look(Path file, Sources sources) {
        real(file);
        if (sources.has(file))
            throw refused(file, "is one of the files that the answer is made from. Name another file.");
    }

    /** The same of a file whose name must not promise another kind than is written, such as {@code .pdf}. */
    public static void look(Path file, String ending, Sources sources) {
        look(file, sources);
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        String typed = dot <= 0 ? "" : name.substring(dot).toLowerCase(Locale.ROOT);
        if (OTHER_KINDS.contains(typed) && !typed.equals(ending))
            throw new InputFault(
                    file.toString(),
                    0,
                    "would hold another kind of file than its name says. Name it " + name.substring(0, dot) + ending
                            + ".");
    }

    /** The same of a folder and of the files that are to be written into it. */
    public static void lookFolder(Path folder, Iterable<String> names, Sources sources) {
        if (!Files.exists(folder) && Files.isSymbolicLink(folder))
            throw refused(folder, "is a symbolic link that leads to no folder. Name a folder.");
        if (Files.exists(folder) && !Files.isDirectory(folder))
            throw refused(folder, "is a file, a folder is expected. Name a folder.");
        if (sources.isFolder(folder))
            throw refused(folder, "is the folder that the ground is read from. Name another folder.");
        for (String name : names) look(folder.resolve(name), sources);
    }

    /** The file that a name leads to, whether it is there or not. */
    public static Path real(Path file) {
        if (Files.isDirectory(file))
            throw new InputFault(file.toString(), 0, "is a folder, a file name is expected. Name a file in it.");
        if (Files.exists(file) && !Files.isRegularFile(file))
            throw refused(file, "is a device or a pipe, a file is expected. Name a file.");
        Path real = followed(file);
        if (Files.exists(real) && isProtected(real))
            throw refused(file, "is write-protected. Take the protection off, or name another file.");
        return real;
    }

    private static Path followed(Path file) {
        Path at = file.toAbsolutePath();
        try {
            for (int links = 0; Files.isSymbolicLink(at); links++) {
                if (links == MOST_LINKS) throw refused(file, "is a symbolic link that leads to no file. Name a file.");
                at = at.resolveSibling(Files.readSymbolicLink(at));
            }
        } catch (IOException e) {
            throw refused(
                    file, "is a symbolic link that cannot be followed (" + SourceText.reason(e) + "). Name a file.");
        }
        return at;
    }

    /** The administrator may write any file; one that nobody may write is meant to stay even so. */
    private static boolean isProtected(Path file) {
        if (!Files.isWritable(file)) return true;
        PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        try {
            return view != null && view.readAttributes().permissions().stream().noneMatch(WRITE::contains);
        } catch (IOException e) {
            return false;
        }
    }

    private static InputFault refused(Path file, String why) {
        return new InputFault(file.toString(), 0, why + " What is there is unchanged.");
    }
}
