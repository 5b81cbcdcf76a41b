package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.units.Dbi;
import handreach.units.Frequency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class ExposureTest {
    private static final double ROUNDING_M = 0.0051;

    @ParameterizedTest
    @CsvFileSource(resources = "exposure-distances.csv", numLinesToSkip = 3)
    void distancesAgree(
            Exposure.Rule rule,
            double powerW,
            double gainDbi,
            double mhz,
            double duty,
            Exposure.People people,
            double freeM,
            double usualM,
            double mirrorM) {
        double limit = Exposure.limitWPerM2(rule, people, new Frequency(mhz));
        Dbi gain = new Dbi(gainDbi);
        assertEquals(freeM, Exposure.distanceM(powerW, gain, duty, Exposure.NO_REFLECTION, limit), ROUNDING_M);
        assertEquals(usualM, Exposure.distanceM(powerW, gain, duty, Exposure.USUAL_REFLECTION, limit), ROUNDING_M);
        assertEquals(mirrorM, Exposure.distanceM(powerW, gain, duty, Exposure.FULL_REFLECTION, limit), ROUNDING_M);
    }

    @Test
    void limitsFollowTheRules() { // FCC 47 CFR 1.1310 Table 1: f/150 mW/cm² ÷ 10; ICNIRP 2020: f/200 W/m² (from memory)
        Frequency uhf = new Frequency(455);
        assertEquals(455 / 150.0, Exposure.limitWPerM2(Exposure.Rule.FCC, Exposure.People.PUBLIC, uhf), 1e-9);
        assertEquals(455 / 30.0, Exposure.limitWPerM2(Exposure.Rule.FCC, Exposure.People.WORKERS, uhf), 1e-9);
        assertEquals(455 / 200.0, Exposure.limitWPerM2(Exposure.Rule.ICNIRP, Exposure.People.PUBLIC, uhf), 1e-9);
        for (Exposure.Rule rule : Exposure.Rule.values())
            assertEquals(2, Exposure.limitWPerM2(rule, Exposure.People.PUBLIC, new Frequency(155)), 1e-9);
    }

    @Test
    void whatIsPrintedIsRoundedUpToHalfMetres() { // 2.01 m becomes 2.5 m
        assertEquals(2.5, Exposure.keepAwayM(Exposure.Rule.FCC, 25, new Dbi(5), 0.5, new Frequency(155)), 0);
    }

    @Test
    void fourTimesThePowerIsTwiceTheDistance() {
        double one = Exposure.distanceM(5, new Dbi(2.15), 0.5, 1, 2);
        assertEquals(2 * one, Exposure.distanceM(20, new Dbi(2.15), 0.5, 1, 2), 1e-12);
        assertEquals(0, Exposure.distanceM(0, new Dbi(2.15), 0.5, 1, 2), 0);
    }

    @Test
    void beyondTheTablesNoLimitIsStated() {
        assertThrows(
                IllegalArgumentException.class,
                () -> Exposure.limitWPerM2(Exposure.Rule.FCC, Exposure.People.PUBLIC, new Frequency(2400)));
    }
}
