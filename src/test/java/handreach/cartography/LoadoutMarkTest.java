package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LoadoutMarkTest {
    @Test
    void tenLoadoutsDifferWithoutColour() {
        Set<String> letters = new HashSet<>();
        Set<List<Double>> dashes = new HashSet<>();
        Set<Hatch> hatches = new HashSet<>();
        for (int i = 0; i < 10; i++) {
            letters.add(LoadoutMark.of(i).letter());
            dashes.add(LoadoutMark.of(i).dashPx());
            hatches.add(LoadoutMark.of(i).hatch());
        }
        assertEquals(List.of(10, 10, 10), List.of(letters.size(), dashes.size(), hatches.size()));
    }

    /** Distance in Oklab; black lies 1 from white. */
    @Test
    void tenLoadoutsDifferByColour() {
        for (int i = 0; i < 10; i++)
            for (int k = 0; k < i; k++) {
                double[] a = NightColours.oklab(LoadoutMark.of(i).rgb());
                double[] b = NightColours.oklab(LoadoutMark.of(k).rgb());
                double apart =
                        Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
                assertTrue(apart >= 0.11, LoadoutMark.of(i) + " and " + LoadoutMark.of(k) + " lie " + apart + " apart");
            }
    }

    @Test
    void aHundredPairsOfColourAndPatternDiffer() {
        Set<String> pairs = new HashSet<>();
        for (int i = 0; i < 100; i++)
            pairs.add(LoadoutMark.of(i).rgb() + " " + LoadoutMark.of(i).dashPx());
        assertEquals(100, pairs.size());
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
        for (int i = 0; i < 10; i++) {
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
