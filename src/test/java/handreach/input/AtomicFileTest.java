package handreach.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a file that is written whole leaves behind, and what it finds of programs that died. */
class AtomicFileTest {
    @TempDir
    Path folder;

    private void write(String name) throws IOException {
        AtomicFile.write(folder.resolve(name), out -> out.write(name.getBytes(StandardCharsets.UTF_8)));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static long pidOfADeadProgram() throws Exception {
        Process done = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-version")
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        done.waitFor();
        return done.pid();
    }

    @Test
    void leftoversOfDeadProgramsAreSweptAndThoseOfLivingOnesAreNot() throws Exception {
        long dead = pidOfADeadProgram();
        long alive = ProcessHandle.current().parent().map(ProcessHandle::pid).orElse(1L);
        Files.writeString(folder.resolve(".out.txt." + dead + "-1f.part"), "half");
        Files.writeString(folder.resolve(".out.txt." + alive + "-2f.part"), "in the writing");
        Files.writeString(folder.resolve(".other.txt." + dead + "-3f.part"), "of another file");
        write("out.txt");
        assertEquals(List.of(".other.txt." + dead + "-3f.part", ".out.txt." + alive + "-2f.part", "out.txt"), names());
    }

    /** Versions before this one did not say in the name which program writes; theirs are known by their age. */
    @Test
    void leftoversOfOlderVersionsAreSweptWhenTheyAreOld() throws IOException {
        FileTime before = FileTime.from(Instant.now().minus(Duration.ofHours(25)));
        for (String name : List.of(
                ".out.txt.1f3a9b.part", ".out.txt.ab12cd34-0000-4000-8000-0123456789ab.new", ".out.txt.mine.new"))
            Files.setLastModifiedTime(Files.writeString(folder.resolve(name), "half"), before);
        Files.writeString(folder.resolve(".out.txt.2f3a9b.part"), "fresh");
        write("out.txt");
        assertEquals(List.of(".out.txt.2f3a9b.part", ".out.txt.mine.new", "out.txt"), names());
    }

    /** Without it a file that was moved into place may be the former one again after a power cut. */
    @Test
    void theFolderIsForcedToDiskAfterTheMove() throws Exception {
        Assumptions.assumeTrue(
                Stream.of(System.getenv("PATH").split(File.pathSeparator))
                        .anyMatch(dir -> Files.isExecutable(Path.of(dir, "strace"))),
                "no strace here");
        Path told = folder.resolve("calls");
        Process run = new ProcessBuilder(
                        "strace",
                        "-f",
                        "-y",
                        "-e",
                        "trace=fsync,fdatasync,rename",
                        "-o",
                        told.toString(),
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        classesOf(AtomicFile.class) + File.pathSeparator + classesOf(Writer.class),
                        Writer.class.getName(),
                        folder.resolve("out.txt").toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, run.waitFor(), said);
        List<String> calls = Files.readAllLines(told).stream()
                .filter(line -> line.contains(folder.toString()))
                .toList();
        int moved = -1;
        for (int i = 0; i < calls.size(); i++) if (calls.get(i).contains("rename(")) moved = i;
        assertTrue(moved > 0 && calls.get(moved - 1).contains("sync("), calls.toString());
        String real = folder.toRealPath().toString();
        assertTrue(
                calls.subList(moved + 1, calls.size()).stream()
                        .anyMatch(line -> line.contains("sync(") && line.contains("<" + real + ">")),
                calls.toString());
    }

    private static String classesOf(Class<?> type) throws Exception {
        return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI())
                .toString();
    }

    /** Writes one file. */
    static final class Writer {
        public static void main(String[] args) throws IOException {
            AtomicFile.write(Path.of(args[0]), out -> out.write('x'));
        }
    }
}
