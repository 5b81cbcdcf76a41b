package handreach.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class UnseenTest {
    /** By the general categories of the Unicode tables: every control, separator of lines, half pair, and every mark of direction. */
    @Test
    void coversWhatSteersATerminalOrTurnsTheReadingDirection() {
        for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
            int type = Character.getType(c);
            byte direction = Character.getDirectionality(c);
            boolean isDirection = type == Character.FORMAT
                    && (direction >= Character.DIRECTIONALITY_LEFT_TO_RIGHT_EMBEDDING
                                    && direction <= Character.DIRECTIONALITY_POP_DIRECTIONAL_ISOLATE
                            || c == 0x200E
                            || c == 0x200F
                            || c == 0x061C);
            boolean isObeyed = type == Character.CONTROL
                    || type == Character.SURROGATE
                    || type == Character.LINE_SEPARATOR
                    || type == Character.PARAGRAPH_SEPARATOR
                    || isDirection && direction != Character.DIRECTIONALITY_BOUNDARY_NEUTRAL
                    || c == 0xFEFF;
            assertEquals(isObeyed, Unseen.is(c), Integer.toHexString(c));
        }
    }

    @Test
    void lineEndsBecomeABlankAndTheRestAMark() {
        assertEquals("a b", Unseen.oneLine("a\r\n\n\tb"));
        assertEquals("\uFFFD]0;x\uFFFD \uFFFD\uFFFD", Unseen.oneLine("\u001B]0;x\u0007\u0085\u202E\uD800"));
        assertEquals("\uD83D\uDE00 é", Unseen.oneLine("\uD83D\uDE00 é"));
        String plain = "camp – 3 km";
        assertSame(plain, Unseen.oneLine(plain));
    }

    @Test
    void escapesKeepTheLinesOfTheFormat() {
        assertEquals("{\n\t\"\\u202E\\uDC00\\u007F\"\r\n}", Unseen.escaped("{\n\t\"\u202E\uDC00\u007F\"\r\n}"));
        assertTrue(Unseen.escaped("\"\u009B\"").chars().allMatch(c -> c < 0x7F));
    }
}
