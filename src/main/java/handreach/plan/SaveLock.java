package handreach.plan;

import handreach.input.InputFault;
import handreach.input.LockFile;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;

/**
 * The right to save one plan, held by one program at a time between looking whether the plan was changed and changing it. The system
 * takes it back when a program dies, so a killed program never locks a plan for good.
 *
 * <p>The empty file that carries the lock stays beside the plan: were it removed, two programs could each hold a lock on a file of
 * this name. Nothing but this class may open it, since closing any other opening of it would give the lock away (POSIX).
 */
final class SaveLock implements AutoCloseable {
    private final FileChannel channel;

    private SaveLock(FileChannel channel) {
        this.channel = channel;
    }

    /** Takes the right for a plan; if another program has it, that is a fault. */
    static SaveLock of(Path plan) throws IOException {
        Path file = plan.resolveSibling("." + plan.getFileName() + ".lock");
        FileChannel channel = LockFile.open(file);
        if (isHeldElsewhere(channel)) {
            channel.close();
            throw new InputFault(
                    plan.toString(),
                    0,
                    "is being saved by another program at this moment. Nothing was changed. Save again.");
        }
        return new SaveLock(channel);
    }

    private static boolean isHeldElsewhere(FileChannel channel) {
        try {
            return channel.tryLock() == null;
        } catch (OverlappingFileLockException e) {
            return true;
        } catch (IOException e) {
            // a file system without locks: the look for a changed plan is then all there is
            return false;
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
