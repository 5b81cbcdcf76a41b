package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A run of {@code reach} in a process of its own, ended from outside at several moments: what it leaves is whole or not there. */
class S12InterruptTest {
    private static final int SIGINT = 2;
    /** As shells tell the end by a signal: 128 and its number. */
    private static final int TERMINATED = 143;

    private static final int INTERRUPTED = 130;
    /** A run that is done before the signal comes shows nothing and is tried again. */
    private static final int MOST_TRIES = 12;

    private static final int GIVE_UP_S = 120;
    private static final int FILES_OF_A_RUN = 23;
    private static final int LOADOUTS = 6;
    private static final long POLL_NS = 200_000;

    @TempDir
    Path folder;

    private Path out() {
        return folder.resolve("out");
    }

    private Process start() throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx1g",
                "-cp",
                System.getProperty("java.class.path"),
                "handreach.Handreach"));
        command.addAll(List.of("reach", "elevation-samples/urban-coast", "--radius-km", "2", "--only"));
        command.addAll(List.of("numbers,outlines,rasters,overlay,places", "--out"));
        command.add(out().toString());
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile())
                .start();
    }

    /** Waits until the run has got so far that this many files are whole and one more is being written. */
    private void awaitFiles(Process run, int wanted) throws Exception {
        long giveUp = System.nanoTime() + TimeUnit.SECONDS.toNanos(GIVE_UP_S);
        while (run.isAlive() && System.nanoTime() < giveUp) {
            List<String> names = names();
            long parts = names.stream().filter(name -> name.endsWith(".part")).count();
            if (names.size() - parts >= wanted && parts > 0) return;
            LockSupport.parkNanos(POLL_NS);
        }
    }

    private List<String> names() throws IOException {
        if (!Files.exists(out())) return List.of();
        try (var files = Files.list(out())) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (java.io.UncheckedIOException movedMeanwhile) {
            return List.of();
        }
    }

    private void assertEveryFileIsWhole() throws Exception {
        for (String name : names()) {
            Path file = out().resolve(name);
            assertFalse(name.startsWith("."), () -> name + " was left behind");
            if (name.endsWith(".tif") || name.endsWith(".png")) assertNotNull(ImageIO.read(file.toFile()), name);
            else if (name.endsWith("json"))
                assertFalse(new ObjectMapper().readTree(file.toFile()).isEmpty(), name);
            else if (name.endsWith(".html"))
                assertTrue(Files.readString(file).strip().endsWith("</html>"), name);
            else if (name.endsWith(".gpx") || name.endsWith(".xml"))
                DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file.toFile());
            else if (name.endsWith(".kmz")) assertWholeArchive(file);
            else if (name.endsWith(".csv")) assertTrue(Files.readString(file).endsWith("\r\n"), name);
            else throw new AssertionError("an unexpected file: " + name);
        }
    }

    private static void assertWholeArchive(Path file) throws Exception {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(zip.getInputStream(zip.getEntry("doc.kml")));
            // the document, the key, and the odds of each loadout
            assertEquals(2 + LOADOUTS, zip.size());
        }
    }

    private static int end(Process run) throws InterruptedException {
        assertTrue(run.waitFor(GIVE_UP_S, TimeUnit.SECONDS), "it does not end");
        return run.exitValue();
    }

    /** What the page on troubleshooting promises stands on standard error, once and alone, and the exit code is the signal's. */
    private void assertToldOnce(Process run, int code) throws IOException {
        List<String> said = Files.readAllLines(folder.resolve("said.txt"));
        String stopped = "Stopped before it was done. What was written until then is whole; the rest was not written.";
        assertEquals(1, said.stream().filter(stopped::equals).count(), said.toString());
        assertTrue(said.stream().noneMatch(line -> line.contains("defect")), said.toString());
        assertTrue(
                Files.readString(Path.of("docs/troubleshooting.md")).contains(stopped),
                "the page says what is printed");
        assertEquals(code, run.exitValue());
    }

    /** None yet written, the first in the writing, and later ones. */
    @ParameterizedTest
    @ValueSource(ints = {0, 2, 6})
    void toldToEndWhileWritingItLeavesWholeFilesOnly(int files) throws Exception {
        boolean isCaught = false;
        for (int i = 0; i < MOST_TRIES && !isCaught; i++) {
            for (String name : names()) Files.delete(out().resolve(name));
            Process run = start();
            awaitFiles(run, files);
            run.destroy();
            isCaught = end(run) != 0;
            if (isCaught) assertToldOnce(run, TERMINATED);
            assertEveryFileIsWhole();
        }
        assertTrue(isCaught, "every run was done before it could be ended");
        assertTrue(names().size() < FILES_OF_A_RUN, names().toString());
        assertEveryFileIsWhole();
    }

    @Test
    void toldToEndBeforeItWritesItLeavesNothing() throws Exception {
        Process run = start();
        while (run.isAlive() && spentMs(run) < 500) LockSupport.parkNanos(POLL_NS);
        run.destroy();
        assertNotEquals(0, end(run));
        assertToldOnce(run, TERMINATED);
        assertEquals(List.of(), names());
    }

    /** Processor time of the program and of the one it started anew. */
    private static long spentMs(Process run) {
        return Stream.concat(Stream.of(run.toHandle()), run.descendants())
                .mapToLong(each ->
                        each.info().totalCpuDuration().map(Duration::toMillis).orElse(0L))
                .sum();
    }

    @Test
    void interruptedOverAnOlderResultEachFileIsTheOldOrTheNewOneAndARerunWorks() throws Exception {
        assertEquals(0, end(start()), () -> "said " + folder.resolve("said.txt"));
        assertEquals(FILES_OF_A_RUN, names().size());
        boolean isCaught = false;
        for (int i = 0; i < MOST_TRIES && !isCaught; i++) {
            Process second = start();
            awaitFiles(second, FILES_OF_A_RUN);
            interrupt(second);
            isCaught = end(second) != 0;
            if (isCaught) assertToldOnce(second, isDeafToInterrupts() ? TERMINATED : INTERRUPTED);
            assertEquals(FILES_OF_A_RUN, names().size());
            assertEveryFileIsWhole();
        }
        assertTrue(isCaught, "every run was done before it could be interrupted");
        assertEquals(0, end(start()));
        assertEquals(FILES_OF_A_RUN, names().size());
        assertEveryFileIsWhole();
    }

    /** As Ctrl-C does; where this run is itself deaf to it, and so are its children, or on a system without, told to end. */
    private static void interrupt(Process run) throws Exception {
        Path kill = Path.of("/bin/kill");
        if (!Files.isExecutable(kill) || isDeafToInterrupts()) {
            run.destroy();
            return;
        }
        end(new ProcessBuilder(kill.toString(), "-INT", Long.toString(run.pid())).start());
        if (!run.waitFor(3, TimeUnit.SECONDS)) run.destroy();
    }

    /** Whether this process was started with interrupts ignored, as shells start what they put in the background. */
    private static boolean isDeafToInterrupts() throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.isReadable(status)) return false;
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("SigIgn:"))
                .map(line -> Long.parseUnsignedLong(line.substring(7).strip(), 16))
                .anyMatch(ignored -> (ignored & 1L << (SIGINT - 1)) != 0);
    }
}
