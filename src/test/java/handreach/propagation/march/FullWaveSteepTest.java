package handreach.propagation.march;

import static handreach.propagation.FullWaveRows.conditions;
import static handreach.propagation.FullWaveRows.faces;
import static handreach.propagation.FullWaveRows.number;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.propagation.FullWaveRows;
import handreach.propagation.NoAnswer;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.units.Polarization;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Test;

/** The march on slopes of 20 to 45 degrees, and its silence behind steeper ones. */
class FullWaveSteepTest {
    private static final PathConditions CHANNEL = conditions(155, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);

    /** Excess up to which the integral equation itself is no more doubtful than elsewhere. */
    private static final double SOUND_DB = 45;

    /** What the march is meant to hold on slopes to 40 degrees. */
    private static final double MEAN_DB = 0.5;

    private static final double DEVIATION_DB = 1;
    private static final double LARGEST_DB = 3;
    private static final double FACES_DB = 1;

    @Test
    void alongRealSteepGroundItIsTheBoundaryIntegral() { // published: fullwave/steep/along.csv
        SummaryStatistics error = new SummaryStatistics();
        Map<String, FullWaveRadial> marches = new HashMap<>();
        for (Map<String, String> row : FullWaveRows.read("fullwave/steep/along.csv")) {
            double truth = number(row, "loss_two_passes_db");
            if (truth - number(row, "free_space_db") > SOUND_DB) continue;
            FullWaveRadial radial = marches.computeIfAbsent(
                    row.get("id"), id -> FieldMarch.along(FullWaveRows.profile("steep/" + id), 1.5, 1.5, CHANNEL));
            int sample = (int) Math.round(number(row, "distance_km") / 0.03);
            double by = radial.meanLossDb(sample) - truth;
            assertEquals(0, by, LARGEST_DB, row.toString());
            error.addValue(by);
        }
        assertTrue(error.getN() > 60, error.getN() + " points");
        assertEquals(0, error.getMean(), MEAN_DB);
        assertTrue(error.getStandardDeviation() < DEVIATION_DB, error.toString());
    }

    @Test
    void overValleysAndRidgesItIsTheBoundaryIntegral() { // published: fullwave/steep/made.csv
        for (Map<String, String> row : FullWaveRows.read("fullwave/steep/made.csv")) {
            boolean isValley = row.get("shape").equals("valley");
            Profile profile = faces(number(row, "slope_deg"), isValley ? -100 : 100, isValley ? 90 : 400);
            assertEquals(number(row, "excess_db"), lastSixtyMetresDb(profile), FACES_DB, row.toString());
        }
    }

    /** Excess of the plain mean power over the last 60 m, as the rows have it. */
    private static double lastSixtyMetresDb(Profile profile) {
        FieldMarchGround ground = FieldMarch.ground(profile, 1.5, CHANNEL);
        FieldMarchWave wave = FieldMarchWave.of(CHANNEL);
        FieldMarch march = new FieldMarch(ground, FieldMarchGrid.fast(ground, wave.wavelengthM(), 3), wave, 1.5, 1.5);
        march.run();
        double sum = 0;
        for (int i = 0; i <= 60; i++) sum += march.track(0).at(1000 * profile.lengthKm() - i);
        return -10 * Math.log10(sum / 61);
    }

    @Test
    void agreesWithHalfItsStepsAndNodesOnSteepGround() { // oracle: seeded ground, 20 to 45 degrees
        for (double mhz : new double[] {155, 446}) {
            SummaryStatistics error = new SummaryStatistics();
            for (int seed = 0; seed < 5; seed++) {
                Profile profile = steep(seed, 20 + 6 * seed, 61);
                PathConditions conditions = conditions(mhz, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);
                double tx = seed % 2 == 0 ? 1.5 : 8;
                FullWaveRadial quick = FieldMarch.along(profile, tx, 1.5, conditions);
                FullWaveRadial fine = fine(profile, tx, conditions);
                for (int i = 6; i < profile.count(); i++)
                    if (fine.excessDb(i) < SOUND_DB) error.addValue(quick.excessDb(i) - fine.excessDb(i));
            }
            assertTrue(error.getN() > 60, error.getN() + " points");
            assertEquals(0, error.getMean(), MEAN_DB, mhz + " MHz");
            assertTrue(error.getStandardDeviation() < DEVIATION_DB, mhz + " MHz: " + error);
            assertTrue(error.getMax() < LARGEST_DB && error.getMin() > -LARGEST_DB, mhz + " MHz: " + error);
        }
    }

    private static FullWaveRadial fine(Profile profile, double tx, PathConditions conditions) {
        FieldMarchWave wave = FieldMarchWave.of(conditions);
        FieldMarchGround ground = FieldMarch.ground(profile, 1.5, conditions);
        FieldMarchGrid fast = FieldMarchGrid.fast(ground, wave.wavelengthM(), tx + 1.5);
        FieldMarchGrid half = new FieldMarchGrid(
                fast.spacingM() / 2,
                fast.stepM(),
                fast.topM() + 60,
                fast.absorberM(),
                fast.turnM(),
                fast.airM(),
                fast.nearAirM());
        FieldMarch march = new FieldMarch(ground, half, wave, tx, 1.5);
        march.run(FieldMarchPace.halved(ground, fast, wave.wavelengthM(), FieldMarchCover.NONE));
        return march.radial(0, profile, conditions);
    }

    /** Hills and gorges of many widths, stretched until the steepest facet has the slope asked for. */
    private static Profile steep(int seed, double steepestDeg, int n) {
        Random random = new Random(seed);
        double[] phase = random.doubles(12, 0, 2 * Math.PI).toArray();
        double[] d = new double[n];
        double[] h = new double[n];
        double steepest = 0;
        for (int i = 0; i < n; i++) {
            d[i] = 0.03 * i;
            for (int w = 1; w <= phase.length; w++)
                h[i] += Math.pow(w, -1.2) * Math.sin(phase[w - 1] + 2 * Math.PI * w * d[i] / 1.7);
            if (i > 0) steepest = Math.max(steepest, Math.abs(h[i] - h[i - 1]) / 30);
        }
        for (int i = 0; i < n; i++) h[i] *= Math.tan(Math.toRadians(steepestDeg)) / steepest;
        return Profiles.of(d, h);
    }

    /** Where the pace changes over, the field does not jump: the slope itself changes it by up to 0.3 dB from row to row. */
    private static final double SMOOTH_DB = 0.5;

    @Test
    void theAnswerChangesLittleFromSlopeToSlope() { // law: through all thresholds of steps, nodes and fractions
        for (int sign : new int[] {-1, 1}) {
            double before = Double.NaN;
            for (double slope = 8; slope < 45; slope += 0.5) {
                double rise = 30 * Math.tan(Math.toRadians(slope));
                double[] d = new double[17];
                double[] h = new double[17];
                for (int i = 0; i < d.length; i++) {
                    d[i] = 0.03 * i;
                    h[i] = sign * rise * Math.max(0, 5 - Math.abs(i - 8));
                }
                FullWaveRadial radial = FieldMarch.along(Profiles.of(d, h), 1.5, 1.5, CHANNEL);
                double now = radial.excessDb(16);
                if (slope > 8) assertEquals(before, now, SMOOTH_DB, (sign < 0 ? "valley " : "ridge ") + slope);
                before = now;
            }
        }
    }

    /** Two rays at each end leave out what the finite faces and the foot of the valley add. */
    private static final double RAYS_DB = 0.4;

    @Test
    void acrossAValleyFromFaceToFaceItIsTwoRaysAtEachEnd() { // by hand: a level ray meets both faces at their slope
        for (double slopeDeg : new double[] {30, 36, 40, 44}) {
            double slope = Math.toRadians(slopeDeg);
            double[] d = new double[11];
            double[] h = new double[11];
            for (int i = 0; i < d.length; i++) {
                d[i] = 0.03 * i;
                h[i] = 30 * Math.tan(slope) * Math.abs(i - 5);
            }
            FullWaveRadial radial = FieldMarch.along(Profiles.of(d, h), 1.5, 1.5, CHANNEL);
            FieldMarchWave wave = FieldMarchWave.of(CHANNEL);
            double sine = Math.sin(slope);
            Complex reflection =
                    wave.impedance().negate().add(sine).divide(wave.impedance().add(sine));
            double longerM = 2 * 1.5 * Math.cos(slope) * sine;
            double turned = -wave.waveNumber() * longerM;
            Complex oneEnd = reflection
                    .multiply(new Complex(Math.cos(turned), Math.sin(turned)))
                    .add(1);
            assertEquals(
                    -40 * Math.log10(oneEnd.abs()),
                    radial.pointLossDb(10) - radial.freeSpaceDb(10),
                    RAYS_DB,
                    slopeDeg + " degrees");
        }
    }

    @Test
    void aLineInSightOverSteepGroundLosesLittle() { // law: rim to rim of gorges, nothing in the way but the rims
        for (double slope = 25; slope <= 45; slope += 5)
            for (double mhz : new double[] {155, 446}) {
                PathConditions conditions = conditions(mhz, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);
                Profile profile = faces(slope - 0.1, -100, 60);
                FullWaveRadial radial = FieldMarch.along(profile, 10, 10, conditions);
                double excess = radial.excessDb(profile.count() - 1);
                assertTrue(excess > -6.1 && excess < 8, slope + " degrees, " + mhz + " MHz: " + excess);
            }
    }

    @Test
    void behindGroundTooSteepThereIsNoNumber() {
        Profile held = faces(44.9, -100, 90);
        assertEquals(held.count(), FieldMarch.answered(held, CHANNEL));
        // samples of a steeper valley cut its corners: a face of 30 m and 31 m is the first too steep
        double[] d = {0, 0.03, 0.06, 0.09, 0.12, 0.15, 0.18};
        double[] h = {0, 0, 3, 3, 34, 34, 34};
        Profile cliff = Profiles.of(d, h);
        assertEquals(4, FieldMarch.answered(cliff, CHANNEL));
        FullWaveRadial radial = FieldMarch.along(cliff, 1.5, 1.5, CHANNEL);
        FullWaveRadial before = FieldMarch.along(cliff.upTo(3), 1.5, 1.5, CHANNEL);
        assertEquals(4, radial.answered());
        assertEquals(before.meanLossDb(3), radial.meanLossDb(3), 1e-9);
        NoAnswer refused = assertThrows(NoAnswer.class, () -> radial.meanLossDb(4));
        assertEquals(
                "from 0.09 km the ground slopes by more than 45°, up to 46°: behind that the field march gives no answer"
                        + " (docs/full-wave.md). Take the handheld model.",
                refused.getMessage());
        assertThrows(NoAnswer.class, () -> radial.excessDb(6));
        assertThrows(NoAnswer.class, () -> new FullWave().loss(cliff, new Terminals(1.5, 1.5), CHANNEL));
        assertTrue(
                radial.warnings().get(0).contains("No answer"),
                radial.warnings().toString());
        Profile atOnce = Profiles.of(new double[] {0, 0.03, 0.06}, new double[] {0, 40, 40});
        assertEquals(1, FieldMarch.along(atOnce, 1.5, 1.5, CHANNEL).answered());
    }

    /** By hand: where the earth is four times as round, 80 km off, the rise over run of a face grows by 0.050, and 43.8° become 45.3°. */
    @Test
    void aFaceFarOffIsAsSteepAsTheBentEarthMakesIt() {
        double[] d = new double[323];
        double[] h = new double[323];
        for (int i = 0; i < 321; i++) d[i] = 0.25 * i;
        d[321] = 80.03;
        d[322] = 80.06;
        h[321] = -30 * Math.tan(Math.toRadians(43.8));
        h[322] = h[321];
        Profile far = Profiles.of(d, h);
        assertEquals(321, FieldMarch.answered(far, conditions(155, Polarization.VERTICAL, 15, 0.005, 0.25)));
        assertEquals(323, FieldMarch.answered(far, conditions(155, Polarization.VERTICAL, 15, 0.005, 4.0 / 3)));
    }

    @Test
    void stonesThatTheWaveDoesNotResolveAreNotSteepGround() { // steps of 1 m on a path sampled each metre
        int n = 400;
        double[] d = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = 0.001 * i;
            h[i] = i % 2 * 1.2;
        }
        assertEquals(n, FieldMarch.answered(Profiles.of(d, h), CHANNEL));
    }

    @Test
    void onSlopesBeyondTheIndependentCheckItWarns() {
        List<String> steep = new FullWave()
                .loss(faces(43, -100, 90), new Terminals(1.5, 1.5), CHANNEL)
                .warnings();
        assertTrue(steep.get(0).contains("only against a finer grid"), steep.toString());
        List<String> held = new FullWave()
                .loss(faces(36, -100, 90), new Terminals(1.5, 1.5), CHANNEL)
                .warnings();
        assertFalse(held.stream().anyMatch(w -> w.contains("slopes")), held.toString());
    }
}
