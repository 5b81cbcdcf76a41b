package handreach.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What somebody planted where this program keeps its hidden files. */
class LockFileTest {
    private static final Duration SOON = Duration.ofSeconds(5);

    @TempDir
    Path folder;

    private void assertRefused(Path lock) {
        InputFault fault = assertTimeoutPreemptively(
                SOON,
                () -> assertThrows(InputFault.class, () -> WorkMark.take(lock).orElseThrow()));
        assertTrue(fault.getMessage().contains("is a link, a folder or a pipe"), fault.getMessage());
        assertTrue(Files.exists(lock, LinkOption.NOFOLLOW_LINKS), lock + " is gone");
    }

    private Path pipe(String name) throws Exception {
        Path pipe = folder.resolve(name);
        try {
            Assumptions.assumeTrue(
                    new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0, "no pipes here");
        } catch (IOException none) {
            Assumptions.abort("no mkfifo here");
        }
        return pipe;
    }

    @Test
    void aLinkInPlaceOfALockLeavesTheFileBehindItAsItIs() throws IOException {
        Path letter = Files.writeString(folder.resolve("letter.txt"), "of somebody");
        Path lock = Files.createSymbolicLink(folder.resolve(".reach.lock"), letter);
        assertRefused(lock);
        assertEquals("of somebody", Files.readString(letter));
        Path nowhere = Files.createSymbolicLink(folder.resolve(".walk.lock"), folder.resolve("made.txt"));
        assertRefused(nowhere);
        assertTrue(Files.notExists(folder.resolve("made.txt")));
    }

    @Test
    void aPipeOrFolderInPlaceOfALockIsNotWaitedFor() throws Exception {
        assertRefused(Files.createDirectory(folder.resolve(".relay.lock")));
        assertRefused(pipe(".reach.lock"));
    }

    @Test
    void aPipeNamedLikeALeftoverIsNotWaitedFor() throws Exception {
        Path pipe = pipe(".out.txt.999999999-1f.part");
        Path letter = Files.writeString(folder.resolve("letter.txt"), "of somebody");
        Path link = Files.createSymbolicLink(folder.resolve(".out.txt.999999999-2f.part"), letter);
        assertTimeoutPreemptively(SOON, () -> AtomicFile.write(folder.resolve("out.txt"), out -> out.write('x')));
        assertTrue(Files.exists(pipe) && Files.isSymbolicLink(link) && Files.exists(letter));
    }
}
