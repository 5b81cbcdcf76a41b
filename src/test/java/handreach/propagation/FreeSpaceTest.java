package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.units.Frequency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class FreeSpaceTest {
    private static final double ROUNDING_DB = 0.0001;

    @ParameterizedTest
    @CsvFileSource(resources = "free-space-p525.csv", useHeadersInDisplayName = true)
    void agreesWithTheRowsOfP525(double distanceKm, double mhz, double lossDb) {
        assertEquals(lossDb, FreeSpace.lossDb(new Frequency(mhz), distanceKm), ROUNDING_DB);
        Profile flat = PaperGround.flat(distanceKm, 5);
        PathLoss loss = LossModels.FREE_SPACE.loss(flat, new Terminals(2, 2), UsualConditions.at(new Frequency(mhz)));
        assertEquals(lossDb, loss.lossDb(), ROUNDING_DB);
    }

    @Test
    void doublingTheDistanceCostsSixDecibels() {
        Frequency f = new Frequency(155);
        assertEquals(20 * Math.log10(2), FreeSpace.lossDb(f, 8) - FreeSpace.lossDb(f, 4), 1e-12);
    }

    @Test
    void theModelTakesTheSlantDistance() {
        // By hand: 3 km along, 4 km up: 5 km.
        Profile steep = Profiles.of(new double[] {0, 3}, new double[] {0, 4000});
        PathLoss loss = new FreeSpaceModel().loss(steep, new Terminals(2, 2), UsualConditions.at(new Frequency(150)));
        assertEquals(FreeSpace.lossDb(new Frequency(150), 5), loss.lossDb(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesDistancesThatAreNone(double distanceKm) {
        assertThrows(IllegalArgumentException.class, () -> FreeSpace.lossDb(new Frequency(150), distanceKm));
    }
}
