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

    private static final String ENTRIES = """
            title = "T"
            note = "n"

            [relay]
            pairs = [
                ["a ]", "b"],   # who talks
                ["a ]", 'c']
            ]
            count = 2

            [[delta]]
            delta_db = 1

            [[delta]]
            delta_db = 2 # the other

            [doubt]
            place_spread_db = 5
            """;

    @Test
    void aListOverSeveralLinesIsReadReplacedAndRemovedWhole() {
        String value = PlanText.value(ENTRIES, "relay", "pairs").orElseThrow();
        assertEquals(List.of("a ]", "b", "a ]", "c"), PlanText.texts(value));
        assertEquals(
                2L, Toml.parse(PlanText.withoutValue(ENTRIES, "relay", "pairs")).getLong("relay.count"));
        String edited = PlanText.withValue(ENTRIES, "relay", "pairs", "[]");
        assertEquals(0, Toml.parse(edited).getArray("relay.pairs").size());
        assertEquals(2L, Toml.parse(edited).getLong("relay.count"));
    }

    @Test
    void entriesWithoutANameAreFoundByTheirNumber() {
        assertEquals(2, PlanText.count(ENTRIES, "delta"));
        assertEquals("2", PlanText.entryValue(ENTRIES, "delta", 1, "delta_db").orElseThrow());
        assertEquals(
                ENTRIES.replace("delta_db = 2 #", "delta_db = 3 #"),
                PlanText.withEntryValue(ENTRIES, "delta", 1, "delta_db", "3"));
        assertEquals(1, PlanText.count(PlanText.withoutEntry(ENTRIES, "delta", 0), "delta"));
        assertTrue(PlanText.entryValue(ENTRIES, "delta", 2, "delta_db").isEmpty());
        assertTrue(!PlanText.withoutEntryValue(ENTRIES, "delta", 1, "delta_db").contains("= 2 # the other"));
    }

    @Test
    void keysAboveAllSectionsAndWholeSectionsCanGo() {
        assertEquals("\"n\"", PlanText.value(ENTRIES, "", "note").orElseThrow());
        assertEquals(ENTRIES.replace("note = \"n\"\n", ""), PlanText.withoutValue(ENTRIES, "", "note"));
        assertTrue(
                PlanText.withValue(ENTRIES, "", "format", "1").startsWith("title = \"T\"\nnote = \"n\"\nformat = 1\n"));
        assertTrue(!PlanText.withoutSection(ENTRIES, "doubt").contains("doubt"));
    }
}
