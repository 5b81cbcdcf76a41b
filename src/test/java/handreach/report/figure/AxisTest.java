package handreach.report.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.units.Decibels;
import java.util.List;
import org.junit.jupiter.api.Test;

class AxisTest {
    @Test
    void ticksAreRoundAndInsideTheAxis() {
        Axis axis = Axis.rounded(-3.2, 7.9, 6, 0, 100);
        assertEquals(-4, axis.low(), 1e-12);
        assertEquals(8, axis.high(), 1e-12);
        assertEquals(List.of(-4.0, -2.0, 0.0, 2.0, 4.0, 6.0, 8.0), axis.ticks(6));
        assertEquals("\u22122", axis.text(-2, 6));
        assertEquals("0.0", Decibels.number(-0.04, 1));
        assertEquals("+0.3", Decibels.signed(0.3, 1));
        assertEquals("0.0", Decibels.signed(-0.01, 1));
    }
}
