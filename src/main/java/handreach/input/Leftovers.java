package handreach.input;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Files half written by programs that died, swept by the next one that writes the same file. The name of such a file tells what it was to
 * become and which program writes it; whoever lives, on this machine or another, also holds a lock on it.
 */
final class Leftovers {
    /** Versions that did not name their program in the name of the file; nothing takes a day to write. */
    private static final Duration LONG_AGO = Duration.ofDays(1);

    private static final Pattern PART = Pattern.compile("\\.(.+)\\.(\\d{1,18})-[0-9a-f]{1,16}\\.part");
    private static final Pattern OF_OLDER_VERSIONS =
            Pattern.compile("\\.(.+)\\.(?:[0-9a-f]{1,16}\\.part|[0-9a-f-]{36}\\.new)");

    private Leftovers() {}

    /** A name that no other program gives; {@code number} tells apart those of this one. */
    static String part(Path target, long number) {
        return "." + target.getFileName() + "." + ProcessHandle.current().pid() + "-" + Long.toHexString(number)
                + ".part";
    }

    /**
     * Sweeps a folder.
     *
     * @param isMeant whether the file of this name is to be written anew
     * @param isOpen whether this program is writing the part
     */
    static void sweep(Path folder, Predicate<String> isMeant, Predicate<Path> isOpen) {
        try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, ".*.{part,new}")) {
            for (Path part : found)
                if (LockFile.isPlain(part) && !isOpen.test(part) && isDead(part, isMeant)) Files.deleteIfExists(part);
        } catch (IOException | DirectoryIteratorException e) {
            // what cannot be listed or deleted stands in nobody's way; the write itself tells what is wrong with the
            // folder
            return;
        }
    }

    private static boolean isDead(Path part, Predicate<String> isMeant) throws IOException {
        String name = part.getFileName().toString();
        Matcher named = PART.matcher(name);
        if (named.matches())
            return isMeant.test(named.group(1)) && !isAlive(Long.parseLong(named.group(2))) && !isLocked(part);
        Matcher old = OF_OLDER_VERSIONS.matcher(name);
        return old.matches()
                && isMeant.test(old.group(1))
                && Files.getLastModifiedTime(part)
                        .toInstant()
                        .isBefore(Instant.now().minus(LONG_AGO));
    }

    /** A part that has this program's number and is not open is of one that had the number before. */
    private static boolean isAlive(long program) {
        return program != ProcessHandle.current().pid()
                && ProcessHandle.of(program).isPresent();
    }

    private static boolean isLocked(Path part) throws IOException {
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE);
                FileLock lock = channel.tryLock()) {
            return lock == null;
        } catch (OverlappingFileLockException e) {
            return true;
        }
    }
}
