package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
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
        Profile ridge = Profiles.of(new double[] {0, 2, 10}, new double[] {0, 31.5, 0});
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
        Profile ridge = Profiles.of(new double[] {0, 2, 10}, new double[] {0, 31.5, 0});
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
    @CsvFileSource(resources = "fresnel-zone-p526.csv", useHeadersInDisplayName = true)
    void fresnelRadiusAgreesWithTheRows(double d1Km, double d2Km, double mhz, double radiusM) {
        assertEquals(radiusM, KnifeEdge.fresnelRadiusM(d1Km, d2Km, new Frequency(mhz).wavelengthM()), 0.0006);
        // ν = √2 h/F1 (Rec. ITU-R P.526-15 section 4.1).
        assertEquals(Math.sqrt(2), KnifeEdge.nu(radiusM, d1Km, d2Km, new Frequency(mhz).wavelengthM()), 1e-4);
    }

    private static PathConditions conditions(Frequency f, Atmosphere air) {
        PathConditions standard = UsualConditions.at(f);
        return new PathConditions(f, standard.polarization(), standard.ground(), air, standard.climate());
    }
}
