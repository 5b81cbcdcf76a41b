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

    /** The remark of the blank plan names this command, which refused the plan for its base, its cover and its radio. */
    @Test
    void aBlankPlanHasItsBenchSheetBeforeAnythingIsFilledIn() throws IOException {
        Path ground = folder.resolve("my-ground");
        CommandRun.of("plan", ground.toString());
        CommandRun run = CommandRun.of("bench", "--template", "--plan", ground.toString());
        assertEquals(0, run.code(), run.err());
        String said = run.err().replaceAll("\\s+", " ");
        assertTrue(said.contains("frequency_mhz is empty: plan.toml has no frequency yet"), said);
        Path sheet = ground.resolve("session.csv");
        assertTrue(Files.readString(sheet).contains("factory,in the hand,received_level,,dBm,,1,"), "beside the plan");

        Path plan = ground.resolve("plan.toml");
        Files.writeString(
                plan, Files.readString(plan).replace("frequency_mhz = \"FILL IN\"", "frequency_mhz = 155.16"));
        CommandRun tuned = CommandRun.of("bench", "--template", "--plan", ground.toString());
        assertEquals(0, tuned.code(), tuned.err());
        assertTrue(Files.readString(sheet).contains("factory,in the hand,received_level,,dBm,155.16,1,"));
        assertFalse(tuned.err().contains("frequency_mhz"), tuned.err());
    }

    /** He typed no --antenna, and was told that it names one only. */
    @Test
    void aPlanOfTheControlAloneHasASheetWithRoomForOthersAndSaysSo() throws IOException {
        Path plan = folder.resolve("one.toml");
        CommandRun.of("plan", plan.toString());
        Files.writeString(plan, filled(Files.readString(plan)));
        CommandRun run = CommandRun.of("bench", "--template", "--plan", plan.toString());
        assertEquals(0, run.code(), run.err());
        String said = run.err().replaceAll("\\s+", " ");
        assertTrue(said.contains("one.toml, line "), said);
        assertTrue(said.contains("one [[antenna]] only, \"factory\""), said);
        assertTrue(said.contains("\"antenna A\" and \"antenna B\""), said);
        String sheet = Files.readString(folder.resolve("session.csv"));
        assertTrue(sheet.contains("# control = factory\r\n"), sheet);
        assertTrue(sheet.contains("\r\nantenna A,in the hand,"), sheet);
    }

    /** The sheet of the first call, which is still blank, was taken for a source of the second. */
    @Test
    void aBlankSheetThatThePlanNamesIsWrittenAnewAndOneWithReadingsKept() throws IOException {
        Path plan = folder.resolve("plan.toml");
        CommandRun.of("plan", plan.toString());
        Files.writeString(
                plan,
                filled(Files.readString(plan))
                        .replaceFirst("# \\[bench\\]", "[bench]")
                        .replace("# file = ", "file = ")
                        .replace("# control = ", "control = "));
        CommandRun.of("bench", "--template", "--plan", plan.toString());
        String[] again = {"bench", "--template", "--plan", plan.toString(), "--mount", "in hand,on box"};
        CommandRun run = CommandRun.of(again);
        assertEquals(0, run.code(), run.err());
        Path sheet = folder.resolve("session.csv");
        String blank = Files.readString(sheet);
        assertTrue(blank.contains(",on box,"), blank);
        for (String filled : new String[] {
            blank.replaceFirst("received_level,,", "received_level,-42,"),
            blank.replaceFirst("noise_floor_dbm = FILL IN", "noise_floor_dbm = -110")
        }) {
            Files.writeString(sheet, filled);
            CommandRun kept = CommandRun.of(again);
            assertEquals(2, kept.code());
            assertTrue(kept.err().contains("holds more than a blank sheet"), kept.err());
            assertEquals(filled, Files.readString(sheet));
        }
    }

    /** It said: a number is expected W. */
    @Test
    void aNumberInQuotesIsToldInASentence() throws IOException {
        Path plan = folder.resolve("quoted.toml");
        CommandRun.of("plan", plan.toString());
        Files.writeString(plan, filled(Files.readString(plan)).replace("power_w = 5", "power_w = \"5\""));
        CommandRun run = CommandRun.of("reach", plan.toString());
        assertEquals(2, run.code());
        assertTrue(
                run.err().contains("power_w is \"5\", a number in W is expected. Write it without quotes."), run.err());
    }
}
