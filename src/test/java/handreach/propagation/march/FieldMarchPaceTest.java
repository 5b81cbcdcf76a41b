package handreach.propagation.march;

import static handreach.propagation.FullWaveRows.conditions;
import static handreach.propagation.FullWaveRows.faces;
import static handreach.propagation.FullWaveRows.level;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.propagation.FullWaveRows;
import handreach.propagation.PathConditions;
import handreach.units.Polarization;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class FieldMarchPaceTest {
    private static final double WAVELENGTH_M = 2;
    private static final PathConditions CHANNEL = conditions(150, Polarization.VERTICAL, 15, 0.005, 4.0 / 3);

    /** The table was read at quarters of a degree. */
    private static final double READ_DEG = 0.3;

    @Test
    void theTableOfAnglesIsThatOfTheFractions() { // by the fraction itself
        for (int order : new int[] {4, 6, 8})
            for (double wavelengths : new double[] {0.5, 0.75, 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 30}) {
                double deg = FieldMarchPace.carriedDeg(order, wavelengths);
                double allowed = FieldMarchPace.stepError(order) * wavelengths;
                assertTrue(errorAt(order, wavelengths, deg) <= allowed, order + ", " + wavelengths);
                assertTrue(errorAt(order, wavelengths, deg + READ_DEG) > allowed, order + ", " + wavelengths);
            }
    }

    private static double errorAt(int order, double wavelengths, double deg) {
        double phase = 2 * Math.PI * wavelengths;
        double root = Math.cos(Math.toRadians(deg));
        double turned = -phase * (root - 1);
        Complex exact = new Complex(Math.cos(turned), Math.sin(turned));
        return PadeStep.of(phase, order).at(root * root - 1).subtract(exact).abs();
    }

    @Test
    void longestStepAndCarriedAngleAreInverses() {
        for (int order : new int[] {4, 6, 8})
            for (double wavelengths = 0.5; wavelengths <= 30; wavelengths += 0.35) {
                double deg = FieldMarchPace.carriedDeg(order, wavelengths);
                assertEquals(wavelengths, FieldMarchPace.longestWavelengths(order, deg), 1e-9);
            }
    }

    @Test
    void gentleGroundKeepsStepsAndNodesOfTheGridAtALowOrder() {
        for (Profile profile :
                new Profile[] {level(3000, 30, 0), FullWaveRows.profile("c02"), FullWaveRows.profile("d09")}) {
            FieldMarchGround ground = FieldMarch.ground(profile, 1.5, CHANNEL);
            FieldMarchGrid grid = FieldMarchGrid.fast(ground, WAVELENGTH_M, 3);
            FieldMarchPace pace = FieldMarchPace.of(ground, grid, WAVELENGTH_M, FieldMarchCover.NONE);
            for (int f = 0; f < ground.facets(); f++) {
                FieldMarchPace.Steps steps = pace.steps(f, ground.facetM(f));
                assertEquals(0, pace.halvings(f));
                double fewest = Math.ceil(ground.facetM(f) / grid.stepM() - 1e-9);
                assertTrue(steps.order() * steps.number() <= 4 * fewest, steps + " of " + ground.facetM(f) + " m");
            }
        }
    }

    @Test
    void onlySteepFacetsAndTheirNeighboursArePaidFor() { // one gorge within 6 km of level ground
        FieldMarchGround ground = FieldMarch.ground(gorge(20), 1.5, CHANNEL);
        FieldMarchPace pace = FieldMarchPace.of(
                ground, FieldMarchGrid.fast(ground, WAVELENGTH_M, 3), WAVELENGTH_M, FieldMarchCover.NONE);
        int fine = 0;
        for (int f = 0; f < ground.facets(); f++) if (pace.halvings(f) > 0) fine++;
        // eight facets of the gorge, and the level ones at its rims
        assertEquals(8 + 2, fine);
    }

    /** By hand: the same gorge with faces of 27 degrees, whose rays the wide nodes of lockstep carry, and with faces of 38. */
    @Test
    void inLockstepWideNodesServeWhereNodesWouldBeHalved() {
        for (double stepM : new double[] {15, 23.5}) {
            FieldMarchGround ground = FieldMarch.ground(gorge(stepM), 1.5, CHANNEL);
            FieldMarchPace pace = FieldMarchPace.of(
                    ground, FieldMarchGrid.fast(ground, WAVELENGTH_M, 3), WAVELENGTH_M, FieldMarchCover.NONE);
            boolean isCarried = stepM == 15;
            assertTrue(pace.halvings(96) > 0, "by itself");
            assertEquals(isCarried, pace.halvingsTogether(96) == 0, stepM + " m");
            assertEquals(isCarried, pace.isWide(96), stepM + " m");
            assertEquals(0, pace.halvingsTogether(50));
            assertFalse(pace.isWide(50));
        }
    }

    private static Profile gorge(double stepM) {
        double[] d = new double[201];
        double[] h = new double[201];
        for (int i = 0; i < d.length; i++) {
            d[i] = 0.03 * i;
            h[i] = -stepM * Math.max(0, 4 - Math.abs(i - 100));
        }
        return Profiles.of(d, h);
    }

    @Test
    void raysBetweenTheRimsOfAValleyLeaveItsFacesByTheSlope() { // by hand: level rays over faces of 30 degrees
        FieldMarchGround ground = FieldMarch.ground(faces(30, -60 * Math.tan(Math.PI / 6), 60), 1.5, CHANNEL);
        double own = Math.toDegrees(ground.raysRad(2));
        assertTrue(own >= 29.9 && own < 62, own + " degrees");
        assertEquals(0, Math.toDegrees(ground.raysRad(0)), 0.01);
        // the rim stands the depth over the foot, seen along a normal tilted by the slope
        assertEquals(60 * Math.tan(Math.PI / 6) / Math.cos(Math.PI / 6), ground.overM(4), 0.1);
    }

    /** Energy of noise after long turns: without calming it grows by orders. */
    private static final double MOST_GROWTH = 1.5;

    @Test
    void longTurnsOnCloseNodesDoNotMakeEvanescentWavesGrow() { // law: a turn of 70 degrees in 3000 steps
        FieldMarchWave wave = FieldMarchWave.of(CHANNEL);
        FieldMarchGrid grid = new FieldMarchGrid(WAVELENGTH_M / 4.5, 20, 600, 1, 15 * WAVELENGTH_M, 60, 60);
        FieldMarchColumn column = new FieldMarchColumn(grid, wave);
        column.start(wave, 20, 1.5, Math.toRadians(89), FieldMarchLayer.NONE);
        column.screen(40);
        double before = energy(column);
        column.turn(Math.toRadians(70), 3000);
        assertTrue(energy(column) < MOST_GROWTH * before, energy(column) + " of " + before);
    }

    private static double energy(FieldMarchColumn column) {
        double sum = 0;
        for (double height = 0; height < column.usableM(); height += 0.4) sum += column.power(height);
        return sum;
    }

    /** Interpolation between nodes, of the value itself, which is small near the ground: 0.1 dB. */
    private static final double BETWEEN = 0.024;

    @Test
    void aFieldHandedToCloserNodesAndBackIsTheSame() { // law, and the values between by hand from closer nodes at
        // the start
        FieldMarchWave wave = FieldMarchWave.of(CHANNEL);
        FieldMarchGrid grid = new FieldMarchGrid(WAVELENGTH_M / 2.25, 20, 300, 60, 15 * WAVELENGTH_M, 60, 60);
        FieldMarchColumn coarse = column(grid, wave);
        FieldMarchColumn fine = column(grid.halved(1), wave);
        FieldMarchColumn handed = new FieldMarchColumn(grid.halved(1), wave);
        handed.takeBetween(coarse);
        for (int i = 0; i < 40; i++) {
            double height = i * WAVELENGTH_M / 4.5;
            assertEquals(fine.power(height), handed.power(height), BETWEEN * fine.power(height), height + " m");
        }
        FieldMarchColumn back = new FieldMarchColumn(grid, wave);
        back.takeEverySecond(handed);
        for (double height = 0; height < 200; height += 0.7)
            assertEquals(coarse.power(height), back.power(height), 1e-12, height + " m");
    }

    private static FieldMarchColumn column(FieldMarchGrid grid, FieldMarchWave wave) {
        FieldMarchColumn column = new FieldMarchColumn(grid, wave);
        column.start(wave, 200, 8, 0, FieldMarchLayer.NONE);
        return column;
    }
}
