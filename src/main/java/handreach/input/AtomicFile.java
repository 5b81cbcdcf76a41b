package handreach.input;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.function.Predicate;

/**
 * A file that is there whole or not at all: written beside its place, forced to disk, then moved over the former one in one step.
 *
 * <p>Whatever goes wrong while writing, what was written beside is removed and the former file stays as it was. Whoever could read the
 * former file can read the new one.
 */
public final class AtomicFile {
    /** What writes the content. */
    @FunctionalInterface
    public interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    private AtomicFile() {}

    /** Writes and moves into place; the folder must be there. What {@link Target} forbids is a fault. */
    public static void write(Path file, Content content) throws IOException {
        Path target = Target.real(file);
        Path beside = UnfinishedFiles.beside(target);
        try {
            fill(beside, content);
            keepRights(target, beside);
            move(beside, target);
            force(target.getParent());
        } finally {
            UnfinishedFiles.close(beside);
        }
    }

    /** Takes away what dead programs left of files with such names in a folder. */
    public static void sweep(Path folder, Predicate<String> names) {
        UnfinishedFiles.sweep(folder, names);
    }

    /** Whether the program is being ended; then whatever could not be written was not written for that reason. */
    public static boolean isEnding() {
        return UnfinishedFiles.isEnding();
    }

    private static void fill(Path beside, Content content) throws IOException {
        try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
            lock(channel);
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            content.writeTo(out);
            out.flush();
            channel.force(true);
        }
    }

    /** Tells others that the part is being written; the lock goes with the channel. Some file systems have none. */
    private static boolean lock(FileChannel channel) {
        try {
            return channel.tryLock() != null;
        } catch (IOException none) {
            return false;
        }
    }

    /** So that a power cut cannot bring the former file back. Some systems open no folder, and then there is no more to be done. */
    private static boolean force(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
            return true;
        } catch (IOException unsupported) {
            return false;
        }
    }

    private static void keepRights(Path former, Path fresh) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(former, PosixFileAttributeView.class);
        if (view != null && Files.exists(former))
            Files.setPosixFilePermissions(fresh, view.readAttributes().permissions());
    }

    private static void move(Path beside, Path target) throws IOException {
        try {
            Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
