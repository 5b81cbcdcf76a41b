package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cli.CommandLineRunner;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the user can mend is told with file, line and key and ends with 2; what only we can mend says so and ends with 1. */
class S14FaultOrDefectTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills");

    @TempDir
    Path folder;

    @Test
    void aMapOfTooManyCellsIsToldWithTheLineOfItsRadius() throws IOException {
        CommandRun run =
                CommandRun.of("reach", plan("radius_km = 5", "radius_km = 100").toString(), "--out", out());
        assertEquals(
                "plan.toml line " + lineOf("radius_km") + ": a radius of 100.0 km in cells of 30 m is", start(run));
        assertTrue(run.err().contains("take at most 60.1 km, or cells of 50 m."), run.err());
    }

    @Test
    void aMapOfTooManyCellsIsToldWithTheOptionThatAskedForIt() {
        assertEquals(
                "--radius-km: a radius of 100.0 km in cells of 30 m is",
                start(CommandRun.of("reach", SAMPLE.toString(), "--radius-km", "100", "--out", out())));
        assertEquals(
                "--cell-m: a radius of 100.0 km in cells of 5 m is",
                start(CommandRun.of(
                        "reach", SAMPLE.toString(), "--radius-km", "100", "--cell-m", "5", "--out", out())));
    }

    @Test
    void cellsLargerThanTheRadiusAreToldWithTheLineOfTheRadius() throws IOException {
        Path plan = plan("radius_km = 5", "radius_km = 0.2");
        Files.writeString(plan, Files.readString(plan).replace("cell_m = 30", "cell_m = 2000"));
        CommandRun run = CommandRun.of("reach", plan.toString(), "--out", out());
        assertEquals(
                "plan.toml line " + lineOf("radius_km") + ": a radius of 200 m holds no cells of 2000 m", start(run));
    }

    @Test
    void anAreaAtAPoleIsToldWithTheLineThatPutsItThere() throws IOException {
        Path plan = plan("from = \"spike camp\"", "from = \"north spur\"");
        Files.writeString(plan, Files.readString(plan).replace("36.3000, -84.1950", "85, -84.1950"));
        CommandRun run = CommandRun.of("reach", plan.toString());
        assertTrue(
                run.err()
                        .startsWith("plan.toml line " + lineOf("from")
                                + ": the middle of an area is at latitude 85, allowed is -80 to 80 degrees"),
                run.err());
        assertEquals(2, run.code());
    }

    @Test
    void twoEndsInOnePlaceAreTheUsersFault() {
        CommandRun run =
                CommandRun.of("path", "--plan", SAMPLE.toString(), "--from", "spike camp", "--to", "spike camp");
        assertEquals(2, run.code(), run.err());
        assertFalse(run.err().contains("defect"), run.err());
    }

    @Test
    void whatGoesWrongInsideIsOurDefectAndSaysWhatToSend() {
        for (Throwable wrong : List.of(
                new IllegalArgumentException("a wave without a length"),
                new StackOverflowError(),
                new AssertionError())) {
            CommandRun run = windowThatThrows(wrong);
            assertEquals(1, run.code(), run.err());
            assertEquals(1, run.err().lines().count(), run.err());
            assertTrue(
                    run.err()
                            .startsWith("A defect of the program, not of your input: "
                                    + wrong.getClass().getSimpleName()),
                    run.err());
            for (String what : List.of("the command", "the plan", "the version, handreach "))
                assertTrue(run.err().contains(what), run.err());
        }
    }

    @Test
    void memoryThatIsNotEnoughIsToldInWords() {
        CommandRun run = windowThatThrows(new OutOfMemoryError("Java heap space"));
        assertEquals(1, run.code());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().startsWith("The memory given to the program, "), run.err());
        assertTrue(run.err().contains("cell_m"), run.err());
    }

    private static CommandRun windowThatThrows(Throwable wrong) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = CommandLineRunner.run(
                new String[] {"desk"},
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                plan -> {
                    if (wrong instanceof Error error) throw error;
                    throw (RuntimeException) wrong;
                });
        return new CommandRun(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** The line of the fault up to its figures, or to its advice. */
    private static String start(CommandRun run) {
        assertEquals(2, run.code(), run.err());
        return run.err()
                .lines()
                .findFirst()
                .orElse("")
                .replaceAll(" is \\d.*", " is")
                .replaceAll(": take .*", "");
    }

    private Path plan(String before, String after) throws IOException {
        String text = Files.readString(SAMPLE.resolve("plan.toml"));
        assertTrue(text.contains(before), before);
        text = text.replace(before, after);
        for (String named : List.of("tiles", "../invented-bench/bench.csv", "walk-track.gpx", "walk-reports.csv")) {
            Path there = SAMPLE.resolve(named).toAbsolutePath().normalize();
            text = text.replace('"' + named + '"', '"' + there.toString().replace('\\', '/') + '"');
        }
        return Files.writeString(folder.resolve("plan.toml"), text);
    }

    private static int lineOf(String key) throws IOException {
        return 1
                + Files.readAllLines(SAMPLE.resolve("plan.toml")).stream()
                        .map(line -> line.startsWith(key + " = "))
                        .toList()
                        .indexOf(true);
    }

    private String out() {
        return folder.resolve("out").toString();
    }
}
