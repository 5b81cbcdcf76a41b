package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.uncertainty.Doubt;
import handreach.units.Db;
import handreach.units.Dbd;
import handreach.units.Frequency;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DeltaMoveTest {
    private static final Frequency VHF = new Frequency(155);
    private static final Frequency UHF = new Frequency(446);
    private static final double EXACT = 1e-9;

    private static Antenna antenna(Radiator radiator, boolean wire, Frequency frequency) {
        double lengthM = radiator.usualLengthWavelengths() * frequency.wavelengthM();
        return new Antenna("invented", radiator, lengthM, wire, new Burden(15, 25, 0, 1), Optional.empty());
    }

    private static Antenna control(Frequency frequency) {
        return antenna(Radiator.SHORT_HELICAL, false, frequency);
    }

    private static AntennaDelta delta(String antenna, String mounting) {
        return AntennaDelta.declared(antenna, new Db(3), Doubt.common(0.6), mounting, "invented");
    }

    private static DeltaMove move(String mounting, Radiator radiator, Carry carry, Frequency frequency) {
        return DeltaMove.of(
                delta("whip", mounting),
                antenna(radiator, false, frequency),
                control(frequency),
                CarryLoss.standard(carry, frequency),
                frequency);
    }

    @ParameterizedTest // by hand: column of the place less column of the box, as computed for this project
    @CsvSource({
        "box,QUARTER_WAVE,FACE,155,2.3", "box,QUARTER_WAVE,CHEST,155,4.0", "box,QUARTER_WAVE,HIP_TIGHT,155,0.6",
        "box,HALF_WAVE_END_FED,FACE,155,7.8", "box,FIVE_EIGHTHS,CHEST,155,12.4", "box,FIVE_EIGHTHS,VEHICLE,155,8.5",
        "box,QUARTER_WAVE,FACE,446,0.4", "box,HALF_WAVE_END_FED,FACE,446,3.6", "box,FIVE_EIGHTHS,HIP_SWIVEL,446,-1.9",
        "hand,QUARTER_WAVE,CHEST,155,1.7", "hand,FIVE_EIGHTHS,HIP_SWIVEL,446,-6.1", "chest,QUARTER_WAVE,FACE,155,-1.7",
        "box,SHORT_HELICAL,FACE,155,0", "box,QUARTER_WAVE,SHOULDER_MIC,155,3.4"
    })
    void theMoveIsTheDifferenceOfTheColumns(String from, Radiator radiator, Carry carry, double mhz, double db) {
        DeltaMove move = move(from, radiator, carry, new Frequency(mhz));
        assertTrue(move.isKnown(), move.words());
        assertEquals(db, move.shiftDb(), EXACT);
        assertEquals(Math.abs(db) / 4, move.kindDoubtDb(), EXACT);
    }

    /** By hand, VHF at the face: whip with wire over the control with wire 4.5 − 3.7 on the box, 7.5 over the bare control in the hand. */
    @Test
    void aWireThatHungFromTheControlTooIsTakenOff() {
        Antenna wired = antenna(Radiator.QUARTER_WAVE, true, VHF);
        CarryLoss face = CarryLoss.standard(Carry.FACE, VHF);
        DeltaMove both = DeltaMove.of(delta("whip", "box with counterpoise wire"), wired, control(VHF), face, VHF);
        assertEquals(7.5 - 0.8, both.shiftDb(), EXACT);
        DeltaMove named = DeltaMove.of(delta("whip with wire", "box"), wired, control(VHF), face, VHF);
        assertEquals(7.5 - 4.5, named.shiftDb(), EXACT);
        DeltaMove hand = DeltaMove.of(delta("whip", "in hand, wire on"), wired, control(VHF), face, VHF);
        assertEquals(3.5, hand.shiftDb(), EXACT);
        DeltaMove sameWire = DeltaMove.of(delta("whip with wire", "in hand"), wired, control(VHF), face, VHF);
        assertEquals(DeltaMove.UNASKED, sameWire);
    }

    @Test
    void aWireThatWasNeverMeasuredMovesNothing() {
        Antenna wired = antenna(Radiator.QUARTER_WAVE, true, VHF);
        CarryLoss face = CarryLoss.standard(Carry.FACE, VHF);
        assertEquals(
                2.3,
                DeltaMove.of(delta("whip", "box"), wired, control(VHF), face, VHF)
                        .shiftDb(),
                EXACT);
    }

    @Test
    void whereItWasMeasuredNothingMoves() {
        assertEquals(DeltaMove.UNASKED, move("hand", Radiator.FIVE_EIGHTHS, Carry.FACE, VHF));
        assertEquals(DeltaMove.UNASKED, move("on the hip", Radiator.FIVE_EIGHTHS, Carry.HIP_TIGHT, VHF));
        assertEquals(DeltaMove.UNASKED, move("hand", Radiator.FIVE_EIGHTHS, Carry.MAST, VHF));
    }

    @Test
    void anInstrumentIsNoRadio() { // by hand: √(3² + 3²)
        assertEquals(
                Math.sqrt(18),
                move("analyser", Radiator.QUARTER_WAVE, Carry.FACE, VHF).controlDoubtDb(),
                EXACT);
        assertEquals(3, move("box", Radiator.QUARTER_WAVE, Carry.FACE, VHF).controlDoubtDb(), EXACT);
        assertEquals(1.5, move("hand", Radiator.QUARTER_WAVE, Carry.CHEST, VHF).controlDoubtDb(), EXACT);
        assertEquals(1.2, move("box", Radiator.QUARTER_WAVE, Carry.FACE, UHF).controlDoubtDb(), EXACT);
    }

    @ParameterizedTest
    @CsvSource({
        "box,HALF_WAVE_END_FED,SHOULDER_MIC,155,not computed", "box,MONOPOLE,FACE,155,not computed",
        "bracket,QUARTER_WAVE,FACE,155,names no place", "on the body,QUARTER_WAVE,FACE,155,names no place",
        "box,QUARTER_WAVE,FACE,815,no columns", "box,QUARTER_WAVE,FACE,52,no columns"
    })
    void whatIsNotKnownIsSaid(String from, Radiator radiator, Carry carry, double mhz, String why) {
        DeltaMove move = move(from, radiator, carry, new Frequency(mhz));
        assertFalse(move.isKnown());
        assertEquals(0, move.shiftDb(), 0);
        assertTrue(move.words().contains(why), move.words());
    }

    @Test
    void aKindThatNobodyStatedOrThatItsLengthDeniesIsNotKnown() {
        CarryLoss face = CarryLoss.standard(Carry.FACE, VHF);
        Antenna short20 =
                new Antenna("cut", Radiator.QUARTER_WAVE, 0.2, false, new Burden(20, 25, 0, 1), Optional.empty());
        Antenna unstated = new Antenna(
                "unstated", Radiator.SHORT_HELICAL, 0.15, false, new Burden(15, 25, 0, 1), Optional.empty(), false);
        for (Antenna antenna : new Antenna[] {short20, unstated}) {
            DeltaMove move = DeltaMove.of(delta("whip", "box"), antenna, control(VHF), face, VHF);
            assertFalse(move.isKnown());
            assertTrue(move.words().contains("kind of this antenna is not known"), move.words());
        }
    }

    @Test
    void thePlansOwnFigureStandsAloneAndIsToldWhatWouldBeAdded() {
        CarryLoss own = CarryLoss.stated(Carry.FACE, VHF, new Dbd(-9), new Doubt(1, 3), "own");
        DeltaMove move = DeltaMove.of(
                delta("whip", "box"), antenna(Radiator.HALF_WAVE_END_FED, false, VHF), control(VHF), own, VHF);
        assertFalse(move.isKnown());
        assertEquals(0, move.shiftDb(), 0);
        assertTrue(move.words().contains("+7.8 dB"), move.words());
    }

    @Test
    void aControlOfAnotherKindIsTheReference() { // by hand, VHF: five-eighths over quarter-wave 11.7 − 6.4 against
        // 3.2 − 4.1
        DeltaMove move = DeltaMove.of(
                delta("whip", "box"),
                antenna(Radiator.FIVE_EIGHTHS, false, VHF),
                antenna(Radiator.QUARTER_WAVE, false, VHF),
                CarryLoss.standard(Carry.FACE, VHF),
                VHF);
        assertEquals(5.3 + 0.9, move.shiftDb(), EXACT);
    }
}
