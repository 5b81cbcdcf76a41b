package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What nobody stated of an antenna is not known to be nothing, and what is taken for it is told as taken. */
class S22SaidOfBurdenTest {
    @TempDir
    Path folder;

    /** The coast sample in large cells, the factory antenna with or without what it weighs and measures. */
    private String plan(String factory) throws IOException {
        Path sample = Path.of("elevation-samples", "urban-coast").toAbsolutePath();
        String plan = Files.readString(sample.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replaceAll("cell_m = \\d+", "cell_m = 200")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 30")
                .replace("-8.0320, -34.8780", "-8.0280, -34.8730")
                .replace("-8.0139, -34.8508", "-8.0290, -34.8720");
        String stated = "length_cm = 15\nmass_g = 22\n";
        assertTrue(plan.contains(stated), "the factory antenna");
        return Files.writeString(folder.resolve("plan.toml"), plan.replace(stated, factory))
                .toString();
    }

    private static String run(String... words) {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void massesThatNobodyStatedAreNotTakenFromOneAnother() throws IOException {
        String stated = run("assign", plan("length_cm = 15\nmass_g = 22\n"));
        assertTrue(stated.matches(".*\\d g (less|more) in all.*"), stated);
        assertFalse(stated.contains("not given"), stated);
        String open = run("assign", plan("length_cm = 15\n"));
        assertFalse(open.matches(".*\\d g (less|more) in all.*"), open);
        assertTrue(open.contains("in all (mass not given)"), open);
        assertTrue(open.contains("The mass of factory helical is not given and counts as nothing"), open);
    }

    @Test
    void aLengthTakenForGrantedIsMarkedWhereverItIsTold() throws IOException {
        String plan = plan("mass_g = 22\n");
        String assigned = run("assign", plan);
        assertTrue(assigned.contains("in all (usual length taken)"), assigned);
        assertTrue(assigned.contains("The length of factory helical is not given; the usual one is taken."), assigned);
        String reach = run("reach", plan, "--no-area");
        assertTrue(reach.matches(".*factory at face \\d+, usual 22 .*"), reach);
        assertTrue(reach.contains("cm more and 16 g more (usual length taken)"), reach);
        String bench = run("bench", "--plan", plan);
        assertTrue(bench.matches(".*factory helical control \\d+, usual 22 .*"), bench);
        String stated = run("reach", plan("length_cm = 15\nmass_g = 22\n"), "--no-area");
        assertFalse(stated.contains("usual"), stated);
    }
}
