package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.units.Dbm;
import handreach.units.Frequency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class IsolationTest {
    private static final Frequency VHF = new Frequency(155);

    @ParameterizedTest
    @CsvFileSource(resources = "isolation-spacing.csv", numLinesToSkip = 3)
    void spacingIsolates(double mhz, double spacingM, double verticalDb) {
        Frequency frequency = new Frequency(mhz);
        assertEquals(verticalDb, Isolation.verticalDb(spacingM, frequency), 0.05);
    }

    @Test
    void aUsualPairNeedsSeventyTwoDecibels() { // by hand: 37 − (−119 + 84) = 72, which takes 24 m at 155 MHz
        double needed = Isolation.neededAgainstBlockingDb(new Dbm(37), new Dbm(-119), 84);
        assertEquals(72, needed, 1e-12);
        assertEquals(24, Isolation.verticalSpacingM(needed, VHF), 0.5);
    }

    @Test
    void spacingIsTheInverseOfIsolation() {
        for (double m = 2; m < 100; m *= 1.7) {
            assertEquals(m, Isolation.verticalSpacingM(Isolation.verticalDb(m, VHF), VHF), 1e-9);
        }
    }

    @Test
    void noSpacingIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Isolation.verticalDb(0, VHF));
    }
}
