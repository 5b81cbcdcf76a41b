package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.units.Dbm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class RadioTest {
    @ParameterizedTest
    @CsvFileSource(resources = "required-level-tsb88.csv", numLinesToSkip = 3)
    void neededLevelIsSensitivityPlusTheFadedStep(String modulation, String quality, double neededDbm) {
        Radio radio = radio(-119, Modulation.KEYWORD.find(modulation).orElseThrow());
        double needed = -119 + radio.qualityDb(CopyQuality.KEYWORD.find(quality).orElseThrow(), Fading.WALKING);
        assertEquals(neededDbm, needed, 0.05);
    }

    @ParameterizedTest // kTB at 290 K, dBm, by hand: −173.975 + 10 log B
    @CsvSource({"fm-25,-132.97", "fm-12.5,-135.05", "c4fm,-136.57"})
    void thermalNoiseFillsTheBandwidth(String modulation, double dbm) {
        assertEquals(dbm, Modulation.KEYWORD.find(modulation).orElseThrow().thermalNoiseDbm(), 0.006);
    }

    @Test
    void sensitivityImpliesTheNoiseFigure() { // by hand: −119 − 7 + 135.05 = 9.05 dB
        assertEquals(9.05, radio(-119, Modulation.FM_12_5).noiseFigureDb(), 0.01);
        Radio magic = radio(-131, Modulation.FM_12_5);
        assertTrue(magic.isTooGoodToBeTrue());
        assertEquals(0, magic.noiseFigureDb(), 0);
        assertFalse(radio(-122, Modulation.FM_25).isTooGoodToBeTrue());
    }

    @Test
    void betterCopyNeverNeedsLessAndStandingNeverMore() {
        for (Modulation modulation : Modulation.values())
            for (Fading fading : Fading.values()) {
                double before = modulation.staticDb();
                for (CopyQuality quality : CopyQuality.values()) {
                    double needed = modulation.neededDb(quality, fading);
                    assertTrue(needed >= before, modulation + " " + quality + " " + fading);
                    assertTrue(needed <= modulation.neededDb(quality, Fading.WALKING));
                    before = needed;
                }
            }
    }

    @Test
    void aRadioOutOfThisWorldIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> radio(119, Modulation.FM_25));
        assertThrows(
                IllegalArgumentException.class, () -> new Radio("r", new Dbm(90), new Dbm(-119), Modulation.FM_25));
    }

    private static Radio radio(double sensitivityDbm, Modulation modulation) {
        return new Radio("radio", Dbm.ofWatts(5), new Dbm(sensitivityDbm), modulation);
    }
}
