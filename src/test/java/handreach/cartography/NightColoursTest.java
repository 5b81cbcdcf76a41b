package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class NightColoursTest {
    private static final int PAPER = 0x22292D;
    private static final int INK = 0xECE8DD;
    private static final NightColours NIGHT = new NightColours(PAPER, INK);
    /** W3C, Web Content Accessibility Guidelines 2.1: graphics against what is beside them, 3 to 1. */
    private static final double CONTRAST = 3;
    /** The same, level AAA for text. */
    private static final double STRICTEST = 7;
    /** Rounding of two channels to 8 bits. */
    private static final int ROUNDING = 2;

    private static double contrast(int one, int other) {
        double a = Luminance.of(one) + 0.05;
        double b = Luminance.of(other) + 0.05;
        return Math.max(a, b) / Math.min(a, b);
    }

    private static void assertNear(int expected, int actual) {
        for (int shift = 0; shift <= 16; shift += 8)
            assertEquals(expected >> shift & 0xFF, actual >> shift & 0xFF, ROUNDING, Srgb.hex(actual));
    }

    @Test
    void whiteBecomesThePaperOfTheNightAndBlackItsInk() {
        assertNear(PAPER, NIGHT.of(0xFFFFFF));
        assertNear(INK, NIGHT.of(0x000000));
    }

    @Test
    void wordsOfFiguresAreAsEasyToReadByNightAsTheGuidelinesAskForAtTheirStrictest() {
        for (int words : new int[] {0x1F262B, 0x4A545B})
            assertTrue(contrast(NIGHT.of(words), PAPER) >= STRICTEST, Srgb.hex(NIGHT.of(words)));
    }

    @Test
    void theDarkerByDayTheLighterByNight() {
        for (int level = 0x40; level < 0xFF; level++)
            assertTrue(
                    Luminance.of(NIGHT.of(Srgb.grey(level))) >= Luminance.of(NIGHT.of(Srgb.grey(level + 1))),
                    "grey " + level);
    }

    @Test
    void everyLoadoutStaysApartFromThePaperAndKeepsItsLeadingChannel() {
        for (int i = 0; i < 8; i++) {
            int day = LoadoutMark.of(i).rgb();
            int night = NIGHT.of(day);
            assertTrue(contrast(night, PAPER) >= CONTRAST, Srgb.hex(day) + " becomes " + Srgb.hex(night));
            assertEquals(leading(day), leading(night), Srgb.hex(day) + " becomes " + Srgb.hex(night));
        }
    }

    /** Which channel is the strongest; −1 for a colour that is nearly grey. */
    private static int leading(int rgb) {
        int red = rgb >> 16 & 0xFF;
        int green = rgb >> 8 & 0xFF;
        int blue = rgb & 0xFF;
        int most = Math.max(red, Math.max(green, blue));
        if (most - Math.min(red, Math.min(green, blue)) < 0x28) return -1;
        return most == red ? 2 : most == green ? 1 : 0;
    }
}
