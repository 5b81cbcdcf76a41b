package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class SphericalEarthTest {
    private static final Ground LAND = new Ground(22, 0.003);
    private static final double EARTH_KM = 8500;

    @ParameterizedTest
    @CsvFileSource(resources = "effective-earth-p453.csv", useHeadersInDisplayName = true)
    void theEffectiveEarthFollowsTheGradient(double gradient, double radiusKm) {
        assertEquals(radiusKm, Atmosphere.ofGradient(gradient, 325).effectiveRadiusKm(), 0.0006);
    }

    @ParameterizedTest
    @CsvSource({"1.5,5.048", "3,7.139", "10,13.034", "500,92.167"})
    void theHorizonIsThatOfFourThirds(double heightM, double horizonKm) {
        // Rec. ITU-R P.834: √(2 a_e h), k = 4/3; independent calculation.
        double radiusKm = Atmosphere.ofFactor(4 / 3.0, 325).effectiveRadiusKm();
        assertEquals(horizonKm, SphericalEarth.horizonKm(heightM, 0, radiusKm), 0.0006);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "spherical-earth-p526.csv", useHeadersInDisplayName = true)
    void beyondTheHorizonItAgreesWithTheRows(
            double d,
            double h1,
            double h2,
            double mhz,
            Polarization pol,
            Double k,
            Double x,
            Double y1,
            double lossDb) {
        SphericalEarth.FirstTerm term = SphericalEarth.firstTerm(d, h1, h2, new Frequency(mhz), EARTH_KM, LAND, pol);
        if (k != null) assertEquals(1, term.k() / k, 6e-5);
        if (x != null) assertEquals(x, term.x(), 0.000006);
        if (y1 != null) assertEquals(y1, term.y1(), 0.000006);
        assertEquals(lossDb, term.lossDb(), 0.0011);
        if (d > 27)
            assertEquals(lossDb, SphericalEarth.lossDb(d, h1, h2, new Frequency(mhz), EARTH_KM, LAND, pol), 0.0011);
    }

    @Test
    void intermediateValuesOfTheFirstRow() {
        // Rec. ITU-R P.526-15 section 3.1.1, first row: F −2.8449, G −34.0367; row three: G at its limit −29.2782; row
        // four: G2 −7.8803.
        SphericalEarth.FirstTerm first =
                SphericalEarth.firstTerm(30, 1.5, 1.5, new Frequency(150), EARTH_KM, LAND, Polarization.HORIZONTAL);
        assertEquals(-2.8449, SphericalEarth.distanceTermDb(first.x()), 0.0001);
        assertEquals(-34.0367, SphericalEarth.heightGainDb(first.y1(), first.beta(), first.k()), 0.0001);
        SphericalEarth.FirstTerm low =
                SphericalEarth.firstTerm(30, 1.5, 1.5, new Frequency(30), EARTH_KM, LAND, Polarization.VERTICAL);
        assertEquals(-29.2782, SphericalEarth.heightGainDb(low.y1(), low.beta(), low.k()), 0.0001);
        SphericalEarth.FirstTerm mast =
                SphericalEarth.firstTerm(40, 1.5, 30, new Frequency(150), EARTH_KM, LAND, Polarization.HORIZONTAL);
        assertEquals(-7.8803, SphericalEarth.heightGainDb(mast.y2(), mast.beta(), mast.k()), 0.0001);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "spherical-earth-sight-p526.csv", useHeadersInDisplayName = true)
    void inSightItAgreesWithTheRows(double d, double h1, double h2, double mhz, Polarization pol, double lossDb) {
        assertEquals(lossDb, SphericalEarth.lossDb(d, h1, h2, new Frequency(mhz), EARTH_KM, LAND, pol), 0.0011);
    }

    @Test
    void theClearanceAgreesWithTheRowsAndWithSearching() {
        // Rec. ITU-R P.526-15 section 3.2 rows: 10 km, 30/10 m: d1 7.36501 km, h_se 14.1284 m; 5 km, 1.5/1.5 m: 1.1324
        // m.
        SphericalEarth.Clearance row = SphericalEarth.Clearance.of(10, 30, 10, EARTH_KM);
        assertEquals(7.36501, row.d1Km(), 0.000006);
        assertEquals(14.1284, row.heightM(), 0.00006);
        assertEquals(1.1324, SphericalEarth.Clearance.of(5, 1.5, 1.5, EARTH_KM).heightM(), 0.00006);
        // The closed form assumes the reflection point; the straight ray over the bulge has its minimum within a
        // whisker of it.
        double least = Double.POSITIVE_INFINITY;
        for (double x = 0.001; x < 10; x += 0.001) {
            double ray = (30 * (10 - x) + 10 * x) / 10;
            least = Math.min(least, ray - 500 * x * (10 - x) / EARTH_KM);
        }
        assertTrue(row.heightM() >= least - 1e-6);
    }

    @Test
    void itDiffersFromTheExactSeriesAsStated() {
        // 30 km, 1.5/1.5 m, 150 MHz vertical, 22/0.003, k-earth 8500 km: full residue series 64.44 dB, P.526 70.74 dB
        // (independent).
        double here = SphericalEarth.lossDb(30, 1.5, 1.5, new Frequency(150), EARTH_KM, LAND, Polarization.VERTICAL);
        assertEquals(70.74, here, 0.006);
        assertEquals(6.3, here - 64.44, 0.02);
    }

    @Test
    void swappingTheEndsChangesNothing() {
        Random random = new Random(3);
        for (int i = 0; i < 500; i++) {
            double d = 0.1 + random.nextDouble() * 100;
            double h1 = 0.5 + random.nextDouble() * 200;
            double h2 = 0.5 + random.nextDouble() * 20;
            Frequency f = new Frequency(30 + random.nextDouble() * 900);
            Polarization pol = Polarization.values()[i % 2];
            assertEquals(
                    SphericalEarth.lossDb(d, h1, h2, f, EARTH_KM, LAND, pol),
                    SphericalEarth.lossDb(d, h2, h1, f, EARTH_KM, LAND, pol),
                    1e-6);
        }
    }

    @Test
    void nothingJumpsAtTheHorizon() {
        Random random = new Random(5);
        for (int i = 0; i < 300; i++) {
            double h1 = 0.8 + random.nextDouble() * 60;
            double h2 = 0.8 + random.nextDouble() * 10;
            Frequency f = new Frequency(30 + random.nextDouble() * 900);
            double d = SphericalEarth.horizonKm(h1, h2, EARTH_KM);
            double inside = SphericalEarth.lossDb(d * 0.9999, h1, h2, f, EARTH_KM, LAND, Polarization.VERTICAL);
            double outside = SphericalEarth.lossDb(d * 1.0001, h1, h2, f, EARTH_KM, LAND, Polarization.VERTICAL);
            assertEquals(inside, outside, 0.05);
        }
    }

    @Test
    void heightsBelowTheEarthAreRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> SphericalEarth.lossDb(5, 0, 1, new Frequency(150), EARTH_KM, LAND, Polarization.VERTICAL));
    }

    @Test
    void theModelStandsOnTheSmoothSurface() {
        Profile flat = PaperGround.flat(30, 61);
        PathConditions conditions = new PathConditions(
                new Frequency(150),
                Polarization.HORIZONTAL,
                LAND,
                Atmosphere.ofFactor(EARTH_KM / Atmosphere.EARTH_RADIUS_KM, 325),
                Climate.MEDIAN);
        PathLoss loss = new SmoothEarthModel().loss(flat, new Terminals(1.5, 1.5), conditions);
        assertEquals(70.918, loss.excessDb(), 0.0011);
    }
}
