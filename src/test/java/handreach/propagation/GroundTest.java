package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class GroundTest {
    @ParameterizedTest
    @CsvFileSource(resources = "reflection-p527.csv", useHeadersInDisplayName = true)
    void reflectionAgreesWithTheClassicalForm(
            double eps, double sigma, double mhz, double grazingDeg, Polarization pol, double size, Double phaseDeg) {
        double sin = Math.sin(Math.toRadians(grazingDeg));
        Complex r = Reflection.coefficient(new Frequency(mhz), pol, new Ground(eps, sigma), sin);
        assertEquals(size, r.abs(), 0.00006);
        // The row at −28.1° belongs to a reflection of 0.02: its phase moves by half a degree with the fourth digit of
        // 60.
        if (phaseDeg != null) assertEquals(phaseDeg, Math.toDegrees(r.getArgument()), size < 0.1 ? 0.3 : 0.06);
    }

    @ParameterizedTest
    @EnumSource(Polarization.class)
    void everyReflectionTurnsToMinusOneAtGrazing(Polarization pol) {
        Complex r = Reflection.coefficient(new Frequency(150), pol, Ground.AVERAGE, 1e-9);
        assertEquals(-1, r.getReal(), 1e-6);
        assertEquals(0, r.getImaginary(), 1e-6);
    }

    @Test
    void noGroundReflectsMoreThanItGets() {
        for (GroundType type : GroundType.values())
            for (Polarization pol : Polarization.values())
                for (double sin = 0.01; sin <= 1; sin += 0.03)
                    assertTrue(Reflection.coefficient(new Frequency(50), pol, type.ground(), sin)
                                    .abs()
                            <= 1 + 1e-12);
    }

    @Test
    void straightDownPolarisationsDifferOnlyInSign() {
        // Limit: at ψ = 90° both are the normal incidence of one half-space.
        Frequency f = new Frequency(150);
        Complex v = Reflection.coefficient(f, Polarization.VERTICAL, Ground.AVERAGE, 1);
        Complex h = Reflection.coefficient(f, Polarization.HORIZONTAL, Ground.AVERAGE, 1);
        assertEquals(0, v.add(h).abs(), 1e-12);
    }

    @Test
    void permittivityIsThatOfTheText() {
        // By hand: 15 − j 60·0.005·2 m = 15 − j 0.6 at 149.9 MHz, with 59.958 for 60.
        Complex eps = Ground.AVERAGE.relativePermittivity(new Frequency(149.896229));
        assertEquals(15, eps.getReal());
        assertEquals(-0.6, eps.getImaginary(), 0.0005);
    }

    @ParameterizedTest
    @CsvSource({
        "average,15,0.005",
        "wet,30,0.01",
        "dry,4,0.001",
        "sea,80,5",
        "fresh-water,80,0.01",
        "poor,4,0.001",
        "good,25,0.02"
    })
    void wordsStandForTheConstantsOfTheHandbook(String word, double eps, double sigma) {
        assertEquals(
                Optional.of(new Ground(eps, sigma)),
                GroundType.KEYWORD.find(word).map(GroundType::ground));
    }

    @Test
    void groundThatIsNoneIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Ground(0.5, 0.01));
        assertThrows(IllegalArgumentException.class, () -> new Ground(15, -1));
        assertThrows(IllegalArgumentException.class, () -> new Ground(Double.NaN, 0));
        assertThrows(IllegalArgumentException.class, () -> new Ground(1, 0));
    }

    @Test
    void roughnessWeakensAsTheRows() {
        // Rayleigh roughness, textbooks; independent calculation: 1 m, 3°, 450 MHz: g 0.987, factor 0.651.
        double g = Reflection.roughness(new Frequency(450), 1, Math.sin(Math.toRadians(3)));
        assertEquals(0.987, g, 0.001);
        assertEquals(0.651, Reflection.roughnessFactor(g), 0.001);
        double tiny = Reflection.roughness(new Frequency(150), 0.3, Math.sin(Math.toRadians(1)));
        assertEquals(0.033, tiny, 0.0005);
        assertEquals(0.9995, Reflection.roughnessFactor(tiny), 0.0001);
    }

    @Test
    void roughnessFactorFallsSteadilyThroughTheChangeOfSeries() {
        double before = 1;
        for (double g = 0; g < 30; g += 0.01) {
            double factor = Reflection.roughnessFactor(g);
            assertTrue(factor <= before + 1e-12 && factor > 0, "g " + g);
            before = factor;
        }
        double g = Math.sqrt(80);
        assertEquals(1, Reflection.roughnessFactor(g + 1e-9) / Reflection.roughnessFactor(g - 1e-9), 1e-8);
    }
}
