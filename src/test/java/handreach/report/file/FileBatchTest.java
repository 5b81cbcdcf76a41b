package handreach.report.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.input.Sources;
import handreach.reach.Progress;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileBatchTest {
    @TempDir
    Path folder;

    private static WholeFile.Content content(String text) {
        return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private List<String> names() throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void filesComeBackInTheOrderTheyWereAdded() throws IOException {
        FileBatch batch = new FileBatch(folder, Sources.NONE);
        for (int i = 0; i < 20; i++) batch.add("file-" + i, content("text " + i));
        List<Path> written = batch.write(Progress.SILENT);
        assertEquals(
                IntStream.range(0, 20)
                        .mapToObj(i -> folder.resolve("file-" + i))
                        .toList(),
                written);
        for (int i = 0; i < 20; i++) assertEquals("text " + i, Files.readString(written.get(i)));
    }

    @Test
    void twoFilesOfOneNameAreAMistake() {
        FileBatch batch = new FileBatch(folder, Sources.NONE);
        batch.add("a", content("1"));
        assertThrows(IllegalArgumentException.class, () -> batch.add("a", content("2")));
    }

    @Test
    void aFaultIsToldAndLeavesNothingHalfWritten() throws IOException {
        Files.createDirectories(folder.resolve("taken"));
        FileBatch batch = new FileBatch(folder, Sources.NONE);
        batch.add("taken", content("x"));
        batch.add("later", content("whole"));
        InputFault fault = assertThrows(InputFault.class, () -> batch.write(Progress.SILENT));
        assertTrue(fault.getMessage().contains("is a folder"), fault.getMessage());
        assertTrue(names().stream().noneMatch(name -> name.endsWith(".part")), names().toString());
    }

    @Test
    void cancellingLeavesWholeFilesOnly() throws IOException {
        AtomicInteger done = new AtomicInteger();
        Progress impatient = new Progress() {
            @Override
            public void done(String what, double share) {
                done.incrementAndGet();
            }

            @Override
            public boolean isCancelled() {
                return done.get() >= 3;
            }
        };
        FileBatch batch = new FileBatch(folder, Sources.NONE);
        for (int i = 0; i < 50; i++) batch.add("file-" + i, content("whole"));
        assertThrows(CancellationException.class, () -> batch.write(impatient));
        List<String> left = names();
        assertTrue(left.size() >= 3 && left.size() < 50, left.toString());
        for (String name : left) assertEquals("whole", Files.readString(folder.resolve(name)));
    }

    @Test
    void anInterruptWhileWritingLeavesNothingHalfWritten() throws IOException {
        FileBatch batch = new FileBatch(folder, Sources.NONE);
        Thread caller = Thread.currentThread();
        batch.add("slow", out -> {
            out.write(new byte[100_000]);
            out.flush();
            caller.interrupt();
            for (int i = 0; i < 10_000; i++) out.write(new byte[100_000]);
        });
        assertThrows(CancellationException.class, () -> batch.write(Progress.SILENT));
        assertTrue(Thread.interrupted(), "the interrupt is kept for the caller");
        assertEquals(List.of(), names());
    }
}
