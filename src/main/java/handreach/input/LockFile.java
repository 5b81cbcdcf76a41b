package handreach.input;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Hidden files that carry a lock. Whoever made the folder may have put a link, a pipe or a folder in the place of one: a link would have
 * some other file of the user's emptied, and a pipe would be waited for without end.
 */
public final class LockFile {
    private LockFile() {}

    /** Opens it for writing, and makes it where it is not there; what is no plain file is a fault and stays as it is. */
    public static FileChannel open(Path file) throws IOException {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !isPlain(file))
            throw new InputFault(
                    file.toString(),
                    0,
                    "stands where this program keeps a lock, and is a link, a folder or a pipe. Nothing was changed. Remove it, or name"
                            + " another folder.");
        return FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
    }

    /** Whether it is a file, and no link to one. */
    static boolean isPlain(Path file) {
        return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
    }
}
