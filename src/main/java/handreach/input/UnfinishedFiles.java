package handreach.input;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Predicate;

/**
 * Files being written at this moment, under their provisional names. When the program is told to end, they are deleted and no new
 * one is begun, so that an interrupt leaves nothing half written behind.
 */
final class UnfinishedFiles {
    private static final UnfinishedFiles OPEN = new UnfinishedFiles();

    private final Set<Path> open = new HashSet<>();
    private boolean isWatching;
    private boolean isEnding;

    private UnfinishedFiles() {}

    /** A new empty file beside the target; what dead programs left of the same target is swept. */
    static Path beside(Path target) throws IOException {
        sweep(target.getParent(), target.getFileName().toString()::equals);
        synchronized (OPEN) {
            OPEN.watch();
            Path part = fresh(target);
            OPEN.open.add(part);
            return part;
        }
    }

    /** Sweeps what dead programs left of files with such names. */
    static void sweep(Path folder, Predicate<String> isMeant) {
        Leftovers.sweep(folder, isMeant, part -> {
            synchronized (OPEN) {
                // by the name alone, which no two parts share: the folder may go by several
                return OPEN.open.stream().anyMatch(one -> one.getFileName().equals(part.getFileName()));
            }
        });
    }

    /** With the rights of any new file; the usual maker of temporary files gives them to the owner alone. */
    private static Path fresh(Path target) throws IOException {
        while (true) {
            try {
                return Files.createFile(target.resolveSibling(
                        Leftovers.part(target, ThreadLocalRandom.current().nextLong())));
            } catch (FileAlreadyExistsException taken) {
                continue;
            }
        }
    }

    /** A file that is to be deleted when the program ends, like a part. */
    static void open(Path file) {
        synchronized (OPEN) {
            OPEN.watch();
            OPEN.open.add(file);
        }
    }

    /** The part is finished and in its place, or given up: in either case nothing is left of it. */
    static void close(Path part) throws IOException {
        synchronized (OPEN) {
            OPEN.open.remove(part);
            Files.deleteIfExists(part);
        }
    }

    /** Whether the program is being ended; then whatever fails fails for that reason. */
    static boolean isEnding() {
        synchronized (OPEN) {
            return OPEN.isEnding;
        }
    }

    private void watch() {
        if (isEnding) throw new CancellationException("the program is ending");
        if (isWatching) return;
        try {
            Runtime.getRuntime().addShutdownHook(new Thread(UnfinishedFiles::end, "part files"));
            isWatching = true;
        } catch (IllegalStateException ending) {
            throw new CancellationException("the program is ending");
        }
    }

    private static void end() {
        synchronized (OPEN) {
            OPEN.isEnding = true;
            for (Path part : OPEN.open) if (!part.toFile().delete()) continue;
        }
    }
}
