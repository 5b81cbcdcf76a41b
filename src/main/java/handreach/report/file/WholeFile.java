package handreach.report.file;

import handreach.input.InputFault;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.CancellationException;

/**
 * A file that is there whole or not at all: written beside its place, forced to disk, then moved over the old one in one step.
 *
 * <p>A fault, a cancellation or an interrupt while writing removes what was written beside; the old file stays as it was.
 */
public final class WholeFile {
    /** What writes the content. */
    @FunctionalInterface
    public interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    private WholeFile() {}

    public static void write(Path file, String text) {
        write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    public static void write(Path file, byte[] bytes) {
        write(file, out -> out.write(bytes));
    }

    /**
     * Writes and moves into place; folders on the way are made. What cannot be written is an {@link InputFault} that names the
     * file and the reason.
     */
    public static void write(Path file, Content content) {
        Path target = file.toAbsolutePath();
        try {
            if (Files.isDirectory(target))
                throw new InputFault(file.toString(), 0, "is a folder, a file name is expected. Name a file in it.");
            Path folder = target.getParent();
            if (folder != null) Files.createDirectories(folder);
            Path beside = PartFiles.beside(target);
            try {
                fill(beside, content);
                move(beside, target);
            } finally {
                PartFiles.close(beside);
            }
        } catch (IOException e) {
            if (PartFiles.isEnding()) throw new CancellationException("the program is ending");
            throw new InputFault(
                    file.toString(),
                    0,
                    "cannot be written (" + reason(e) + "), what was there before is unchanged."
                            + " Check the rights on the folder and the free space.");
        }
    }

    private static void fill(Path beside, Content content) throws IOException {
        try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            content.writeTo(out);
            out.flush();
            channel.force(true);
        }
    }

    private static void move(Path beside, Path target) throws IOException {
        try {
            Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static String reason(IOException e) {
        if (e instanceof AccessDeniedException) return "access denied";
        if (e instanceof FileAlreadyExistsException) return "a file stands where a folder is needed";
        if (e instanceof FileSystemException f && f.getReason() != null) return f.getReason();
        return e.getMessage() == null || e.getMessage().isBlank() ? "no reason given" : e.getMessage();
    }
}
