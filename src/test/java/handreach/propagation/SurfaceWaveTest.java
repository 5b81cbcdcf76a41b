package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.units.Frequency;
import handreach.units.Polarization;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class SurfaceWaveTest {
    @ParameterizedTest
    @CsvFileSource(resources = "surface-wave-norton.csv", useHeadersInDisplayName = true)
    void attenuationAgreesWithFortyDigits(double wr, double wi, double fr, double fi) {
        Complex f = SurfaceWave.attenuation(new Complex(wr, wi));
        double scale = Math.hypot(fr, fi);

        assertEquals(0, Math.hypot(f.getReal() - fr, f.getImaginary() - fi) / scale, 1e-8);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "effective-height-bullington.csv", useHeadersInDisplayName = true)
    void effectiveHeightAgreesWithBullington(
            double eps, double sigma, double mhz, Polarization pol, double heightM, double roundingM) {
        assertEquals(heightM, SurfaceWave.effectiveHeightM(new Frequency(mhz), pol, new Ground(eps, sigma)), roundingM);
    }

    @Test
    void nearAndFarItIsWhatItShouldBe() {
        assertEquals(Complex.ONE, SurfaceWave.attenuation(Complex.ZERO));
        // Limit: F → −1/(2w).
        Complex w = new Complex(300, -400);
        Complex product = SurfaceWave.attenuation(w).multiply(w).multiply(-2);
        assertEquals(0, product.subtract(1).abs(), 0.005);
    }

    @Test
    void errorFunctionAndSeriesMeet() {
        for (double degrees = -179; degrees < 0; degrees += 1) {
            double angle = Math.toRadians(degrees);
            Complex in = new Complex(35.999999 * Math.cos(angle), 35.999999 * Math.sin(angle));
            Complex out = in.multiply(36.000001 / 35.999999);
            double step = SurfaceWave.attenuation(in)
                    .subtract(SurfaceWave.attenuation(out))
                    .abs();
            assertEquals(0, step / SurfaceWave.attenuation(in).abs(), 1e-7, "arg w " + degrees);
        }
    }
}
