package handreach.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class KeywordTest {
    private enum Boat {
        ROWING("rowing-boat"),
        SAILING("sailing-boat");

        private final String word;

        Boat(String word) {
            this.word = word;
        }
    }

    private static final Keyword<Boat> BOAT =
            Keyword.of(List.of(Boat.values()), boat -> boat.word).also("dinghy", Boat.SAILING);

    @Test
    void everyValueIsFoundByItsOwnWord() {
        for (Boat boat : Boat.values()) assertEquals(Optional.of(boat), BOAT.find(boat.word));
    }

    @Test
    void caseAndBlanksAroundAWordDoNotMatter() {
        assertEquals(Optional.of(Boat.ROWING), BOAT.find("  Rowing-Boat "));
    }

    @Test
    void anotherNameIsReadButNotShown() {
        assertEquals(Optional.of(Boat.SAILING), BOAT.find("dinghy"));
        assertEquals(List.of("rowing-boat", "sailing-boat"), BOAT.words());
    }

    @Test
    void theFaultSaysWhatWasFoundWhatIsAllowedAndTheNearestWord() {
        assertEquals(
                "is \"Roving-boat\", allowed is rowing-boat, sailing-boat. Did you mean rowing-boat?",
                BOAT.fault("Roving-boat"));
        assertEquals("is \"train\", allowed is rowing-boat, sailing-boat.", BOAT.fault("train"));
        assertTrue(BOAT.fault("dinghi").endsWith("Did you mean dinghy?"), BOAT.fault("dinghi"));
    }

    @Test
    void aWordThatMeansNothingIsToldOnceAndOneThatMeansSomethingNever() {
        List<String> said = new ArrayList<>();
        assertEquals(Optional.empty(), BOAT.read("train", said::add));
        assertEquals(List.of(BOAT.fault("train")), said);
        assertEquals(Optional.of(Boat.ROWING), BOAT.read("rowing-boat", said::add));
        assertEquals(1, said.size());
    }

    @Test
    void parsingSpeaksForTheOption() {
        assertEquals(Boat.ROWING, BOAT.parse("--boat", "rowing-boat"));
        InputFault fault = assertThrows(InputFault.class, () -> BOAT.parse("--boat", "train"));
        assertEquals("--boat: is \"train\", allowed is rowing-boat, sailing-boat.", fault.getMessage());
    }

    @Test
    void twoValuesOfOneWordAreADefect() {
        assertThrows(IllegalArgumentException.class, () -> Keyword.of(List.of(Boat.values()), boat -> "boat"));
        assertThrows(IllegalArgumentException.class, () -> BOAT.also("dinghy", Boat.ROWING));
        assertThrows(IllegalArgumentException.class, () -> BOAT.also("Punt", Boat.ROWING));
    }
}
