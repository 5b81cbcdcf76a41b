package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class TwoRayTest {
    /** Rounding of the rows, and 0.008 dB of the last one, which takes the ground distance where we take the slant. */
    private static final double ROUNDING_DB = 0.0085;

    @ParameterizedTest
    @CsvFileSource(resources = "two-ray-norton.csv", useHeadersInDisplayName = true)
    void agreesWithTheRows(double distanceM, double mhz, double h1, double h2, Polarization pol, double fullDb) {
        Frequency f = new Frequency(mhz);
        double freeDb = FreeSpace.lossDb(f, Math.hypot(distanceM, h1 - h2) / 1000);
        double excess = TwoRay.excessDb(distanceM, h1, h2, f, pol, Ground.AVERAGE);
        assertEquals(fullDb, freeDb + excess, ROUNDING_DB);
        PathLoss model = model(PaperGround.flat(distanceM / 1000, 9), h1, h2, f, pol);
        assertEquals(fullDb, model.lossDb(), ROUNDING_DB);
        assertEquals(excess, model.parts().get(1).db(), 1e-9);
        assertEquals("excess", model.parts().get(1).name());
    }

    @Test
    void withoutTheSurfaceWaveTheRowIsLower() {
        // Same source as the rows: 1 km, 150 MHz, 1.5 m, vertical: 107.23 dB without surface wave.
        Frequency f = new Frequency(150);
        double plain = TwoRay.plainExcessDb(1000, 1.5, 1.5, conditions(f, Polarization.VERTICAL), 0);
        assertEquals(107.23, FreeSpace.lossDb(f, 1) + plain, ROUNDING_DB);
    }

    @Test
    void aPerfectMirrorGivesTheSineLaw() {
        // Limit: horizontal over sea, R → −1: excess = −20 log(2 |sin(2π h1 h2/(λ d))|).
        Frequency f = new Frequency(150);
        double phase = 2 * Math.PI * 40 * 20 / (f.wavelengthM() * 5000);
        double want = -20 * Math.log10(2 * Math.abs(Math.sin(phase)));
        assertEquals(want, TwoRay.excessDb(5000, 40, 20, f, Polarization.HORIZONTAL, new Ground(80, 5)), 0.02);
    }

    @ParameterizedTest
    @CsvSource({"30,0.6", "50,1.7", "150,6.1", "450,8.9"})
    void raisingAHandheldToThreeMetresGainsWhatTheHeightGainSays(double mhz, double gainDb) {
        // Independent calculation with the complex height gain, 1 m to 3 m, vertical, average ground; plane earth would
        // say 9.5 dB.
        Frequency f = new Frequency(mhz);
        double low = TwoRay.excessDb(20_000, 1, 1, f, Polarization.VERTICAL, Ground.AVERAGE);
        double high = TwoRay.excessDb(20_000, 1, 3, f, Polarization.VERTICAL, Ground.AVERAGE);
        assertEquals(gainDb, low - high, 0.051);
    }

    @Test
    void swappingTheEndsChangesNothing() {
        Random random = new Random(7);
        for (int i = 0; i < 300; i++) {
            double d = 50 + random.nextDouble() * 20_000;
            double h1 = 0.5 + random.nextDouble() * 100;
            double h2 = 0.5 + random.nextDouble() * 3;
            Frequency f = new Frequency(30 + random.nextDouble() * 900);
            Polarization pol = Polarization.values()[i % 2];
            Ground ground = GroundType.values()[i % 7].ground();
            assertEquals(TwoRay.excessDb(d, h1, h2, f, pol, ground), TwoRay.excessDb(d, h2, h1, f, pol, ground), 1e-9);
        }
    }

    @Test
    void neverMoreThanTwiceTheField() {
        // Law: direct and reflected ray in phase double the field; the surface wave of lossy ground adds less than 1 dB
        // to that.
        Random random = new Random(11);
        for (int i = 0; i < 2000; i++) {
            double d = 50 + random.nextDouble() * 5000;
            double excess = TwoRay.excessDb(
                    d,
                    0.5 + random.nextDouble() * 60,
                    0.5 + random.nextDouble() * 60,
                    new Frequency(30 + random.nextDouble() * 900),
                    Polarization.values()[i % 2],
                    GroundType.values()[i % 7].ground());
            assertTrue(excess > -7, "gain " + -excess);
        }
    }

    @Test
    void theModelMeasuresHeightsFromTheMeanPlane() {
        // By hand: a mast on a 100 m block at one end of a 10 km plain stands about 100 m over the plain, not 1.5 m.
        double[] d = new double[101];
        double[] h = new double[101];
        for (int i = 0; i <= 100; i++) d[i] = i / 10.0;
        h[0] = 100;
        PathLoss onBlock = model(Profiles.of(d, h), 1.5, 1.5, new Frequency(150), Polarization.VERTICAL);
        PathLoss onPlain = model(PaperGround.flat(10, 101), 1.5, 1.5, new Frequency(150), Polarization.VERTICAL);
        assertTrue(onPlain.lossDb() - onBlock.lossDb() > 25);
    }

    @Test
    void warnsBeyondTheFlatEarthAndBehindHills() {
        double[] d = {0, 10, 20};
        PathLoss hill =
                model(Profiles.of(d, new double[] {0, 300, 0}), 1.5, 1.5, new Frequency(150), Polarization.VERTICAL);
        assertEquals(2, hill.warnings().size());
        PathLoss near = model(PaperGround.flat(0.3, 5), 1.5, 1.5, new Frequency(150), Polarization.VERTICAL);
        assertEquals(0, near.warnings().size());
    }

    @Test
    void refusesNonsense() {
        assertThrows(
                IllegalArgumentException.class,
                () -> TwoRay.excessDb(-1, 1, 1, new Frequency(150), Polarization.VERTICAL, Ground.AVERAGE));
    }

    private static PathConditions conditions(Frequency f, Polarization pol) {
        return new PathConditions(f, pol, Ground.AVERAGE, Atmosphere.DEFAULT, Climate.MEDIAN);
    }

    private static PathLoss model(Profile profile, double h1, double h2, Frequency f, Polarization pol) {
        return new TwoRayModel().loss(profile, new Terminals(h1, h2), conditions(f, pol));
    }
}
