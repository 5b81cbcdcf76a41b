package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.units.Frequency;
import java.util.Random;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class VariabilityTest {
    @ParameterizedTest
    @CsvFileSource(resources = "location-spread-p1812.csv", useHeadersInDisplayName = true)
    void locationSpreadAgreesWithP1812(double mhz, double squareM, double spreadDb) {
        assertEquals(spreadDb, Variability.locationSpreadDb(new Frequency(mhz), squareM), 0.0006);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "broad-spread-p1546.csv", useHeadersInDisplayName = true)
    void broadSpreadAgreesWithP1546(double mhz, double spreadDb) {
        assertEquals(
                spreadDb,
                Variability.broadSpreadDb(new Frequency(mhz), Variability.Surroundings.BELOW_CLUTTER),
                0.0051);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "suzuki-margin.csv", useHeadersInDisplayName = true)
    void marginsAgreeWithTheIntegral(double spreadDb, double odds, double marginDb) {
        assertEquals(marginDb, Variability.suzukiMarginDb(odds, spreadDb), 0.0051);
        if (spreadDb == 0) assertEquals(marginDb, Variability.rayleighMarginDb(odds), 0.0051);
    }

    @Test
    void suzukiAgreesWithDrawingLots() {
        Random random = new Random(99);
        int good = 0;
        int n = 200_000;
        for (int i = 0; i < n; i++) {
            double mean = 6 + 8 * random.nextGaussian();
            double power = -Math.log(1 - random.nextDouble());
            if (mean + 10 * Math.log10(power) > 0) good++;
        }
        assertEquals(good / (double) n, Variability.suzukiOdds(6, 8), 0.004);
    }

    @ParameterizedTest
    @CsvSource({"150,0.502,0.189", "450,1.507,0.063"})
    void fadesComeAsOftenAsRiceSays(double mhz, double perS, double meanS) {
        // Rice (1945), 1.4 m/s, 10 dB below the local mean; independent calculation, 0.001.
        Variability.FadeRate rate = Variability.fadeRate(new Frequency(mhz), 1.4, -10);
        assertEquals(perS, rate.crossingsPerS(), 0.0006);
        assertEquals(meanS, rate.meanFadeS(), 0.0006);
        // Law: rate times mean duration is the share of time below.
        assertEquals(1 - Variability.rayleighOdds(10), rate.crossingsPerS() * rate.meanFadeS(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"0,50,77.3", "5,73.4,90.0", "8,84.1,94.6"})
    void theAreaDoesBetterThanItsEdge(double marginDb, double edgePercent, double areaPercent) {
        // Reudink (1974), spread 8 dB, exponent 4; independent calculation, 0.1 %.
        assertEquals(edgePercent, 50 * Erf.erfc(-marginDb / (8 * Math.sqrt(2))), 0.051);
        assertEquals(areaPercent, 100 * Variability.areaShare(marginDb, 8, 4), 0.051);
    }

    @Test
    void theAreaIsTheSumOfItsRings() {
        // Oracle: plain sum over 20 000 rings.
        for (double margin : new double[] {-20, -3, 0, 6, 25})
            for (double spread : new double[] {0.5, 4, 10}) {
                double sum = 0;
                int n = 20_000;
                for (int i = 0; i < n; i++) {
                    double r = (i + 0.5) / n;
                    double here = margin - 10 * 3.5 * Math.log10(r);
                    sum += 2 * r / n * 0.5 * Erf.erfc(-here / (spread * Math.sqrt(2)));
                }
                assertEquals(sum, Variability.areaShare(margin, spread, 3.5), 2e-4, margin + " " + spread);
            }
    }

    @Test
    void theSpreadFadesOutAboveTheRoofs() {
        assertEquals(1, Variability.heightShare(1.5, 10));
        assertEquals(0.5, Variability.heightShare(15, 10), 1e-12);
        assertEquals(0, Variability.heightShare(25, 10));
    }

    @Test
    void aWalkHoldsFewIndependentPlaces() {
        // By hand: 400 m in woods with 40 m: 1 + 400/80 = 6; e^(−1) after one decorrelation distance.
        assertEquals(6, Variability.independentSamples(400, 40), 1e-12);
        assertEquals(Math.exp(-1), Variability.shadowCorrelation(-40, 40), 1e-12);
        assertEquals(0.9375, Variability.bestOfSpotsOdds(0.5, 4), 1e-12);
    }

    @Test
    void moreOddsNeedMoreMargin() {
        double before = -100;
        for (double odds = 0.05; odds < 1; odds += 0.05) {
            double margin = Variability.suzukiMarginDb(odds, 7);
            assertTrue(margin > before);
            before = margin;
        }
        assertThrows(IllegalArgumentException.class, () -> Variability.rayleighMarginDb(1));
        assertThrows(IllegalArgumentException.class, () -> Variability.areaShare(0, 0, 4));
        assertThrows(IllegalArgumentException.class, () -> Variability.suzukiOdds(0, -1));
    }
}
