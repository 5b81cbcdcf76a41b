package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.loadout.StatedSensitivity.Across;
import handreach.loadout.StatedSensitivity.Mark;
import org.junit.jupiter.api.Test;

class StatedSensitivityTest {
    /** dBm = dBµV − 106.99 across 50 ohm: V²/R by hand, 1 µV is 2e-14 W. */
    @Test
    void aVoltageAcrossFiftyOhmsIsAPower() {
        assertEquals(10 * Math.log10(2e-14 / 1e-3), level(1, Across.LOAD, Mark.SINAD_12), 1e-9);
        assertEquals(-106.99, level(1, Across.LOAD, Mark.SINAD_12), 0.005);
        assertEquals(-119.03, level(0.25, Across.LOAD, Mark.SINAD_12), 0.005);
    }

    @Test
    void anOpenCircuitShowsTwiceTheVoltage() {
        assertEquals(level(0.25, Across.LOAD, Mark.SINAD_12), level(0.5, Across.OPEN_CIRCUIT, Mark.SINAD_12), 1e-9);
    }

    @Test
    void quietingTakesMoreSignalThanSinad() {
        assertEquals(level(0.35, Across.LOAD, Mark.SINAD_12) - 3, level(0.35, Across.LOAD, Mark.QUIETING_20), 1e-9);
    }

    @Test
    void noVoltageIsADefect() {
        assertThrows(IllegalArgumentException.class, () -> level(0, Across.LOAD, Mark.SINAD_12));
    }

    private static double level(double microvolts, Across across, Mark mark) {
        return StatedSensitivity.ofMicrovolts(microvolts, across, mark).dbm();
    }
}
