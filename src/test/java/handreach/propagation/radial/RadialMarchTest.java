package handreach.propagation.radial;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** When a radial marched in lockstep is marched again by itself. */
class RadialMarchTest {
    @Test
    void whatGroundCanDoIsBelieved() {
        assertTrue(RadialMarch.isSound(new double[] {6, -8, 20, 45, 64, 58, 40, 80, 120}));
        assertTrue(RadialMarch.isSound(new double[] {150, 100, 66}), "in lost ground rounding may do what it likes");
    }

    @Test
    void aFieldOutOfNothingIsNot() {
        // as seen on a radial over hills at 446 MHz: the excess by itself is 50, 58 and 63 dB
        assertFalse(RadialMarch.isSound(new double[] {40, 50, -67, -43}));
        assertFalse(RadialMarch.isSound(new double[] {61, 58, 32, 30}), "a fall of 26 dB in one sample");
        assertFalse(RadialMarch.isSound(new double[] {3, 2, -13}));
        assertFalse(RadialMarch.isSound(new double[] {3, Double.NaN, 4}), "no number");
        assertFalse(RadialMarch.isSound(new double[] {3, Double.POSITIVE_INFINITY}), "no end");
    }
}
