package handreach.propagation;

import static handreach.propagation.FullWaveRows.number;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The smooth-earth term against exact solutions, alone and as the default model gives it over level ground. */
class SmoothGroundTest {
    private static final double EARTH_M = 4.0 / 3 * 6_371_000;

    /** As stated at {@link SmoothGround#lossDb}. */
    private static final double STATED_DB = 0.9;

    private static final int ROWS = 3240;

    /** Two ways to one formula differ by rounding alone. */
    private static final double ROUNDING_DB = 1e-8;

    /** What the default model promises on smooth ground. */
    private static final double PROMISED_DB = 1;

    @Test
    void agreesWithTheExactField() { // published solutions, re-made: Norton (short), residue series (long)
        List<Map<String, String>> rows = FullWaveRows.read("smooth-ground-residue.csv");
        assertEquals(ROWS, rows.size());
        for (Map<String, String> row : rows) {
            double d = number(row, "distance_m");
            double h1 = number(row, "height1_m");
            double h2 = number(row, "height2_m");
            PathConditions conditions = FullWaveRows.conditions(
                    number(row, "frequency_mhz"),
                    FullWaveRows.polarization(row),
                    number(row, "permittivity"),
                    number(row, "conductivity"),
                    4.0 / 3);
            SmoothGround smooth =
                    new SmoothGround(conditions.frequency(), conditions.polarization(), conditions.ground(), EARTH_M);
            assertEquals(number(row, "excess_db"), smooth.lossDb(d, h1, h2), STATED_DB, row.toString());
            double excess = LossModels.HANDHELD
                    .loss(level(d), new Terminals(h1, h2), conditions)
                    .excessDb();
            assertEquals(number(row, "excess_db"), excess, PROMISED_DB, row.toString());
        }
    }

    /** Ten samples or one every 30 m, whichever is more. */
    private static Profile level(double lengthM) {
        int last = (int) Math.max(10, Math.round(lengthM / 30));
        double[] km = new double[last + 1];
        double[] height = new double[last + 1];
        for (int i = 0; i <= last; i++) {
            km[i] = lengthM * i / last / 1000;
            height[i] = 100;
        }
        return Profiles.of(km, height);
    }

    @Test
    void curvatureLossFollowsTheResidueSeriesOfALowPair() {
        // Σ exp(jX t_s) over the zeros t_s = |a_s| e^{jπ/3} of the Airy function, against 0.28209 X^(−3/2) of the flat
        // earth.
        // |a_s| from the asymptotic series, Abramowitz and Stegun 10.4.94, good to 2e-4 at the first zero.
        for (double x = 0.1; x < 6; x += 0.1) {
            double re = 0;
            double im = 0;
            for (int s = 1; s <= 3000; s++) {
                double t = 3 * Math.PI * (4 * s - 1) / 8;
                double zero = Math.pow(t, 2.0 / 3)
                        * (1 + 5 / (48 * t * t) - 5 / (36 * Math.pow(t, 4)) + 77125 / (82944 * Math.pow(t, 6)));
                double size = Math.exp(-x * zero * Math.sin(Math.PI / 3));
                re += size * Math.cos(x * zero * 0.5);
                im += size * Math.sin(x * zero * 0.5);
            }
            double exact = -20 * Math.log10(Math.hypot(re, im) * Math.pow(x, 1.5) / 0.282095);
            assertEquals(exact, SmoothGround.curvatureDb(x), 0.15, "X " + x);
        }
    }

    @ParameterizedTest
    @EnumSource(Polarization.class)
    void nortonFieldAgreesWithTheSlowAndPlainSum(
            Polarization plane) { // oracle: the two-ray sum written with complex numbers
        Random random = new Random(3);
        for (int i = 0; i < 500; i++) {
            Frequency frequency = new Frequency(30 * Math.pow(33, random.nextDouble()));
            Ground ground = new Ground(4 + 26 * random.nextDouble(), 0.02 * random.nextDouble());
            double d = 50 * Math.pow(400, random.nextDouble());
            double h1 = 0.5 + 10 * random.nextDouble();
            double h2 = 0.5 + 10 * random.nextDouble();
            double fast = new SmoothGround(frequency, plane, ground, EARTH_M).nortonDb(d, h1, h2);
            assertEquals(plainNortonDb(frequency, plane, ground, d, h1, h2), fast, 0.01);
        }
    }

    private static double plainNortonDb(
            Frequency frequency, Polarization plane, Ground ground, double d, double h1, double h2) {
        double r1 = Math.hypot(d, h1 - h2);
        double r2 = Math.hypot(d, h1 + h2);
        double sine = (h1 + h2) / r2;
        var reflection = Reflection.coefficient(frequency, plane, ground, sine);
        var guided = SurfaceWave.attenuation(SurfaceWave.numericalDistance(frequency, plane, ground, r2, sine));
        var lag = new org.apache.commons.math3.complex.Complex(0, -frequency.waveNumber() * (r2 - r1)).exp();
        var one = org.apache.commons.math3.complex.Complex.ONE;
        var sum = one.add(reflection
                .add(one.subtract(reflection).multiply(guided))
                .multiply(lag)
                .multiply(r1 / r2));
        return -20 * Math.log10(sum.abs());
    }

    @Test
    void passesFromSightToShadowWithoutAStep() { // limit: the two horizons meet
        SmoothGround smooth = new SmoothGround(new Frequency(446), Polarization.VERTICAL, Ground.AVERAGE, EARTH_M);
        double horizon = Math.sqrt(2 * EARTH_M) * (Math.sqrt(1.5) + Math.sqrt(10));
        assertEquals(smooth.lossDb(horizon - 0.01, 1.5, 10), smooth.lossDb(horizon + 0.01, 1.5, 10), 1e-4);
        double before = smooth.lossDb(700, 1.5, 10);
        for (double d = 707; d < 60_000; d *= 1.01) {
            double now = smooth.lossDb(d, 1.5, 10);
            assertTrue(now > before && now - before < 0.5, "at " + d + " m");
            before = now;
        }
    }

    @Test
    void theBulgeCostsNothingFromTheRequiredClearanceOn() {
        // By hand, Rec. ITU-R P.526-15 section 3.2: clear from h_req = 0.552 √(d1 d2 λ/d). Antennas of one height: d1 =
        // d2 = d/2,
        // so h_req = 0.276 √(λ d), and the clearance is the height less the bulge (d/2)²/2a. From there on the field is
        // that of the heights over the tangent plane alone.
        Frequency frequency = new Frequency(446);
        SmoothGround smooth = new SmoothGround(frequency, Polarization.VERTICAL, Ground.AVERAGE, EARTH_M);
        double d = 10_000;
        double bulge = d * d / 8 / EARTH_M;
        double required = 0.276 * Math.sqrt(frequency.wavelengthM() * d);
        double clear = 1.001 * required;
        assertEquals(smooth.nortonDb(d, clear, clear), smooth.lossDb(d, bulge + clear, bulge + clear), ROUNDING_DB);
        double blocked = 0.999 * required;
        double apart = smooth.lossDb(d, bulge + blocked, bulge + blocked) - smooth.nortonDb(d, blocked, blocked);
        assertTrue(Math.abs(apart) > 1000 * ROUNDING_DB, "nothing of the bulge is left: " + apart);
    }

    @Test
    void horizontalPlaneEarthIsItsLimit() { // limit: δ large, no surface wave: 40 log d − 20 log(h1 h2)
        Frequency frequency = new Frequency(146);
        SmoothGround smooth = new SmoothGround(frequency, Polarization.HORIZONTAL, new Ground(80, 100), EARTH_M * 1e6);
        double planeEarth = 40 * Math.log10(2000) - 20 * Math.log10(1.5 * 3);
        assertEquals(planeEarth, FreeSpace.lossDb(frequency, 2) + smooth.lossDb(2000, 1.5, 3), 0.05);
    }

    @Test
    void raisingAnAntennaBelowTheLobesAlwaysHelps() { // law
        for (double mhz : new double[] {30, 146, 446, 900}) {
            SmoothGround smooth =
                    new SmoothGround(new Frequency(mhz), Polarization.HORIZONTAL, Ground.AVERAGE, EARTH_M);
            double before = smooth.lossDb(5000, 0.5, 1.5);
            for (double h = 0.6; h < 20; h *= 1.1) {
                double now = smooth.lossDb(5000, h, 1.5);
                assertTrue(now < before, mhz + " MHz, " + h + " m");
                before = now;
            }
        }
    }
}
