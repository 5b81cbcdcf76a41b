package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session that knows plain letters alone, as services and containers have it, meets names with accents: one line without Java words. */
class S17PlainLettersTest {
    /** An e with an acute accent as its two bytes of UTF-8. */
    private static final String ACCENT = "$(printf '\\303\\251')";

    @TempDir
    Path folder;

    /** What a shell says; the program is {@code $H}. */
    private String said(String script) throws Exception {
        ProcessBuilder shell = new ProcessBuilder("/bin/sh", "-c", script).redirectErrorStream(true);
        shell.directory(folder.toFile());
        shell.environment().put("LC_ALL", "C");
        StringBuilder classes = new StringBuilder();
        for (String part : System.getProperty("java.class.path").split(File.pathSeparator))
            classes.append(Path.of(part).toAbsolutePath()).append(File.pathSeparator);
        shell.environment()
                .put(
                        "H",
                        Path.of(System.getProperty("java.home"), "bin", "java") + " -XX:TieredStopAtLevel=1 -cp "
                                + classes + " handreach.Handreach");
        Process run = shell.start();
        String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        run.waitFor();
        for (String word : List.of("java.", "Exception", "interface", "defect")) assertFalse(said.contains(word), said);
        return said;
    }

    @BeforeEach
    void aShellAndASample() throws Exception {
        Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no shell here");
        Path sample = Path.of("elevation-samples/forest-hills").toAbsolutePath();
        Files.createDirectory(folder.resolve("tiles"));
        Files.copy(sample.resolve("tiles/cumberland-forest-3s.tif"), folder.resolve("tiles/a.tif"));
        Files.writeString(
                folder.resolve("plan.toml"),
                Files.readString(sample.resolve("plan.toml"))
                        .replace("../invented-bench/", sample.resolveSibling("invented-bench") + "/")
                        .replace("walk-track.gpx", "w\u00e9lk.gpx")
                        .replace("walk-reports.csv", "plan.toml"));
    }

    private static void assertAdvised(String said) {
        assertEquals(1, said.lines().count(), said);
        assertTrue(said.contains("this session does not know"), said);
        assertTrue(said.contains("Put LC_ALL=C.UTF-8 in front of the command."), said);
    }

    @Test
    void aNameInAnOptionOrAPlan() throws Exception {
        assertAdvised(said("$H tiles " + ACCENT));
        assertAdvised(said("$H card plan.toml --out " + ACCENT + ".pdf"));
        assertAdvised(said("$H reach plan.toml"));
    }

    @Test
    void theFolderWhereOneStands() throws Exception {
        assertAdvised(
                said("mkdir " + ACCENT + " && cp -r tiles " + ACCENT + " && cd " + ACCENT + " && $H tiles tiles"));
    }

    @Test
    void aTileIsOneNoteAndTheOthersWork() throws Exception {
        String said = said("cp tiles/a.tif tiles/" + ACCENT + ".tif && $H tiles tiles --at 36.27,-84.21");
        assertTrue(said.contains("m at 36.27"), said);
        assertTrue(said.startsWith("Note: ") && said.contains("this session does not know"), said);
    }
}
