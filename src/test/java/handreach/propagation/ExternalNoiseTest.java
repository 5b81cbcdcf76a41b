package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.units.Frequency;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ExternalNoiseTest {
    @ParameterizedTest
    @CsvFileSource(resources = "man-made-noise-p372.csv", useHeadersInDisplayName = true)
    void mediansAgreeWithP372(double mhz, double city, double residential, double rural, Double galactic) {
        Frequency f = new Frequency(mhz);
        assertEquals(city, ExternalNoise.manMadeDb(NoiseEnvironment.CITY, f), 0.0051);
        assertEquals(residential, ExternalNoise.manMadeDb(NoiseEnvironment.RESIDENTIAL, f), 0.0051);
        assertEquals(rural, ExternalNoise.manMadeDb(NoiseEnvironment.RURAL, f), 0.0051);
        if (galactic != null) assertEquals(galactic, ExternalNoise.galacticDb(f), 0.0051);
    }

    @ParameterizedTest
    @CsvSource({"CITY,8.4", "RESIDENTIAL,5.8", "RURAL,6.8", "QUIET_RURAL,6.8"})
    void placeSpreadAgreesWithTheTableOfP372(NoiseEnvironment environment, double placesDb) {
        // Rec. ITU-R P.372-16, table of the variations of man-made noise with place, in tenths of a decibel (from
        // memory).
        // It has no row for quiet rural; that it is taken as rural is ours.
        assertEquals(placesDb, environment.placeSpreadDb());
    }

    @ParameterizedTest
    @CsvSource({"10,0,4.28", "10,10,0.67", "7,0,6.38", "7,10,1.25"})
    void degradationAgreesWithTheCascade(double noiseFigureDb, double antennaLossDb, double degradationDb) {
        // Rec. ITU-R P.372-16 section 2, external noise 12.5 dB; independent calculation, 0.01 dB.
        assertEquals(degradationDb, ExternalNoise.degradationDb(12.5, antennaLossDb, noiseFigureDb), 0.0051);
    }

    @Test
    void tenDecibelsOfBodyCostLessOnReceiveThanOnTransmit() {
        // By hand from the rows above: the receive direction loses 10 − (4.28 − 0.67) = 6.40 dB of carrier to noise.
        double net = 10 - (ExternalNoise.degradationDb(12.5, 0, 10) - ExternalNoise.degradationDb(12.5, 10, 10));
        assertEquals(6.40, net, 0.0051);
    }

    @Test
    void aLossBelowNoneIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> ExternalNoise.degradationDb(10, -1, 7));
    }

    @ParameterizedTest
    @EnumSource(NoiseEnvironment.class)
    void theMedianJumpsNowhere(NoiseEnvironment environment) {
        for (double mhz = 30; mhz < 1000; mhz *= 1.005) {
            double here = ExternalNoise.medianDb(environment, new Frequency(mhz));
            double next = ExternalNoise.medianDb(environment, new Frequency(mhz * 1.005));
            assertTrue(Math.abs(here - next) < 0.1, environment + " at " + mhz);
        }
    }

    @Test
    void theQuietestPlaceHearsTheSky() {
        Frequency f = new Frequency(146);
        // By hand: galactic 52 − 23 log 146 = 2.22 dB, quiet rural −8.3 dB: sum 2.6 dB.
        assertEquals(2.6, ExternalNoise.medianDb(NoiseEnvironment.QUIET_RURAL, f), 0.05);
        assertTrue(ExternalNoise.medianDb(NoiseEnvironment.CITY, f)
                > ExternalNoise.medianDb(NoiseEnvironment.RESIDENTIAL, f));
    }

    @Test
    void aboveTheCurvesAWarningSaysSo() {
        assertEquals(List.of(), ExternalNoise.warnings(NoiseEnvironment.CITY, new Frequency(146)));
        assertEquals(
                1,
                ExternalNoise.warnings(NoiseEnvironment.CITY, new Frequency(446))
                        .size());
        assertEquals(
                1,
                ExternalNoise.warnings(NoiseEnvironment.QUIET_RURAL, new Frequency(146))
                        .size());
        assertEquals(5, ExternalNoise.medianDb(NoiseEnvironment.CITY, new Frequency(900)), 0.1);
    }
}
