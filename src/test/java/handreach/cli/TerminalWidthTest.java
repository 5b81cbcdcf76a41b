package handreach.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class TerminalWidthTest {
    @Test
    void aTerminalIsUsedFrom80To100ColumnsAndWhereItHas120() {
        assertEquals(80, TerminalWidth.of(40));
        assertEquals(80, TerminalWidth.of(80));
        assertEquals(90, TerminalWidth.of(90));
        assertEquals(100, TerminalWidth.of(119));
        assertEquals(120, TerminalWidth.of(120));
        assertEquals(120, TerminalWidth.of(300));
    }

    /** Notes ran on and were broken by the terminal in the middle of words. */
    @Test
    void aNoteIsWrappedOnATerminalAndWholeElsewhere() {
        String note =
                "Note: ground.tif: holds values of a class map, no heights. Put it where the plan names its land cover.";
        assertEquals(
                "Note: ground.tif: holds values of a class map, no heights. Put it where the plan\n"
                        + "names its land cover.",
                TerminalWidth.note(note, 80));
        assertEquals(note, TerminalWidth.note(note, 120));
        assertEquals(note, TerminalWidth.note(note));
    }

    @Test
    void whatGoesIntoAFileHasAHundred() {
        assertEquals(100, TerminalWidth.columns());
    }
}
