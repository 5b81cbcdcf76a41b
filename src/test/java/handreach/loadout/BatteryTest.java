package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class BatteryTest {
    /** By hand: 0.05 × 1500 + 0.05 × 250 + 0.9 × 60 = 141.5 mA from 2200 mAh. */
    @Test
    void hoursAreCapacityOverMeanCurrent() {
        assertEquals(2200 / 141.5, new Battery(2200, 250, 60, 0.05, 0.05).hours(1500), 1e-12);
    }

    @Test
    void aRadioThatOnlySendsLastsByThatCurrentAlone() {
        assertEquals(2, new Battery(2000, 250, 60, 1, 0).hours(1000), 1e-12);
    }

    @Test
    void moreThanAllTheTimeIsADefect() {
        assertThrows(IllegalArgumentException.class, () -> new Battery(2000, 250, 60, 0.7, 0.4));
    }
}
