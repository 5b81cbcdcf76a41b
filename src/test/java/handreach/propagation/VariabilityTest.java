package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.units.Frequency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class VariabilityTest {
    @ParameterizedTest
    @CsvFileSource(resources = "location-spread-p1812.csv", useHeadersInDisplayName = true)
    void locationSpreadAgreesWithP1812(double mhz, double squareM, double spreadDb) {
        assertEquals(spreadDb, Variability.locationSpreadDb(new Frequency(mhz), squareM), 0.0006);
    }

    @Test
    void theSpreadFadesOutAboveTheRoofs() {
        assertEquals(1, Variability.heightShare(1.5, 10));
        assertEquals(0.5, Variability.heightShare(15, 10), 1e-12);
        assertEquals(0, Variability.heightShare(25, 10));
    }
}
