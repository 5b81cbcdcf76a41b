package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.module.ModuleFinder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A command starts the program anew as it runs best, and whoever asked sees the answer alone. */
class S23FreshStartTest {
    private static final String FOREST = "elevation-samples/forest-hills";
    /** Where the system shows what a process was started with, all of it. */
    private static final Path WORDS = Path.of("/proc");

    @TempDir
    Path folder;

    @BeforeEach
    void thereIsAModule() {
        Assumptions.assumeTrue(
                ModuleFinder.ofSystem().find("jdk.incubator.vector").isPresent(), "no vector module here");
    }

    @Test
    void theAnswerComesFromVectorsAndNothingElseIsSaid() throws Exception {
        Process run = map("0.4").start();
        assertEquals(0, run.waitFor(), said("err"));
        assertTrue(said("out").replaceAll("\\s+", " ").contains("16 at once in vectors of 32 bits"), said("out"));
        assertTrue(said("err").startsWith("Marching the field along "), said("err"));
        assertFalse(said("err").contains("incubator"), said("err"));
        assertTrue(Files.isDirectory(folder.resolve("map")));
    }

    @Test
    void whatWasStartedAnewDoesNotStartAgain() throws Exception {
        Process run = map("0.3", "-XX:TieredStopAtLevel=1", "-Dhandreach.anew.done=true")
                .start();
        assertEquals(0, run.waitFor(), said("err"));
        assertTrue(said("out").replaceAll("\\s+", " ").contains("marched along radials one by one"), said("out"));
    }

    @Test
    void wordsAndExitCodePassAsTheyAre() throws Exception {
        Process run = program(
                        List.of("path", "--plan", FOREST, "--from", "spike camp", "--to", "no such \"place\" Zürich"))
                .start();
        assertEquals(2, run.waitFor());
        assertEquals(1, said("err").lines().count(), said("err"));
        assertTrue(said("err").startsWith("--to: \"no such"), said("err"));
        assertTrue(said("err").contains("Zürich"), said("err"));
        assertEquals("", said("out"));
    }

    @Test
    void aSignalEndsAMapAndItsFirstAndIsToldOnce() throws Exception {
        Process run = map("8").start();
        ProcessHandle anew = anew(run);
        while (run.isAlive() && !said("err").contains("Marching")) Thread.sleep(100);
        endsBoth(run, anew);
    }

    @Test
    void aSignalEndsWhatDrawsNoMapAndItsFirstAndIsToldOnce() throws Exception {
        Process run = program(bearings()).start();
        ProcessHandle anew = anew(run);
        Thread.sleep(3000);
        endsBoth(run, anew);
    }

    @Test
    void nothingGoesOnOnceTheFirstWasKilled() throws Exception {
        Process run = program(bearings(), "-Xint").start();
        ProcessHandle anew = anew(run);
        Thread.sleep(3000);
        assertTrue(anew.isAlive());
        run.destroyForcibly();
        anew.onExit().get(10, TimeUnit.SECONDS);
    }

    @Test
    void onFewCoresAMapHasOneCollectorUnlessAnotherWasAskedFor() throws Exception {
        Assumptions.assumeTrue(Files.isDirectory(WORDS), "no words of processes here");
        assertTrue(collectors(map("0.3", "-XX:ActiveProcessorCount=2"), "-Da=b").contains("-XX:+UseSerialGC"));
        assertEquals(List.of(), collectors(map("0.3", "-XX:ActiveProcessorCount=8"), "-Da=b"));
        String asked = "-XX:+UseParallelGC";
        assertEquals(List.of(asked), collectors(map("0.3", "-XX:ActiveProcessorCount=2"), asked));
    }

    /** The collectors named to the program started anew by one to which this was said in place of its own collector. */
    private List<String> collectors(ProcessBuilder program, String said) throws Exception {
        program.command().set(1, said);
        Process run = program.start();
        ProcessHandle anew = anew(run);
        List<String> words = List.of();
        while (run.isAlive() && words.stream().noneMatch(word -> word.startsWith("-Dhandreach.anew")))
            words = List.of(
                    Files.readString(WORDS.resolve(anew.pid() + "/cmdline")).split("\0"));
        assertEquals(0, run.waitFor(), said("err"));
        return words.stream().filter(word -> word.endsWith("GC")).toList();
    }

    private void endsBoth(Process run, ProcessHandle anew) throws Exception {
        run.destroy();
        assertTrue(run.waitFor(60, TimeUnit.SECONDS));
        assertEquals(143, run.exitValue());
        assertFalse(anew.isAlive());
        assertEquals(2, said("err").split("Stopped before it was done", -1).length, said("err"));
    }

    private static ProcessHandle anew(Process run) throws InterruptedException {
        while (run.isAlive() && run.children().findAny().isEmpty()) Thread.sleep(100);
        return run.children().findAny().orElseThrow();
    }

    /** Marched one by one for minutes, without a map. */
    private static List<String> bearings() {
        return List.of("reach", "elevation-samples/high-mountains", "--model", "full-wave", "--radius-km", "100");
    }

    private String said(String where) throws IOException {
        return Files.readString(folder.resolve(where), StandardCharsets.UTF_8);
    }

    private ProcessBuilder map(String radiusKm, String... options) {
        List<String> words = new ArrayList<>(List.of("reach", "elevation-samples/high-mountains", "--engine", "march"));
        words.addAll(List.of("--model", "full-wave", "--radius-km", radiusKm, "--only", "rasters", "--out"));
        words.add(folder.resolve("map").toString());
        return program(words, options);
    }

    private ProcessBuilder program(List<String> words, String... options) {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:+UseSerialGC"));
        command.addAll(List.of(options));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "handreach.Handreach"));
        command.addAll(words);
        return new ProcessBuilder(command)
                .redirectOutput(folder.resolve("out").toFile())
                .redirectError(folder.resolve("err").toFile());
    }
}
