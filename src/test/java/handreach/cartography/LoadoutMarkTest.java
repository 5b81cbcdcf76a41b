package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LoadoutMarkTest {
    @Test
    void eightLoadoutsDifferWithoutColour() {
        Set<String> letters = new HashSet<>();
        Set<List<Double>> dashes = new HashSet<>();
        for (int i = 0; i < 8; i++) {
            letters.add(LoadoutMark.of(i).letter());
            if (i < 7) dashes.add(LoadoutMark.of(i).dashPx());
        }
        assertEquals(8, letters.size());
        assertEquals(7, dashes.size());
    }

    @Test
    void fortyTwoPairsOfColourAndPatternDiffer() {
        Set<String> pairs = new HashSet<>();
        for (int i = 0; i < 42; i++)
            pairs.add(LoadoutMark.of(i).rgb() + " " + LoadoutMark.of(i).dashPx());
        assertEquals(42, pairs.size());
    }

    @Test
    void lettersGoOnAfterZ() {
        assertEquals("Z", LoadoutMark.of(25).letter());
        assertEquals("AA", LoadoutMark.of(26).letter());
        assertEquals("AZ", LoadoutMark.of(51).letter());
        assertEquals("BA", LoadoutMark.of(52).letter());
    }

    @Test
    void thinLinesStandOutFromWhite() { // W3C WCAG 2.1, 1.4.11: 3:1 for graphics
        for (int i = 0; i < 6; i++) {
            double contrast = 1.05 / (Luminance.of(LoadoutMark.of(i).rgb()) + 0.05);
            assertTrue(contrast >= 4, LoadoutMark.of(i) + " has contrast " + contrast);
        }
    }

    @Test
    void hatchesInkDifferentPixels() {
        Set<String> seen = new HashSet<>();
        for (Hatch hatch : Hatch.values()) {
            StringBuilder pixels = new StringBuilder();
            for (int y = 0; y < 14; y++) for (int x = 0; x < 14; x++) pixels.append(hatch.inks(x, y) ? '#' : '.');
            seen.add(pixels.toString());
        }
        assertEquals(Hatch.values().length, seen.size());
    }
}
