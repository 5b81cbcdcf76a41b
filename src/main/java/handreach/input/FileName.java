package handreach.input;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/** A file name as somebody wrote it. */
public final class FileName {
    /** What the system's own names are written in; a service or a container often knows plain letters alone. */
    private static final String CHARACTERS = System.getProperty("sun.jnu.encoding", "");

    private FileName() {}

    /** The path that a name means; the reason, in words, goes to the exception's message where it means none. */
    public static Path of(String written) {
        Path path;
        try {
            path = Path.of(written);
        } catch (InvalidPathException e) {
            throw new IllegalArgumentException(refused(e), e);
        }
        if (!path.isAbsolute() && !isUnicode() && !Files.isDirectory(Path.of("").toAbsolutePath()))
            throw new IllegalArgumentException(
                    "is relative to a folder whose name has letters that this session does not know" + advice());
        return path;
    }

    /** Why a name cannot be one, and what to do; after the key, the option or the file. */
    public static String refused(InvalidPathException e) {
        boolean isPlain = e.getInput().chars().allMatch(c -> c < 0x80);
        if (isPlain || isUnicode()) return "cannot be a file name. Use a plain name.";
        return "has letters that this session does not know in file names" + advice();
    }

    /** Where folders are parted by a backslash, the system's names are Unicode whatever the session's letters are. */
    private static boolean isUnicode() {
        return CHARACTERS.isEmpty() || CHARACTERS.startsWith("UTF") || File.separatorChar == '\\';
    }

    private static String advice() {
        return ", since its character set is " + CHARACTERS + ". Put LC_ALL=C.UTF-8 in front of the command.";
    }
}
