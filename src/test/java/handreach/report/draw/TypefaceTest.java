package handreach.report.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class TypefaceTest {
    @Test
    void widthGrowsWithTextAndSize() {
        Typeface face = Typeface.of(false);
        assertEquals(2 * face.widthPx("abc", 12), face.widthPx("abc", 24), 1e-9);
        assertEquals(face.widthPx("ab", 12) + face.widthPx("c", 12), face.widthPx("abc", 12), 1e-9);
        assertTrue(Typeface.of(true).widthPx("abc", 12) > face.widthPx("abc", 12));
    }

    @Test
    void figuresAreAllAsWide() { // so that columns of numbers stand under each other
        for (char c = '0'; c <= '9'; c++)
            assertEquals(Typeface.of(false).widthPx("0", 12), Typeface.of(false).widthPx("" + c, 12), 1e-9);
    }

    @Test
    void whatTheFaceLacksBecomesAQuestionMarkAndControlsGo() {
        assertEquals("a?b", Typeface.of(false).printable("a\u5C71b"));
        assertEquals("a b", Typeface.of(false).printable("a\n\u0000\u200Eb"));
        assertEquals("Grüße, Łódź, Ωμέγα, \u2212 ° ″", Typeface.of(false).printable("Grüße, Łódź, Ωμέγα, \u2212 ° ″"));
    }

    @Test
    void lettersHaveOutlines() {
        var box = Typeface.of(true).outline("H", 100).getBounds2D();
        assertEquals(73, box.getHeight(), 3);
        assertTrue(box.getMinY() < -60 && box.getMaxY() < 1, "stands on its base line, y downwards");
        assertFalse(Typeface.of(true).outline("  ", 10).getPathIterator(null).isDone() == false);
    }
}
