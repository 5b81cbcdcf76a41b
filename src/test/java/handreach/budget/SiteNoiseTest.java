package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.propagation.NoiseEnvironment;
import handreach.units.Dbm;
import handreach.units.Frequency;
import org.junit.jupiter.api.Test;

class SiteNoiseTest {
    @Test
    void aPlaceIsNamedWithItsNoiseAndItsDocument() { // Rec. ITU-R P.372: rural at 155 MHz 6.5 dB man-made, 1.6 galactic
        SiteNoise noise = SiteNoise.of(NoiseEnvironment.RURAL, new Frequency(155));
        assertEquals("rural", noise.label());
        assertEquals(10 * Math.log10(Math.pow(10, 0.653) + Math.pow(10, 0.162)), noise.medianDb(), 0.05);
        assertEquals("Rec. ITU-R P.372, median of hours and places", noise.source());
        assertEquals(
                "Rec. ITU-R P.372 carried on, floor ours; median of hours and places",
                SiteNoise.of(NoiseEnvironment.RURAL, new Frequency(455)).source());
    }

    /** kT0 is -173.975 dBm in a hertz (P.372: -174): a floor at kT0b is 0 dB, one 10 dB above it 10 dB, whatever the bandwidth. */
    @Test
    void aMeasuredFloorIsToldOverThermalNoise() {
        assertEquals(0, SiteNoise.measured(new Dbm(-173.975 + 30), 1, 5).medianDb(), 0.001);
        assertEquals(10, SiteNoise.measured(new Dbm(-163.975 + 40), 10, 5).medianDb(), 0.001);
        assertEquals(
                "measured floor, −118.5 dBm in 8.5 kHz",
                SiteNoise.measured(new Dbm(-118.5), 8.5, 5).label());
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new SiteNoise("x", Double.NaN, 1, "x"));
        assertThrows(IllegalArgumentException.class, () -> new SiteNoise("x", 1, -1, "x"));
    }
}
