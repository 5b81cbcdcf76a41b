package handreach.report.file;

import handreach.input.AtomicFile;
import handreach.input.InputFault;
import handreach.input.Sources;
import handreach.input.Target;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CancellationException;

/**
 * An answer as a file that is there whole or not at all, by {@link AtomicFile}; what went wrong is told as a fault of the user's.
 *
 * <p>A fault, a cancellation or an interrupt while writing removes what was written beside; the old file stays as it was.
 */
public final class AnswerFile {
    /** What writes the content. */
    @FunctionalInterface
    public interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    private AnswerFile() {}

    public static void write(Path file, String text, Sources sources) {
        write(file, text.getBytes(StandardCharsets.UTF_8), sources);
    }

    public static void write(Path file, byte[] bytes, Sources sources) {
        write(file, out -> out.write(bytes), sources);
    }

    /**
     * Writes and moves into place; folders on the way are made. What must not be written over, by {@link Target}, or cannot be
     * written, is an {@link InputFault} that names the file and the reason.
     *
     * @param sources the files that the content was made from
     */
    public static void write(Path file, Content content, Sources sources) {
        Target.look(file, sources);
        Path target = file.toAbsolutePath();
        try {
            Path folder = target.getParent();
            if (folder != null) Files.createDirectories(folder);
            AtomicFile.write(file, content::writeTo);
        } catch (IOException e) {
            throw notWritten(file, e);
        }
    }

    /** What is to be told when something cannot be written. */
    static RuntimeException notWritten(Path file, IOException e) {
        if (AtomicFile.isEnding()) return new CancellationException("the program is ending");
        return new InputFault(
                file.toString(),
                0,
                "cannot be written (" + reason(e) + "), what was there before is unchanged."
                        + " Check the rights on the folder and the free space.");
    }

    private static String reason(IOException e) {
        if (e instanceof AccessDeniedException) return "access denied";
        if (e instanceof FileAlreadyExistsException) return "a file stands where a folder is needed";
        if (e instanceof FileSystemException f && f.getReason() != null) return f.getReason();
        return e.getMessage() == null || e.getMessage().isBlank() ? "no reason given" : e.getMessage();
    }
}
