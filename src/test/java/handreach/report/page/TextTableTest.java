package handreach.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class TextTableTest {
    @Test
    void columnsAreAlignedAndNumbersStandToTheRight() {
        String text = TextTable.of("loadout", "reach km", "verdict")
                .row("whip", "2.9", "worth it")
                .row("helical, factory", "12.0", "")
                .text();
        assertEquals("""
                loadout           reach km  verdict
                ----------------  --------  --------
                whip                   2.9  worth it
                helical, factory      12.0
                """, text);
    }

    @Test
    void aColumnOfWordsStaysLeftUnlessToldOtherwise() {
        assertEquals(
                "a\n----\nx\n12\nlong\n",
                TextTable.of("a").row("x").row("12").row("long").text());
        assertEquals(
                "   a\n----\n2 km\n   -\n",
                TextTable.of(">a").row("2 km").row("-").text());
    }

    @Test
    void controlCharactersCannotMoveTheCursor() {
        assertEquals(
                "name\n--------\na [31m b\n",
                TextTable.of("name").row("a\u001B[31m\nb").text());
    }

    @Test
    void accentsWrittenAsTwoCharactersCountOnce() {
        String text = TextTable.of("a", "b").row("e\u0301", "x").row("e", "x").text();
        assertEquals("a  b\n-  -\ne\u0301  x\ne  x\n", text);
    }

    @Test
    void aRowOfAnotherLengthIsRefused() {
        assertThrows(
                IllegalArgumentException.class, () -> TextTable.of("a", "b").row("x"));
    }
}
