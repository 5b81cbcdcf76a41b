package handreach.report.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.input.Sources;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnswerFileTest {
    @TempDir
    Path folder;

    private List<String> names() throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void foldersOnTheWayAreMade() throws IOException {
        Path file = folder.resolve("a/b/out.txt");
        AnswerFile.write(file, "whole", Sources.NONE);
        assertEquals("whole", Files.readString(file));
    }

    @Test
    void aFaultHalfWayLeavesTheOldFileAndNothingElse() throws IOException {
        Path file = folder.resolve("out.txt");
        AnswerFile.write(file, "old", Sources.NONE);
        assertThrows(
                CancellationException.class,
                () -> AnswerFile.write(
                        file,
                        out -> {
                            out.write(new byte[100_000]);
                            throw new CancellationException("the person said stop");
                        },
                        Sources.NONE));
        InputFault fault = assertThrows(
                InputFault.class,
                () -> AnswerFile.write(
                        file,
                        out -> {
                            out.write(new byte[100_000]);
                            throw new IOException("No space left on device");
                        },
                        Sources.NONE));
        assertEquals("old", Files.readString(file));
        assertEquals(List.of("out.txt"), names());
        assertTrue(fault.getMessage().contains("No space left on device"), fault.getMessage());
        assertTrue(fault.getMessage().startsWith(file.toString()), fault.getMessage());
    }

    @Test
    void aFolderInThePlaceOfTheFileIsTold() throws IOException {
        Path file = Files.createDirectory(folder.resolve("out"));
        InputFault fault = assertThrows(InputFault.class, () -> AnswerFile.write(file, "x", Sources.NONE));
        assertTrue(fault.getMessage().contains("is a folder"), fault.getMessage());
    }

    @Test
    void aFileInThePlaceOfAFolderIsTold() throws IOException {
        Files.writeString(folder.resolve("plain"), "x");
        assertThrows(InputFault.class, () -> AnswerFile.write(folder.resolve("plain/out.txt"), "x", Sources.NONE));
        assertEquals("x", Files.readString(folder.resolve("plain")));
    }

    @Test
    void endingTheProgramWhileItWritesLeavesNoPart() throws Exception {
        Path file = folder.resolve("out.bin");
        Process writer = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Endless.class.getName(),
                        file.toString())
                .redirectErrorStream(true)
                .start();
        assertEquals('w', writer.getInputStream().read());
        assertTrue(names().stream().anyMatch(n -> n.endsWith(".part")), "it is writing");
        writer.destroy();
        assertTrue(writer.waitFor(30, TimeUnit.SECONDS));
        assertEquals(List.of(), names());
    }

    /** Writes without end; ended from outside by the signal that a keyboard interrupt also leads to. */
    static final class Endless {
        public static void main(String[] args) {
            AnswerFile.write(
                    Path.of(args[0]),
                    out -> {
                        byte[] block = new byte[1 << 16];
                        for (int i = 0; i < 64; i++) out.write(block);
                        System.out.write('w');
                        System.out.flush();
                        try {
                            Thread.sleep(60_000);
                        } catch (InterruptedException e) {
                            throw new IOException(e);
                        }
                    },
                    Sources.NONE);
        }
    }
}
