package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.units.Frequency;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class WhipGainTest {
    /** Columns are rounded to 0.1 dB. */
    private static final double ROUNDING_DB = 0.051;

    private static final Map<String, Double> DBD = new HashMap<>();

    /** Rows stand with the helical of each place first, so that what is compared is a difference of two computed gains. */
    @ParameterizedTest
    @CsvFileSource(resources = "body-whips-fdtd.csv", useHeadersInDisplayName = true)
    void columnsAreTheDifferenceOfComputedGains(
            int run, int mhz, String place, String antenna, int wire, double dbd, Double lossDb) {
        if (antenna.equals("helical") && wire == 0) DBD.put(mhz + place, dbd);
        if (mhz != 150 && mhz != 450 || place.equals("nonemic") || !DBD.containsKey(mhz + place)) return;
        double column = WhipGain.overHelicalDb(kind(antenna), wire == 1, place(place), new Frequency(mhz))
                .orElseThrow();
        assertEquals(dbd - DBD.get(mhz + place), column, ROUNDING_DB, antenna + " " + wire + " " + place);
    }

    private static Radiator kind(String word) {
        return switch (word) {
            case "helical" -> Radiator.SHORT_HELICAL;
            case "quarter" -> Radiator.QUARTER_WAVE;
            case "half" -> Radiator.HALF_WAVE_END_FED;
            case "five-eighths" -> Radiator.FIVE_EIGHTHS;
            default -> throw new IllegalArgumentException(word);
        };
    }

    private static WhipGain.Place place(String word) {
        return switch (word) {
            case "none" -> WhipGain.Place.BOX;
            case "face" -> WhipGain.Place.FACE;
            case "chest" -> WhipGain.Place.CHEST;
            case "mic" -> WhipGain.Place.SHOULDER_MIC;
            case "hip" -> WhipGain.Place.HIP_SWIVEL;
            case "tight" -> WhipGain.Place.HIP_TIGHT;
            default -> throw new IllegalArgumentException(word);
        };
    }

    @Test
    void whatWasNotComputedHasNoColumn() {
        Frequency vhf = new Frequency(155);
        assertTrue(WhipGain.overHelicalDb(Radiator.HALF_WAVE_END_FED, false, WhipGain.Place.SHOULDER_MIC, vhf)
                .isEmpty());
        assertTrue(WhipGain.overHelicalDb(Radiator.FIVE_EIGHTHS, true, WhipGain.Place.FACE, vhf)
                .isEmpty());
        assertTrue(WhipGain.overHelicalDb(Radiator.MONOPOLE, false, WhipGain.Place.FACE, vhf)
                .isEmpty());
        for (double mhz : new double[] {52, 800})
            assertTrue(WhipGain.overHelicalDb(Radiator.QUARTER_WAVE, false, WhipGain.Place.FACE, new Frequency(mhz))
                    .isEmpty());
    }

    @Test
    void columnsOfVhfEndAt300Mhz() {
        assertEquals(
                6.4,
                WhipGain.overHelicalDb(Radiator.QUARTER_WAVE, false, WhipGain.Place.FACE, new Frequency(299))
                        .orElseThrow());
        assertEquals(
                1.4,
                WhipGain.overHelicalDb(Radiator.QUARTER_WAVE, false, WhipGain.Place.FACE, new Frequency(301))
                        .orElseThrow());
    }
}
