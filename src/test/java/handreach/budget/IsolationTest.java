package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.units.Dbm;
import handreach.units.Frequency;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class IsolationTest {
    private static final Frequency VHF = new Frequency(155);

    @ParameterizedTest
    @CsvFileSource(resources = "isolation-spacing.csv", numLinesToSkip = 3)
    void spacingIsolates(double mhz, double spacingM, double verticalDb, double horizontalDb) {
        Frequency frequency = new Frequency(mhz);
        assertEquals(verticalDb, Isolation.verticalDb(spacingM, frequency), 0.05);
        assertEquals(horizontalDb, Isolation.horizontalDb(spacingM, frequency, 4.3), 0.05);
    }

    @Test
    void aUsualPairNeedsSeventyTwoDecibels() { // by hand: 37 − (−119 + 84) = 72, which takes 24 m or 1 km at 155 MHz
        double needed = Isolation.neededAgainstBlockingDb(new Dbm(37), new Dbm(-119), 84);
        assertEquals(72, needed, 1e-12);
        assertEquals(24, Isolation.verticalSpacingM(needed, VHF), 0.5);
        assertEquals(1000, Isolation.horizontalSpacingM(needed, VHF, 4.3), 20);
    }

    @Test
    void spacingIsTheInverseOfIsolation() {
        for (double m = 2; m < 100; m *= 1.7) {
            assertEquals(m, Isolation.verticalSpacingM(Isolation.verticalDb(m, VHF), VHF), 1e-9);
            assertEquals(m, Isolation.horizontalSpacingM(Isolation.horizontalDb(m, VHF, 4), VHF, 4), 1e-9);
        }
    }

    @Test
    void noiseHeldToSixDecibelsBelowCostsOne() { // by hand: 10 log(1 + 10^−0.6) = 0.97 dB
        double ownDbm = -135.05 + 9;
        double needed = Isolation.neededAgainstNoiseDb(-100, 7.8, -135.05, 9);
        double arrivingDbm = -100 + 10 * Math.log10(7800) - needed;
        assertEquals(0.973, Isolation.desenseDb(new Dbm(arrivingDbm), new Dbm(ownDbm)), 0.001);
    }

    @Test
    void equalNoiseCostsThreeDecibels() {
        assertEquals(10 * Math.log10(2), Isolation.desenseDb(new Dbm(-120), new Dbm(-120)), 1e-12);
    }

    @Test
    void theThirdHarmonicOfVhfFallsOnUhf() { // 3 × 151 = 453 MHz
        assertEquals(OptionalInt.of(3), Isolation.harmonicOn(new Frequency(151), new Frequency(453.01), 8));
        assertEquals(OptionalInt.empty(), Isolation.harmonicOn(new Frequency(151), new Frequency(454), 8));
        assertEquals(OptionalInt.empty(), Isolation.harmonicOn(new Frequency(453), new Frequency(151), 8));
    }

    @Test
    void noSpacingIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Isolation.verticalDb(0, VHF));
        assertThrows(IllegalArgumentException.class, () -> Isolation.neededAgainstNoiseDb(-100, 0, -135, 9));
    }
}
