package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** No small file takes for ever, none swells in memory or in messages, and what has no end is not read to its end. */
class S16SmallFilesTest {
    private static final long LIMIT_MS = 2000;
    private static final long LONGEST_ANSWER = 64_000;

    @TempDir
    Path folder;

    @Test
    void eachEndsWithinTwoSecondsAnd256Mebibytes() throws IOException, InterruptedException {
        Map<String, String[]> runs = new HashMap<>();
        for (String line : child("handreach.story.SmallFiles", "-Xmx256m", folder.toString())) {
            String[] cells = line.split("\t", 5);
            runs.put(cells[0], cells);
            if (cells[0].equals("warm")) continue;
            assertTrue(Long.parseLong(cells[2]) < LIMIT_MS, line);
            assertTrue(Long.parseLong(cells[3]) < LONGEST_ANSWER, line);
            boolean isAnswered = cells[0].equals("match") || cells[0].equals("cover") || cells[0].startsWith("sector");
            assertEquals(isAnswered ? "0" : "2", cells[1], line);
        }
        assertEquals(18, runs.size(), runs.keySet().toString());
        assertTrue(runs.get("ones, 4 MB")[4].startsWith("ones.toml: is 3 MiB, at most 256 KiB are read."));
    }

    @Test
    void aPlanOfUnknownKeysTellsAHundredFaultsAndTheNumberOfTheRest() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 4100; i++) text.append("key").append(i).append(" = 1\n");
        Path plan = Files.writeString(folder.resolve("plan.toml"), text);
        CommandRun run = CommandRun.of("reach", plan.toString());
        assertEquals(2, run.code());
        List<String> lines = run.err().lines().toList();
        assertEquals(101, lines.size());
        assertTrue(
                lines.get(100).matches("plan.toml: and 4 0\\d\\d more faults\\. Mend those above first\\."),
                lines.get(100));
    }

    @Test
    void aValueOfMegabytesIsShortenedAndItsAdviceKept() throws IOException {
        Path bench = Files.writeString(
                folder.resolve("bench.csv"),
                "antenna,mount,quantity,value,unit,frequency_mhz,trial,note\na,in hand," + "x".repeat(3 << 20)
                        + ",-40,dBm,155,1,\n");
        CommandRun run = CommandRun.of("bench", bench.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().length() < 1200, "" + run.err().length());
        assertTrue(run.err().startsWith("bench.csv line 2: quantity is \"xxx"), run.err());
    }

    /** A device says that it holds nothing, and never ends. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void aDeviceWithoutEndIsReadUpToTheBound() throws IOException, InterruptedException {
        for (String[] command : new String[][] {
            {"reach", "/dev/zero"},
            {"bench", "/dev/zero"},
            {"match", "/dev/zero"},
            {"path", "--profile", "/dev/zero", "--frequency-mhz", "155"},
            {"walk", "elevation-samples/forest-hills", "--next", "/dev/zero"}
        }) {
            CommandRun run = CommandRun.of(command);
            assertEquals(2, run.code(), run.err());
            String said = run.err()
                    .lines()
                    .filter(line -> !line.startsWith("Note"))
                    .findFirst()
                    .orElse("");
            assertTrue(said.startsWith("zero"), command[0] + ": " + run.err());
        }
        // Read in the smallest memory, since sizes are counted while reading.
        List<String> tight = child("handreach.Handreach", "-Xmx256m", "bench", "/dev/zero");
        assertTrue(
                tight.get(0).startsWith("zero: goes on and on, at most 5 MiB are read. The memory given"), tight + "");
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void aPipeIsReadLikeAFile() throws IOException, InterruptedException {
        Path pipe = folder.resolve("bench.pipe");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        Process writer =
                new ProcessBuilder("cp", "elevation-samples/invented-bench/bench.csv", pipe.toString()).start();
        CommandRun run = CommandRun.of("bench", pipe.toString(), "--control", "factory helical");
        assertEquals(0, writer.waitFor());
        assertEquals(0, run.code(), run.err());
    }

    /** Lines of standard output and error of a program run in a process of its own. */
    static List<String> child(String main, String memory, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new java.util.ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                memory,
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                main));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        byte[] said = process.getInputStream().readAllBytes();
        process.waitFor();
        return new String(said, StandardCharsets.UTF_8).lines().toList();
    }
}
