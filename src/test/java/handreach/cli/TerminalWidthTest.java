package handreach.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class TerminalWidthTest {
    @Test
    void aTerminalOf120ColumnsIsUsedAndAnyOtherGetsAHundred() {
        assertEquals(100, TerminalWidth.of(80));
        assertEquals(100, TerminalWidth.of(119));
        assertEquals(120, TerminalWidth.of(120));
        assertEquals(120, TerminalWidth.of(300));
    }

    @Test
    void whatGoesIntoAFileHasAHundred() {
        assertEquals(100, TerminalWidth.columns());
    }
}
