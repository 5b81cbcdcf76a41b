package handreach.input;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ThreadLocalRandom;

/**
 * A hidden file that is there while a program works on something that only one may work on at a time. It is taken away at the end,
 * also when the program is told to end; one that a killed program left is taken over, since the system takes its lock back.
 */
public final class WorkMark implements AutoCloseable {
    /** Marks of this program: the system's locks are those of whole programs, and opening a file anew would give its lock away. */
    private static final Set<Path> OWN = new HashSet<>();

    private static final int LONGEST = 4096;

    private final Path file;
    private final FileChannel channel;

    private WorkMark(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /** Takes the mark; empty if somebody has it. */
    public static Optional<WorkMark> take(Path named) throws IOException {
        Path folder = named.toAbsolutePath().getParent().toRealPath();
        Path file = folder.resolve(named.getFileName());
        synchronized (OWN) {
            if (OWN.contains(file)) return Optional.empty();
            FileChannel channel = LockFile.open(file);
            if (isHeldElsewhere(channel) || !isStillThere(file, channel)) {
                channel.close();
                return Optional.empty();
            }
            UnfinishedFiles.open(file);
            OWN.add(file);
            return Optional.of(new WorkMark(file, channel));
        }
    }

    private static boolean isHeldElsewhere(FileChannel channel) {
        try {
            return channel.tryLock() == null;
        } catch (IOException none) {
            // a file system without locks: what is written is whole all the same
            return false;
        }
    }

    /** Whoever had it may have taken it away after it was opened here; then the name leads to another file, or to none. */
    private static boolean isStillThere(Path file, FileChannel channel) throws IOException {
        int size = 1 + ThreadLocalRandom.current().nextInt(LONGEST);
        channel.truncate(0);
        channel.write(ByteBuffer.allocate(size));
        return Files.exists(file) && Files.size(file) == size;
    }

    @Override
    public void close() throws IOException {
        synchronized (OWN) {
            OWN.remove(file);
            UnfinishedFiles.close(file);
            channel.close();
        }
    }
}
