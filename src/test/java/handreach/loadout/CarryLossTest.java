package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.units.Frequency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CarryLossTest {
    @ParameterizedTest // our own bracketing, not a published table: this keeps the printed table and the code the same
    @CsvSource({
        "face,VHF,-7,2,3", "face,UHF,-4,1.5,3", "face,UPPER_UHF,-3,1.5,3",
        "chest,VHF,-10,3,4", "chest,UHF,-7,2.5,4", "chest,UPPER_UHF,-6,2.5,4",
        "shoulder-mic,VHF,-12,3,4", "shoulder-mic,UHF,-8,3,4", "shoulder-mic,UPPER_UHF,-7,2.5,4",
        "hip-swivel,VHF,-15,3.5,4.5", "hip-swivel,UHF,-11,3,4", "hip-swivel,UPPER_UHF,-9,3,4",
        "hip-tight,VHF,-18,4,5", "hip-tight,UHF,-13,3,4.5", "hip-tight,UPPER_UHF,-11,3,4.5",
        "mast,VHF,-0.5,0.5,1", "mast,UHF,-0.5,0.5,1", "mast,UPPER_UHF,-0.5,0.5,1",
        "vehicle,VHF,-17,4.472,5.831", "vehicle,UHF,-13,4.272,5.831", "vehicle,UPPER_UHF,-12,4.272,5.831"
    })
    void theDefaultTableIsTheOnePrinted(String carry, Band band, double dbd, double commonDb, double spreadDb) {
        CarryLoss loss = CarryLoss.standard(Carry.KEYWORD.find(carry).orElseThrow(), band);
        assertEquals(dbd, loss.mean().dbd(), 1e-9);
        assertEquals(commonDb, loss.doubt().commonDb(), 1e-3);
        assertEquals(spreadDb, loss.doubt().spreadDb(), 1e-3);
        assertTrue(loss.origin().contains("bracketing of ours"));
    }

    @Test
    void nearerToTheBodyIsNeverBetter() {
        for (Band band : Band.values()) {
            double before = 0;
            for (Carry carry : new Carry[] {
                Carry.MAST, Carry.FACE, Carry.CHEST, Carry.SHOULDER_MIC, Carry.HIP_SWIVEL, Carry.HIP_TIGHT
            }) {
                double dbd = CarryLoss.standard(carry, band).mean().dbd();
                assertTrue(dbd < before, carry + " " + band);
                before = dbd;
            }
        }
    }

    @Test
    void headingsAverageToTheMeanAndTheRadioSideIsBest() {
        CarryLoss hip = CarryLoss.standard(Carry.HIP_TIGHT, Band.VHF);
        double sum = 0;
        for (int deg = 0; deg < 360; deg++) sum += hip.headingDb(deg, 90);
        assertEquals(0, sum / 360, 1e-9);
        assertEquals(6.25, hip.headingDb(90, 90), 1e-9);
        assertEquals(-6.25, hip.headingDb(-90, 90), 1e-9);
        assertEquals(0, CarryLoss.standard(Carry.MAST, Band.VHF).headingDb(12, 0), 0);
    }

    @Test
    void aKnownHeadingLeavesLessSpread() { // by hand, VHF at the face: sqrt(9 − 16/8) = 2.646
        assertEquals(2.646, CarryLoss.standard(Carry.FACE, Band.VHF).spreadAtKnownHeadingDb(), 1e-3);
        for (Carry carry : Carry.values()) {
            CarryLoss loss = CarryLoss.standard(carry, Band.UPPER_UHF);
            assertTrue(loss.spreadAtKnownHeadingDb() <= loss.doubt().spreadDb());
            assertTrue(loss.spreadAtKnownHeadingDb() >= 1);
        }
    }

    @Test
    void bodyOverTheBoxAddsBackToTheTable() {
        for (Band band : Band.values())
            for (Carry carry : Carry.values())
                if (carry.isAtBody())
                    assertEquals(
                            CarryLoss.standard(carry, band).mean().dbd(),
                            ControlAnchor.standard(band).onBox().dbd()
                                    + CarryLoss.standard(carry, band).bodyDb(),
                            1e-12);
    }

    @Test
    void bandsAreFoundAndTheirEdgesAreKnown() {
        assertEquals(Band.VHF, Band.of(new Frequency(155)));
        assertEquals(Band.VHF, Band.of(new Frequency(222)));
        assertEquals(Band.UHF, Band.of(new Frequency(446)));
        assertEquals(Band.UPPER_UHF, Band.of(new Frequency(815)));
        assertTrue(Band.VHF.covers(new Frequency(151.82)));
        assertTrue(!Band.VHF.covers(new Frequency(222)));
    }

    @Test
    void wordsAndAliasesFindTheirPosition() {
        for (Carry carry : Carry.values())
            assertEquals(carry, Carry.KEYWORD.find(carry.word()).orElseThrow());
        assertEquals(Carry.HIP_TIGHT, Carry.KEYWORD.find("hip").orElseThrow());
        assertTrue(Carry.KEYWORD.find("pocket").isEmpty());
        assertEquals(Carry.values().length, Carry.KEYWORD.words().size());
    }
}
