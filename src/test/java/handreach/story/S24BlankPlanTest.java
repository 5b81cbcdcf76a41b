package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody with tiles and nothing else: a blank plan, the marked values put in, and the first table. */
class S24BlankPlanTest {
    private static final Path TILES =
            Path.of("elevation-samples/invented-valley/tiles").toAbsolutePath();
    /** A height lies there. */
    private static final String CAMP = "44.4773, -29.5217";

    private static final Map<String, String> FILLS = Map.of(
            "frequency_mhz", "155.16",
            "cover", "\"open\"",
            "power_w", "5",
            "sensitivity_dbm", "-119",
            "at", "\"" + CAMP + "\"");

    @TempDir
    Path folder;

    private static String filled(String plan) {
        String text = plan;
        for (Map.Entry<String, String> fill : FILLS.entrySet())
            text = text.replace(
                    "\n" + fill.getKey() + " = \"FILL IN\"", "\n" + fill.getKey() + " = " + fill.getValue());
        return text.replace("tiles = \"tiles\"", "tiles = '" + TILES + "'");
    }

    @Test
    void aBlankPlanWithItsMarksFilledReaches() throws IOException {
        Path ground = folder.resolve("my-ground");
        CommandRun made = CommandRun.of("plan", ground.toString());
        assertEquals(0, made.code(), made.err());
        Path plan = ground.resolve("plan.toml");
        assertEquals("Written: " + plan, made.out().strip());
        String blank = Files.readString(plan);

        CommandRun unfilled = CommandRun.of("reach", ground.toString());
        assertEquals(2, unfilled.code());
        assertEquals(FILLS.size(), unfilled.err().lines().count(), unfilled.err());
        FILLS.keySet()
                .forEach(key ->
                        assertTrue(unfilled.err().contains(": " + key + " still says FILL IN."), unfilled.err()));

        Files.writeString(plan, filled(blank));
        CommandRun reach = CommandRun.of("reach", ground.toString());
        assertEquals(0, reach.code(), reach.err());
        assertTrue(reach.out().contains("factory at face"), reach.out());
        assertFalse(reach.err().contains("plan.toml"), reach.err());
    }

    /** Every remark of a key is a line that works once its # is gone: a second antenna, a bench, a second place. */
    @Test
    void theRemarksBecomeAPlanOfTwoAntennasByThemselves() throws IOException {
        CommandRun.of("plan", folder.resolve("two.toml").toString());
        String blank = filled(Files.readString(folder.resolve("two.toml")));
        String bench = "# [bench]";
        assertTrue(blank.contains(bench), blank);
        Matcher remark = Pattern.compile("(?m)^# (?=\\[\\[?\\w+\\]|\\w+ = )").matcher(blank);
        Path plan = folder.resolve("two.toml");
        Files.writeString(
                plan,
                remark.replaceAll("")
                        .replaceAll("(?s)\\[bench\\].*?(?=\\[\\[radio)", "")
                        .replace("46.52, 8.11", "44.4629, -29.5700"));
        CommandRun reach = CommandRun.of("reach", plan.toString());
        assertEquals(0, reach.code(), reach.err());
        assertTrue(reach.out().contains("long whip at face"), reach.out());
        assertTrue(reach.out().contains(" mi"), reach.out());
    }

    @Test
    void aPlanThatIsThereIsNeverWrittenOver() throws IOException {
        Path plan = Files.writeString(folder.resolve("plan.toml"), "mine");
        for (Path named : new Path[] {folder, plan}) {
            CommandRun run = CommandRun.of("plan", named.toString());
            assertEquals(2, run.code());
            assertTrue(run.err().contains("is there already"), run.err());
            assertEquals(1, run.err().lines().count(), run.err());
        }
        assertEquals("mine", Files.readString(plan));
    }
}
