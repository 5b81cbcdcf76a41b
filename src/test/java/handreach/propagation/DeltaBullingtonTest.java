package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class DeltaBullingtonTest {
    /** The rows take 0.2998/f(GHz) for the wavelength, we the speed of light: the third decimal. */
    private static final double WAVELENGTH_DB = 0.003;

    private static final Ground LAND = new Ground(22, 0.003);
    private static final Atmosphere EARTH_8500 = Atmosphere.ofFactor(8500 / Atmosphere.EARTH_RADIUS_KM, 325);

    @ParameterizedTest
    @CsvFileSource(resources = "delta-bullington-p526.csv", useHeadersInDisplayName = true)
    void agreesWithTheRows(
            double mhz,
            double txM,
            double rxM,
            Polarization pol,
            double hstd,
            double hsrd,
            double profileDb,
            double smoothDb,
            double sphereDb,
            double lossDb) {
        PathLoss loss = new DeltaBullingtonModel()
                .loss(
                        PaperGround.tenKilometres(false),
                        new Terminals(txM, rxM),
                        new PathConditions(new Frequency(mhz), pol, LAND, EARTH_8500, Climate.MEDIAN));
        Map<String, Double> steps = loss.steps().stream().collect(Collectors.toMap(Step::symbol, Step::value));
        assertEquals(134.1, steps.get("h_st"), 1e-6);
        assertEquals(154.9, steps.get("h_sr"), 1e-6);
        assertEquals(hstd, steps.get("h_std"), 0.00006);
        assertEquals(hsrd, steps.get("h_srd"), 0.00006);
        assertEquals(profileDb, steps.get("L_bulla"), WAVELENGTH_DB);
        assertEquals(smoothDb, steps.get("L_bulls"), WAVELENGTH_DB);
        assertEquals(sphereDb, steps.get("L_sph"), WAVELENGTH_DB);
        assertEquals(lossDb, loss.excessDb(), WAVELENGTH_DB);
        assertEquals("diffraction", loss.parts().get(1).name());
        assertEquals(lossDb, loss.parts().get(1).db(), WAVELENGTH_DB);
    }

    @Test
    void flatGroundIsTheSmoothEarth() {
        // Limit: on level ground the two Bullington terms cancel and the spherical earth remains.
        PathConditions conditions =
                new PathConditions(new Frequency(150), Polarization.VERTICAL, LAND, EARTH_8500, Climate.MEDIAN);
        double loss = new DeltaBullingtonModel()
                .loss(PaperGround.flat(30, 301), new Terminals(1.5, 1.5), conditions)
                .excessDb();
        assertEquals(70.735, loss, 0.01);
    }

    @Test
    void aTallSingleRidgeIsItsEdgeAndTheCorrection() {
        // By hand: an edge with both horizons on it, no bulge, masts clear of the ground: J(ν) + (1 − e^(−J/6))(10 +
        // 0.02·10).
        Profile ridge = Profiles.of(new double[] {0, 4, 10}, new double[] {0, 400, 0});
        PathConditions conditions = new PathConditions(
                new Frequency(900), Polarization.HORIZONTAL, LAND, Atmosphere.ofFactor(1e6, 325), Climate.MEDIAN);
        double nu = KnifeEdge.nu(200, 4, 6, new Frequency(900).wavelengthM());
        double j = KnifeEdge.lossDb(nu);
        PathLoss loss = new BullingtonModel().loss(ridge, new Terminals(200, 200), conditions);
        assertEquals(j + (1 - Math.exp(-j / 6)) * 10.2, loss.excessDb(), 1e-3);
    }

    @Test
    void raisingTheRidgeAlwaysCosts() {
        double before = 0;
        for (double height = 0; height < 400; height += 5) {
            Profile ridge = Profiles.of(new double[] {0, 4, 10}, new double[] {0, height, 0});
            PathLoss loss =
                    new BullingtonModel().loss(ridge, new Terminals(2, 2), UsualConditions.at(new Frequency(150)));
            assertTrue(loss.excessDb() >= before - 1e-9);
            before = loss.excessDb();
        }
    }

    @Test
    void theSmoothSurfaceOfAStraightSlopeIsTheSlope() {
        double[] d = {0, 1, 2.5, 4, 10};
        double[] h = {20, 30, 45, 60, 120};
        SmoothSurface surface = SmoothSurface.of(d, h, 1000, 1000);
        assertEquals(20, surface.fitTxM(), 1e-9);
        assertEquals(120, surface.fitRxM(), 1e-9);
        assertEquals(20, surface.txM(), 1e-9);
    }

    @Test
    void nothingJumpsWhereTheLineOfSightIsLost() {
        Random random = new Random(17);
        for (int i = 0; i < 200; i++) {
            double at = 1 + random.nextDouble() * 8;
            Frequency f = new Frequency(30 + random.nextDouble() * 900);
            Profile below = Profiles.of(new double[] {0, at, 10}, new double[] {0, 11.9999, 0});
            Profile above = Profiles.of(new double[] {0, at, 10}, new double[] {0, 12.0001, 0});
            PathConditions flat =
                    new PathConditions(f, Polarization.VERTICAL, LAND, Atmosphere.ofFactor(1e9, 325), Climate.MEDIAN);
            Terminals terminals = new Terminals(12, 12);
            assertEquals(
                    new BullingtonModel().loss(below, terminals, flat).lossDb(),
                    new BullingtonModel().loss(above, terminals, flat).lossDb(),
                    0.01);
        }
    }
}
