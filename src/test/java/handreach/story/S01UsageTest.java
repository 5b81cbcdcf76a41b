package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Somebody new: help, a mistyped command, a missing file. */
class S01UsageTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "bench", "match", "pattern", "tiles", "plan", "path", "reach", "relay", "atlas", "walk", "card",
                "report"
            })
    void everyCommandHelpsWithAWorkedExample(String command) {
        CommandRun run = CommandRun.of(command, "--help");
        assertEquals(0, run.code());
        assertTrue(run.out().contains("Worked example"), run.out());
        assertTrue(run.out().contains("handreach " + command), run.out());
        for (String line : run.out().lines().toList())
            assertTrue(line.length() <= 100 || line.startsWith("  handreach "), line);
    }

    @ParameterizedTest
    @ValueSource(strings = {"reach", "path", "bench", "relay", "atlas", "walk", "card", "report"})
    void commandsThatPeopleRelyOnCarryACaution(String command) {
        String out = CommandRun.of(command, "--help").out();
        assertTrue(out.contains("second means") || out.contains("away from eyes"), out);
    }

    @Test
    void noCommandShowsTheUsageAndFails() {
        CommandRun run = CommandRun.of();
        assertEquals(2, run.code());
        assertTrue(run.out().startsWith("Usage: handreach"), run.out());
    }

    @Test
    void aMistypedCommandIsAnsweredWithTheNearestRightOne() {
        CommandRun run = CommandRun.of("reech", "x");
        assertEquals(2, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains("reach"), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
    }

    /** All others take the plan as a word of its own. */
    @Test
    void aPathTakesThePlanAsAWordToo() {
        String plan = "elevation-samples/invented-valley";
        String[] ends = {"--from", "valley camp", "--to", "lake crew", "--json"};
        CommandRun word = CommandRun.of("path", plan, ends[0], ends[1], ends[2], ends[3], ends[4]);
        assertEquals(0, word.code(), word.err());
        CommandRun option = CommandRun.of("path", "--plan", plan, ends[0], ends[1], ends[2], ends[3], ends[4]);
        assertEquals(option.out(), word.out());
        CommandRun both = CommandRun.of("path", plan, "--plan", plan, ends[0], ends[1], ends[2], ends[3]);
        assertEquals(2, both.code());
        assertEquals(1, both.err().lines().count(), both.err());
        assertTrue(both.err().contains("--plan"), both.err());
    }

    @Test
    void aMissingFileIsOneLine() {
        CommandRun run = CommandRun.of("bench", "no-such.csv", "--control", "x");
        assertEquals(2, run.code());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().startsWith("no-such.csv: "), run.err());
        assertFalse(run.err().contains("Exception"), run.err());
    }

    @Test
    void helpIsHelpWithAndWithoutDashes() {
        CommandRun all = CommandRun.of("help");
        assertEquals(0, all.code(), all.err());
        assertEquals(CommandRun.of("--help").out(), all.out());
        assertEquals(
                CommandRun.of("reach", "--help").out(),
                CommandRun.of("help", "reach").out());
    }

    /** {@code template} was answered with {@code pattern}, and an option with a command. */
    @ParameterizedTest
    @ValueSource(strings = {"template", "plan --template", "reach x --everything"})
    void nothingIsGuessedWhereNothingIsNear(String typed) {
        CommandRun run = CommandRun.of(typed.split(" "));
        assertEquals(2, run.code());
        assertFalse(run.err().contains("Did you mean"), run.err());
        assertTrue(CommandRun.of("reach", "x", "--radius", "3").err().contains("Did you mean --radius-km?"));
        assertTrue(CommandRun.of("reach", "x", "--ot", "y").err().contains("Did you mean --out?"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"reach x --imperial", "path --units imperial", "card x --units=imperial"})
    void whoAsksForOtherUnitsIsShownTheKeyOfThePlan(String typed) {
        CommandRun run = CommandRun.of(typed.split(" "));
        assertEquals(2, run.code());
        assertTrue(run.err().contains("units = \"imperial\""), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
    }
}
