package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TestRangeTest {
    private static final double STATED_DB = 0.005;

    private static TestRange range(double distanceM, double txM, double rxM, Polarization polarization) {
        return new TestRange(distanceM, txM, rxM, polarization, RangeGround.AVERAGE, OptionalDouble.empty());
    }

    /** Magnitude of the reflection coefficient at the point where the ground mirrors the ray; both ends 1.5 m up, as in the rows. */
    private static double reflection(TestRange range, double mhz) {
        return range.coefficient(
                        new Frequency(mhz), Math.atan2(range.txHeightM() + range.rxHeightM(), range.distanceM()))
                .abs();
    }

    /** Two-ray rows computed apart with Fresnel's coefficients (ITU-R P.527, P.526, from memory), εr 15, σ 0.005 S/m. */
    @Test
    void groundReflectionRows() {
        TestRange level = range(10, 1.5, 1.5, Polarization.VERTICAL);
        assertEquals(-0.29, level.groundEffectDb(new Frequency(446)), STATED_DB);
        assertEquals(0.069, reflection(level, 446), 5e-4);
        assertEquals(-2.30, range(10, 2, 3, Polarization.VERTICAL).groundEffectDb(new Frequency(146)), STATED_DB);
        assertEquals(4.54, range(10, 2, 3, Polarization.HORIZONTAL).groundEffectDb(new Frequency(146)), STATED_DB);
    }

    /** Same source: at 30 m |Γ| is 0.43 and 0.25 m of height is 0.6 dB; at 5 m and 446 MHz 3.2 dB; at 12 m |Γ| is 0.02. */
    @Test
    void pseudoBrewsterDistanceIsQuiet() {
        TestRange near = range(5, 1.5, 1.5, Polarization.VERTICAL);
        assertEquals(11.6, near.quietestDistanceM(), 0.05);
        assertEquals(3.2, near.heightSensitivityDb(new Frequency(446)), 0.25);
        TestRange far = range(30, 1.5, 1.5, Polarization.VERTICAL);
        assertEquals(0.43, reflection(far, 155), 5e-3);
        assertEquals(0.6, far.heightSensitivityDb(new Frequency(155)), 0.1);
        assertEquals(0.02, reflection(range(12, 1.5, 1.5, Polarization.VERTICAL), 446), 5e-3);
    }

    /** Far field, IEEE Std 149 (from memory), metres: the largest of 2D²/λ, 5D, 1.6 λ. */
    @ParameterizedTest
    @CsvSource({"146,0.6,3.3", "146,1.1,5.5", "446,0.5,2.5"})
    void farFieldRows(double mhz, double sizeM, double farM) {
        assertEquals(farM, TestRange.farFieldM(sizeM, new Frequency(mhz)), 0.05);
    }

    @Test
    void swappingTheEndsChangesNothing() {
        for (double mhz : new double[] {60, 155, 455})
            assertEquals(
                    range(9, 1, 2.4, Polarization.VERTICAL).groundEffectDb(new Frequency(mhz)),
                    range(9, 2.4, 1, Polarization.VERTICAL).groundEffectDb(new Frequency(mhz)),
                    1e-12);
    }

    /** Far away at grazing the ground mirrors with −1 and the two rays cancel: 20 log(4π h1 h2 / λ d). */
    @Test
    void grazingIsPlaneEarth() {
        TestRange far = range(5_000, 1.5, 1.5, Polarization.HORIZONTAL);
        double expected = 20 * Math.log10(4 * Math.PI * 1.5 * 1.5 / (new Frequency(155).wavelengthM() * 5_000));
        assertEquals(expected, far.groundEffectDb(new Frequency(155)), 0.1);
    }

    @Test
    void groundWithoutContrastReflectsNothing() {
        TestRange none =
                new TestRange(10, 1.5, 1.5, Polarization.VERTICAL, new RangeGround(1, 0), OptionalDouble.empty());
        assertEquals(0, none.groundEffectDb(new Frequency(155)), 1e-9);
    }

    @Test
    void badRangesAreToldAndGoodOnesAreNot() {
        Frequency uhf = new Frequency(446);
        assertTrue(RangeCheck.findings(range(2, 1.5, 1.5, Polarization.VERTICAL), new Frequency(155))
                .get(0)
                .contains("2 m is too close at 155 MHz"));
        assertTrue(Bench.together(RangeCheck.findings(range(5, 1.5, 1.5, Polarization.VERTICAL), uhf))
                .contains("0.25 m higher or lower"));
        assertTrue(Bench.together(RangeCheck.findings(range(400, 1.5, 1.5, Polarization.VERTICAL), uhf))
                .contains("the ray grazes the ground"));
        // both paths differ by one wave, 1.934 m: (6² − 1.934²)/(2 · 1.934) = 8.34 m
        assertTrue(Bench.together(RangeCheck.findings(range(8.34, 3, 3, Polarization.HORIZONTAL), new Frequency(155)))
                .contains("sits near a null"));
        assertTrue(RangeCheck.findings(range(12, 1.5, 1.5, Polarization.VERTICAL), uhf)
                .isEmpty());
        TestRange large =
                new TestRange(4, 1.5, 1.5, Polarization.VERTICAL, RangeGround.AVERAGE, OptionalDouble.of(1.1));
        assertTrue(
                Bench.together(RangeCheck.findings(large, new Frequency(146))).contains("begins at 5.5 m"));
    }

    @Test
    void declaredRangesReachTheWarnings() {
        String said = Bench.together(new Bench()
                .declare("distance_m = 2")
                .declare("tx_height_m = 1.5")
                .declare("rx_height_m = 1.5")
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                .against("helical")
                .warnings());
        assertTrue(said.contains("2 m is too close at 155 MHz"), said);
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> range(0, 1, 1, Polarization.VERTICAL));
        assertThrows(IllegalArgumentException.class, () -> range(10, Double.NaN, 1, Polarization.VERTICAL));
        assertThrows(IllegalArgumentException.class, () -> new RangeGround(0.5, 0));
        assertThrows(IllegalArgumentException.class, () -> TestRange.farFieldM(0, new Frequency(155)));
    }

    /** At 100 m and 1.5 m both paths differ by 45 mm, far less than half a wave: no null lies out there, the ray grazes the ground. */
    @Test
    void aGrazingRayIsNotCalledANull() {
        TestRange far =
                new TestRange(100, 1.5, 1.5, Polarization.VERTICAL, RangeGround.AVERAGE, OptionalDouble.of(0.5));
        String said = Bench.together(RangeCheck.findings(far, new Frequency(155)));
        assertTrue(said.contains("the ray grazes the ground"), said);
        assertFalse(said.contains("null"), said);
    }
}
