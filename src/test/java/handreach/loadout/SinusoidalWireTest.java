package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class SinusoidalWireTest {
    private static final double ROUNDING_DB = 0.0011;

    @ParameterizedTest
    @CsvFileSource(resources = "wire-sinusoidal.csv", numLinesToSkip = 3)
    void agreesWithTheBook(double length, double overGroundDbi, double freeSpaceDbi) {
        assertEquals(overGroundDbi, SinusoidalWire.gainDbi(length, true)[90], ROUNDING_DB);
        assertEquals(freeSpaceDbi, SinusoidalWire.gainDbi(length, false)[90], ROUNDING_DB);
    }

    @Test
    void threeQuartersOfAWavePointUp() { // the book's maximum at 47.4 degrees, 6.486 dBi
        double[] g = SinusoidalWire.gainDbi(0.75, true);
        assertEquals(6.486, Math.max(g[90 + 47], g[90 + 48]), 0.005);
    }

    @Test
    void aShortWireIsTheSineSquaredDoughnut() { // limit: 1.5 cos² e
        double[] g = SinusoidalWire.gainDbi(0.001, false);
        for (int e = 0; e < 80; e += 10)
            assertEquals(10 * Math.log10(1.5 * Math.pow(Math.cos(Math.toRadians(e)), 2)), g[90 + e], 0.001);
    }
}
