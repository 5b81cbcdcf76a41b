package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.units.Frequency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class KnifeEdgeTest {
    private static final double STATED_ERROR_DB = 0.125;
    private static final Atmosphere NO_BULGE = Atmosphere.ofFactor(1e9, 325);

    @ParameterizedTest
    @CsvFileSource(resources = "fresnel-integral.csv", useHeadersInDisplayName = true)
    void fresnelIntegralsAgreeWithFortyDigits(double x, double c, double s, double jDb) {
        FresnelIntegral value = FresnelIntegral.of(x);
        assertEquals(c, value.c(), 1e-12);
        assertEquals(s, value.s(), 1e-12);
        assertEquals(jDb, KnifeEdge.exactLossDb(x), x > 30 ? 2e-4 : 1e-6);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "knife-edge-p526.csv", useHeadersInDisplayName = true)
    void agreesWithTheRowsOfP526(double nu, double exactDb, double approximateDb) {
        assertEquals(exactDb, KnifeEdge.exactLossDb(nu), 0.0006);
        assertEquals(approximateDb, KnifeEdge.lossDb(nu), 0.0006);
    }

    @Test
    void theApproximationKeepsItsWord() {
        for (double nu = -0.779; nu < 20; nu += 0.003)
            assertEquals(KnifeEdge.exactLossDb(nu), KnifeEdge.lossDb(nu), STATED_ERROR_DB, "ν " + nu);
    }

    @ParameterizedTest
    @CsvSource({"150,0.7503,12.21", "450,1.2995,15.72"})
    void aPaperRidgeGivesItsNu(double mhz, double nu, double lossDb) {
        // Rec. ITU-R P.526-15 section 4.1: 30 m edge, 2 + 8 km; independent calculation.
        Frequency f = new Frequency(mhz);
        assertEquals(nu, KnifeEdge.nu(30, 2, 8, f.wavelengthM()), 0.00006);
        Profile ridge = Profile.of(new double[] {0, 2, 10}, new double[] {0, 31.5, 0});
        PathConditions conditions = conditions(f, NO_BULGE);
        for (String name :
                new String[] {"single-edge", "deygout", "deygout-corrected", "giovaneli", "epstein-peterson"}) {
            PathLoss loss =
                    LossModels.KEYWORD.find(name).orElseThrow().loss(ridge, new Terminals(1.5, 1.5), conditions);
            assertEquals(lossDb, loss.excessDb(), 0.006, name);
        }
    }

    @Test
    void theBulgeRaisesTheRidge() {
        // By hand: k = 4/3, a = 8494.67 km: bulge 500·2·8/8494.67 = 0.942 m on a 30 m ridge.
        Frequency f = new Frequency(150);
        Profile ridge = Profile.of(new double[] {0, 2, 10}, new double[] {0, 31.5, 0});
        PathLoss loss = new SingleEdgeModel()
                .loss(ridge, new Terminals(1.5, 1.5), conditions(f, Atmosphere.ofFactor(4 / 3.0, 325)));
        assertEquals(KnifeEdge.lossDb(KnifeEdge.nu(30.942, 2, 8, f.wavelengthM())), loss.excessDb(), 0.001);
    }

    @Test
    void grazingCostsHalfTheField() {
        assertEquals(20 * Math.log10(2), KnifeEdge.exactLossDb(0), 1e-12);
        assertEquals(20 * Math.log10(2), KnifeEdge.lossDb(0), STATED_ERROR_DB);
    }

    @Test
    void raisingTheEdgeAlwaysCosts() {
        for (double nu = -0.77; nu < 50; nu += 0.01) assertTrue(KnifeEdge.lossDb(nu + 0.01) > KnifeEdge.lossDb(nu));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "rounded-obstacle-p526.csv", useHeadersInDisplayName = true)
    void roundedObstacleAgreesWithTheRows(
            double heightM, double d1Km, double d2Km, double mhz, double radiusM, double lossDb) {
        assertEquals(
                lossDb, RoundedObstacle.lossDb(heightM, d1Km, d2Km, radiusM, new Frequency(mhz).wavelengthM()), 0.0006);
    }

    @Test
    void intermediateValuesOfTheRoundedObstacle() {
        // Rec. ITU-R P.526-15 section 4.2, first row: m 0.0116, n 8.738, T 2.021.
        double lambda = new Frequency(150).wavelengthM();
        double m = RoundedObstacle.m(2, 8, 100, lambda);
        double n = RoundedObstacle.n(30, 100, lambda);
        assertEquals(0.0116, m, 0.00006);
        assertEquals(8.738, n, 0.0006);
        assertEquals(2.021, RoundedObstacle.curvatureDb(m, n), 0.0006);
    }

    @Test
    void aGrazingCylinderFollowsTheEssaCubic() {
        // Oracle: ESSA/NBS grazing cubic 6.02 + 5.556 r + 3.418 r² + 0.256 r³, r = √m (Rice et al., NBS Technical Note
        // 101).
        double lambda = 2;
        for (double radius : new double[] {50, 200, 1000}) {
            double m = RoundedObstacle.m(3, 7, radius, lambda);
            double r = Math.sqrt(m);
            assertTrue(m < 0.25);
            double want = 6.02 + 5.556 * r + 3.418 * r * r + 0.256 * r * r * r;
            assertEquals(want, RoundedObstacle.lossDb(0, 3, 7, radius, lambda), 0.2);
        }
    }

    @Test
    void theTwoBranchesOfTheCurvatureMeet() {
        // By hand at m n = 4: −(2 − 12.5 n) m = 50 − 2 m, and −6 − 20 log 4 − (2 − 17 n) m = 49.96 − 2 m.
        for (double m : new double[] {0.1, 0.5, 2}) {
            double n = 4 / m;
            assertEquals(
                    RoundedObstacle.curvatureDb(m, n * 0.999999), RoundedObstacle.curvatureDb(m, n * 1.000001), 0.05);
            double want =
                    7.2 * Math.sqrt(m) + 3.6 * Math.pow(m, 1.5) - 0.8 * m * m - 2 * m + 136 - 6 - 20 * Math.log10(8);
            assertEquals(want, RoundedObstacle.curvatureDb(m, 2 * n), 1e-9);
        }
    }

    @Test
    void aSharpEdgeIsARoundedOneWithoutRadius() {
        double lambda = 0.67;
        assertEquals(
                KnifeEdge.lossDb(KnifeEdge.nu(25, 3, 4, lambda)), RoundedObstacle.lossDb(25, 3, 4, 1e-6, lambda), 0.02);
        assertEquals(RoundedObstacle.lossDb(25, 3, 4, 0, lambda), RoundedObstacle.lossDb(25, 3, 4, 1e-6, lambda), 0.02);
    }

    @Test
    void theRoundedTopJoinsAtGrazingWithoutAStep() {
        double above = RoundedObstacle.lossDb(1e-6, 3, 4, 300, 2);
        double below = RoundedObstacle.lossDb(-1e-6, 3, 4, 300, 2);
        assertEquals(above, below, 1e-3);
        assertThrows(IllegalArgumentException.class, () -> RoundedObstacle.lossDb(1, 3, 4, -1, 2));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "fresnel-zone-p526.csv", useHeadersInDisplayName = true)
    void fresnelRadiusAgreesWithTheRows(double d1Km, double d2Km, double mhz, double radiusM) {
        assertEquals(radiusM, KnifeEdge.fresnelRadiusM(d1Km, d2Km, new Frequency(mhz).wavelengthM()), 0.0006);
        // ν = √2 h/F1 (Rec. ITU-R P.526-15 section 4.1).
        assertEquals(Math.sqrt(2), KnifeEdge.nu(radiusM, d1Km, d2Km, new Frequency(mhz).wavelengthM()), 1e-4);
    }

    private static PathConditions conditions(Frequency f, Atmosphere air) {
        PathConditions standard = PathConditions.standard(f);
        return new PathConditions(f, standard.polarization(), standard.ground(), air, standard.climate());
    }
}
