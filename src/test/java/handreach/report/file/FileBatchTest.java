package handreach.report.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import handreach.input.InputFault;
import handreach.input.Sources;
import handreach.reach.Progress;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileBatchTest {
    @TempDir
    Path folder;

    private static AnswerFile.Content content(String text) {
        return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private List<String> names() throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void filesComeBackInTheOrderTheyWereAdded() throws IOException {
        FileBatch batch = new FileBatch(folder, "sum", Sources.NONE);
        for (int i = 0; i < 20; i++) batch.add("file-" + i, content("text " + i));
        List<Path> written = batch.write(Progress.SILENT).files();
        assertEquals(
                IntStream.range(0, 20)
                        .mapToObj(i -> folder.resolve("file-" + i))
                        .toList(),
                written.subList(0, 20));
        assertEquals(List.of(folder.resolve("sum-files.json")), written.subList(20, written.size()));
        for (int i = 0; i < 20; i++) assertEquals("text " + i, Files.readString(written.get(i)));
    }

    @Test
    void twoFilesOfOneNameAreAMistake() {
        FileBatch batch = new FileBatch(folder, "sum", Sources.NONE);
        batch.add("a", content("1"));
        assertThrows(IllegalArgumentException.class, () -> batch.add("a", content("2")));
    }

    @Test
    void aFaultIsToldAndLeavesNothingHalfWritten() throws IOException {
        Files.createDirectories(folder.resolve("taken"));
        FileBatch batch = new FileBatch(folder, "sum", Sources.NONE);
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
        FileBatch batch = new FileBatch(folder, "sum", Sources.NONE);
        for (int i = 0; i < 50; i++) batch.add("file-" + i, content("whole"));
        assertThrows(CancellationException.class, () -> batch.write(impatient));
        JsonNode manifest = manifest();
        assertFalse(manifest.get("complete").asBoolean());
        Files.delete(folder.resolve("sum-files.json"));
        List<String> left = names();
        assertEquals(left, done(manifest));
        assertTrue(left.size() >= 3 && left.size() < 50, left.toString());
        for (String name : left) assertEquals("whole", Files.readString(folder.resolve(name)));
    }

    @Test
    void anInterruptWhileWritingLeavesNothingHalfWritten() throws IOException {
        FileBatch batch = new FileBatch(folder, "sum", Sources.NONE);
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

    private JsonNode manifest() throws IOException {
        return new ObjectMapper().readTree(Files.readString(folder.resolve("sum-files.json")));
    }

    /** Files that the manifest says are there, whose digests are those of the files. */
    private List<String> done(JsonNode manifest) throws IOException {
        List<String> done = new ArrayList<>();
        for (JsonNode file : manifest.get("files")) {
            if (file.get("sha_256").isNull()) continue;
            Path path = folder.resolve(file.get("name").asText());
            assertEquals(sha256(Files.readAllBytes(path)), file.get("sha_256").asText());
            assertEquals(Files.size(path), file.get("bytes").asLong());
            done.add(file.get("name").asText());
        }
        return done.stream().sorted().toList();
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (java.security.NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private FolderResult write(String... names) {
        FileBatch batch = new FileBatch(folder, "sum", Sources.NONE);
        for (String name : names) batch.add(name, content("text of " + name));
        batch.replacesAll(Pattern.compile("odds-[a-z]+"));
        return batch.write(Progress.SILENT);
    }

    @Test
    void theManifestNamesTheRunAndTheDigestOfEveryFile() throws IOException {
        write("odds-a", "rest");
        JsonNode manifest = manifest();
        assertTrue(manifest.get("complete").asBoolean());
        assertEquals(List.of("odds-a", "rest"), done(manifest));
        String run = manifest.get("run").asText();
        assertEquals(
                sha256(("odds-a " + sha256("text of odds-a".getBytes(StandardCharsets.UTF_8)) + "\nrest "
                                        + sha256("text of rest".getBytes(StandardCharsets.UTF_8)) + "\n")
                                .getBytes(StandardCharsets.UTF_8))
                        .substring(0, 16),
                run);
        for (JsonNode file : manifest.get("files"))
            assertEquals(run, file.get("run").asText());
        write("odds-a", "rest");
        assertEquals(manifest, manifest(), "the same answer, the same manifest");
        assertEquals(List.of("odds-a", "rest", "sum-files.json"), names());
    }

    @Test
    void whatTheAnswerNoLongerHasGoesUnlessItIsNotOurs() throws IOException {
        write("odds-a", "odds-b", "odds-c", "rest");
        Files.writeString(folder.resolve("odds-c"), "changed by hand");
        Files.writeString(folder.resolve("odds-d"), "never ours");
        String first = manifest().get("run").asText();
        FolderResult second = write("odds-b");
        assertEquals(List.of(folder.resolve("odds-a")), second.removed());
        assertEquals(List.of("odds-b", "odds-c", "odds-d", "rest", "sum-files.json"), names());
        JsonNode files = manifest().get("files");
        assertEquals(3, files.size(), "that which stays of the earlier run is told as such");
        assertEquals(manifest().get("run"), files.get(0).get("run"));
        assertNotEquals(first, files.get(0).get("run").asText());
        assertEquals(first, files.get(1).get("run").asText());
    }

    /** A manifest may come from somebody else: it has nothing deleted but what a run of ours could have written. */
    @Test
    void aForeignManifestDeletesNothing() throws IOException {
        Path out = Files.createDirectory(folder.resolve("out"));
        Files.writeString(folder.resolve("odds-x"), "outside");
        Files.writeString(out.resolve("plan.toml"), "a plan");
        Files.writeString(out.resolve("odds-read"), "read");
        Files.writeString(
                out.resolve("sum-files.json"),
                "{\"files\": [{\"name\": \"../odds-x\"}, {\"name\": \"plan.toml\"}, {\"name\": \"odds-read\"}, {\"name\": 7}, []]}");
        FileBatch batch = new FileBatch(out, "sum", Sources.NONE.and(List.of(out.resolve("odds-read"))));
        batch.add("rest", content("x"));
        batch.replacesAll(Pattern.compile(".*odds-[a-z]+"));
        assertEquals(List.of(), batch.write(Progress.SILENT).removed());
        assertEquals("a plan", Files.readString(out.resolve("plan.toml")));
        assertEquals("read", Files.readString(out.resolve("odds-read")));
        assertEquals("outside", Files.readString(folder.resolve("odds-x")));
        for (String garbage : List.of("", "{", "[1]", "\"x\"", "{\"files\": 3}", "\0")) {
            Files.writeString(out.resolve("sum-files.json"), garbage);
            FileBatch again = new FileBatch(out, "sum", Sources.NONE);
            again.add("rest", content("x"));
            again.write(Progress.SILENT);
            assertTrue(Files.readString(out.resolve("sum-files.json")).contains("\"complete\" : true"));
        }
    }

    @Test
    void theSecondOfTwoRunsAtOnceIsToldAndChangesNothing() throws IOException {
        FileBatch first = new FileBatch(folder, "sum", Sources.NONE);
        List<String> told = new ArrayList<>();
        first.add("rest", out -> {
            InputFault fault = assertThrows(InputFault.class, () -> write("rest", "other"));
            told.add(fault.getMessage());
            new FileBatch(folder, "another", Sources.NONE).write(Progress.SILENT);
            out.write('x');
        });
        first.write(Progress.SILENT);
        assertEquals(1, told.size());
        assertTrue(
                told.get(0).contains("another run of sum is writing into this folder. Nothing was changed."),
                told.get(0));
        assertEquals(1, told.get(0).lines().count());
        assertEquals("x", Files.readString(folder.resolve("rest")));
        assertEquals(List.of("rest", "sum-files.json"), names());
    }

    /** What a program leaves that is killed in the midst of it: the mark, half a file, and a manifest that is not complete. */
    @Test
    void theNextRunSweepsWhatAKilledOneLeft() throws Exception {
        Process dead = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-version")
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        dead.waitFor();
        Files.writeString(folder.resolve(".sum.lock"), "left");
        Files.writeString(folder.resolve("odds-a"), "of the killed run");
        Files.writeString(folder.resolve(".odds-b." + dead.pid() + "-1a.part"), "half");
        Files.writeString(folder.resolve(".sum-files.json." + dead.pid() + "-1b.part"), "half");
        Files.writeString(
                folder.resolve("sum-files.json"),
                "{\"complete\": false, \"files\": [{\"name\": \"odds-a\"}, {\"name\": \"odds-b\"}]}");
        write("odds-c");
        assertEquals(List.of("odds-c", "sum-files.json"), names());
        assertTrue(manifest().get("complete").asBoolean());
        assertEquals(List.of("odds-c"), done(manifest()));
    }

    /** As after a kill between taking a file away and telling so, or after somebody took it away. */
    @Test
    void whatIsNoLongerThereIsNoLongerNamed() throws IOException {
        write("odds-a", "odds-b", "rest");
        Files.delete(folder.resolve("odds-a"));
        Files.delete(folder.resolve("rest"));
        assertEquals(List.of(), write("odds-b").removed());
        assertEquals(1, manifest().get("files").size());
    }

    @Test
    void aRunThatFinishedNothingLeavesTheManifestAsItWas() throws IOException {
        write("odds-a");
        JsonNode before = manifest();
        FileBatch batch = new FileBatch(folder, "sum", Sources.NONE);
        batch.add("odds-a", out -> {
            throw new IOException("No space left on device");
        });
        assertThrows(InputFault.class, () -> batch.write(Progress.SILENT));
        assertEquals(before, manifest());
        assertEquals(List.of("odds-a", "sum-files.json"), names());
    }
}
