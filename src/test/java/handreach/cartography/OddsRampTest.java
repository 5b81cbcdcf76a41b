package handreach.cartography;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class OddsRampTest {
    @Test
    void luminanceFallsFromClassToClass() { // so that a grey print ranks the places
        for (int k = 1; k <= OddsRamp.BREAKS.size(); k++) {
            double step = Luminance.of(OddsRamp.rgb(k - 1)) - Luminance.of(OddsRamp.rgb(k));
            assertTrue(step > 0.05, "from class " + (k - 1) + " to " + k + " luminance falls by " + step);
        }
    }

    @Test
    void theMapItselfGrowsLighterAllTheWay() {
        double before = -1;
        for (int i = 0; i <= 200; i++) {
            double here = Luminance.of(OddsRamp.along(i / 200.0));
            assertTrue(here > before, "at " + i / 200.0);
            before = here;
        }
    }

    @Test
    void reliefShowsThroughEveryClass() {
        for (double odds : new double[] {0.2, 0.4, 0.6, 0.8, 0.95}) {
            double dark = Luminance.of(OddsRamp.overShade(odds, 20));
            double light = Luminance.of(OddsRamp.overShade(odds, 140));
            assertTrue(light > 1.5 * dark, "at odds " + odds);
        }
    }

    @Test
    void oddsBelowTheFirstBreakLeaveTheReliefBare() {
        assertEquals(Srgb.grey(OddsRamp.lightened(99)), OddsRamp.overShade(0.0999, 99));
        assertEquals(0, OddsRamp.classOf(0));
        assertEquals(5, OddsRamp.classOf(1));
        assertEquals(5, OddsRamp.classOf(0.9));
        assertEquals(4, OddsRamp.classOf(0.8999999));
    }

    @Test
    void labelsNameTheBreaks() {
        assertEquals("under 10 %", OddsRamp.label(0));
        assertEquals("70 to 90 %", OddsRamp.label(4));
        assertEquals("90 % and more", OddsRamp.label(5));
    }

    @Test
    void luminanceOfWhiteIsOneAndOfMidGreyAFifth() { // published: W3C WCAG 2.1; sRGB 119 grey has luminance 0.184
        assertEquals(1, Luminance.of(0xFFFFFF), 1e-6);
        assertEquals(0, Luminance.of(0), 1e-9);
        assertEquals(0.184, Luminance.of(0x777777), 0.001);
    }
}
