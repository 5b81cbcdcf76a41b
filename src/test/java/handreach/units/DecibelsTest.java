package handreach.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class DecibelsTest {
    @Test
    void noNumberIsANegativeZero() {
        assertEquals("0.0", Decibels.number(-0.04, 1));
        assertEquals("0", Decibels.number(-0.0, 0));
        assertEquals("-0.1", Decibels.number(-0.06, 1));
        assertEquals("0.0", Decibels.signed(-0.04, 1));
        assertEquals("+0.1", Decibels.signed(0.06, 1));
        assertEquals("-0.1", Decibels.signed(-0.06, 1));
    }

    @Test
    void aSentenceCarriesATenthAndTheUnit() {
        assertEquals("0.1 dB", Decibels.text(0.10723865391773302));
        assertEquals("\u22127.2 dB", Decibels.text(-7.2));
    }
}
