package handreach.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tomlj.Toml;

class PlanTextTest {
    private static final String TEXT = """
            # top
            title = "T" # name

            [target]
            odds = 0.9   # wanted

            # the base
            [[position]]
            name = "base # 1"
            at = "46.5, 8.1"

            [[position]]
            name = "hut"
            at = "46.6, 8.2" # old hut
            # last word
            """;

    @Test
    void aValueIsReplacedAndItsCommentStays() {
        String edited = PlanText.withValue(TEXT, "target", "odds", "0.8");
        assertEquals(TEXT.replace("odds = 0.9   # wanted", "odds = 0.8 # wanted"), edited);
    }

    @Test
    void aMissingSectionIsAdded() {
        String edited = PlanText.withValue(TEXT, "reach", "cell_m", "30");
        assertTrue(edited.startsWith(TEXT.stripTrailing()));
        assertEquals(30L, Toml.parse(edited).getLong("reach.cell_m"));
    }

    @Test
    void anEntryIsFoundByItsNameEvenWithAHashInIt() {
        String edited = PlanText.withEntryValue(TEXT, "position", "base # 1", "at", PlanText.quoted("1, 2"));
        assertEquals(TEXT.replace("at = \"46.5, 8.1\"", "at = \"1, 2\""), edited);
    }

    @Test
    void anEntryIsAddedBehindTheLastOfItsKind() {
        String edited = PlanText.withEntry(TEXT, "position", List.of("name = \"pass\"", "at = \"46.7, 8.3\""));
        assertEquals("pass", Toml.parse(edited).getArray("position").getTable(2).getString("name"));
        assertTrue(edited.endsWith("# last word\n"));
    }

    @Test
    void removingAnEntryLeavesTheOthersAlone() {
        String edited = PlanText.withoutEntry(TEXT, "position", "base # 1");
        assertEquals(1, Toml.parse(edited).getArray("position").size());
        assertTrue(edited.contains("# the base") && edited.contains("hut"));
    }

    @Test
    void anyTextSurvivesQuoting() {
        String nasty = "a \"b\" \\ c\n\t\u0001 ü #";
        assertEquals(nasty, Toml.parse("x = " + PlanText.quoted(nasty)).getString("x"));
    }
}
