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

/** A long march starts the program anew with the vector module, and whoever asked sees the answer alone. */
class S23VectorStartTest {
    @TempDir
    Path folder;

    @BeforeEach
    void thereIsAModule() {
        Assumptions.assumeTrue(
                ModuleFinder.ofSystem().find("jdk.incubator.vector").isPresent(), "no vector module here");
    }

    @Test
    void theAnswerComesFromVectorsAndNothingElseIsSaid() throws Exception {
        Process run = reach("0.4", "-Dhandreach.anew=0").start();
        assertEquals(0, run.waitFor(), said("err"));
        assertTrue(said("out").replaceAll("\\s+", " ").contains("16 at once in vectors of 32 bits"), said("out"));
        assertTrue(said("err").startsWith("Marching the field along "), said("err"));
        assertFalse(said("err").contains("incubator"), said("err"));
        assertTrue(Files.isDirectory(folder.resolve("map")));
    }

    @Test
    void whatWasStartedAnewDoesNotStartAgain() throws Exception {
        Process run = reach("0.3", "-XX:TieredStopAtLevel=1", "-Dhandreach.anew=0", "-Dhandreach.anew.done=true")
                .start();
        assertEquals(0, run.waitFor(), said("err"));
        assertTrue(said("out").replaceAll("\\s+", " ").contains("marched along radials one by one"), said("out"));
    }

    @Test
    void aSignalEndsBothAndIsToldOnce() throws Exception {
        Process run = reach("8", "-Dhandreach.anew=0").start();
        for (int i = 0; i < 2400 && run.children().findAny().isEmpty(); i++) Thread.sleep(100);
        ProcessHandle anew = run.children().findAny().orElseThrow();
        for (int i = 0; i < 2400 && !said("err").contains("Marching"); i++) Thread.sleep(100);
        run.destroy();
        assertTrue(run.waitFor(60, TimeUnit.SECONDS));
        assertEquals(143, run.exitValue());
        assertFalse(anew.isAlive());
        assertEquals(2, said("err").split("Stopped before it was done", -1).length, said("err"));
    }

    private String said(String where) throws IOException {
        return Files.readString(folder.resolve(where), StandardCharsets.UTF_8);
    }

    private ProcessBuilder reach(String radiusKm, String... options) {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:+UseSerialGC"));
        command.addAll(List.of(options));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "handreach.Handreach"));
        command.addAll(List.of("reach", "elevation-samples/high-mountains", "--engine", "march", "--model"));
        command.addAll(List.of("full-wave", "--radius-km", radiusKm, "--only", "rasters", "--out"));
        command.add(folder.resolve("map").toString());
        return new ProcessBuilder(command)
                .redirectOutput(folder.resolve("out").toFile())
                .redirectError(folder.resolve("err").toFile());
    }
}
