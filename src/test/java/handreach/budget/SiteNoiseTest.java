package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.propagation.NoiseEnvironment;
import handreach.units.Frequency;
import org.junit.jupiter.api.Test;

class SiteNoiseTest {
    @Test
    void aPlaceIsNamedWithItsNoiseAndItsDocument() { // Rec. ITU-R P.372: rural at 155 MHz 6.5 dB man-made, 1.6 galactic
        SiteNoise noise = SiteNoise.of(NoiseEnvironment.RURAL, new Frequency(155));
        assertEquals("rural", noise.label());
        assertEquals(10 * Math.log10(Math.pow(10, 0.653) + Math.pow(10, 0.162)), noise.medianDb(), 0.05);
        assertEquals("Rec. ITU-R P.372", noise.source());
        assertEquals(
                "Rec. ITU-R P.372 carried on, floor ours",
                SiteNoise.of(NoiseEnvironment.RURAL, new Frequency(455)).source());
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new SiteNoise("x", Double.NaN, 1, "x"));
        assertThrows(IllegalArgumentException.class, () -> new SiteNoise("x", 1, -1, "x"));
    }
}
