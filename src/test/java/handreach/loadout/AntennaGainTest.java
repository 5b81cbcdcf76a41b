package handreach.loadout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.DeltaOverControl;
import handreach.bench.Effect;
import handreach.bench.Mounting;
import handreach.uncertainty.Doubt;
import handreach.uncertainty.Estimate;
import handreach.units.Db;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AntennaGainTest {
    @ParameterizedTest // line theory, as printed in any line textbook, rounded to 0.001 dB
    @CsvSource({"1,0", "1.2,0.036", "1.5,0.177", "2,0.512", "3,1.249", "5,2.553", "10,4.807", "20,7.413"})
    void mismatchLossOfAStandingWaveRatio(double swr, double lossDb) {
        assertEquals(lossDb, AntennaGain.mismatchLossDb(swr), 0.0006);
    }

    @Test
    void aRatioBelowOneIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> AntennaGain.mismatchLossDb(0.8));
        assertThrows(
                IllegalArgumentException.class,
                () -> new AntennaGain.Control(ControlAnchor.standard(Band.VHF), OptionalDouble.of(0.5)));
    }

    @Test
    void aDeltaKnowsWhatItHolds() {
        AntennaDelta inHand = delta("in hand, with wire");
        AntennaDelta onBox = delta("box");
        assertTrue(inHand.holds(Effect.HAND));
        assertTrue(inHand.holds(Effect.COUNTERPOISE));
        assertTrue(onBox.holds(Effect.MISMATCH));
        assertFalse(onBox.holds(Effect.HAND));
        assertFalse(onBox.holds(Effect.COUNTERPOISE));
        assertFalse(UsualLoadouts.over(onBox, Band.VHF).holds(Effect.COUNTERPOISE));
        assertFalse(UsualLoadouts.control(Band.VHF).holds(Effect.COUNTERPOISE));
    }

    @ParameterizedTest
    @CsvSource({
        "hand,FACE,0", "in hand,FACE,0", "hand,CHEST,1.5", "hip,HIP_TIGHT,0", "chest,HIP_TIGHT,1.5",
        "box,FACE,3", "analyser,HIP_SWIVEL,3", "chassis,FACE,3", "hand,MAST,3", "mast,MAST,0"
    })
    void carryingADeltaOverCostsDoubt(String mounting, Carry carry, double commonDb) {
        assertEquals(commonDb, delta(mounting).transferDoubtDb(carry), 0);
    }

    @Test
    void theBenchsDoubtGoesAlong() {
        Mounting hand = Mounting.of("hand");
        Db db = new Db(2.25);
        DeltaOverControl many = new DeltaOverControl(
                "whip", "factory", hand, OptionalDouble.empty(), db, Optional.of(new Estimate(2.25, 0.593, 20)));
        DeltaOverControl one =
                new DeltaOverControl("whip", "factory", hand, OptionalDouble.empty(), db, Optional.empty());
        // GUM table G.2: t(0.975, 20) = 2.086.
        assertEquals(
                0.593 * 2.086 / 1.96, AntennaDelta.of(many, 6, "bench").doubt().commonDb(), 0.001);
        assertEquals(2, AntennaDelta.of(one, 1, "bench").doubt().commonDb(), 0);
        assertTrue(AntennaDelta.of(one, 1, "bench").holds(Effect.HAND));
    }

    private static AntennaDelta delta(String mounting) {
        return AntennaDelta.declared("whip", new Db(2), Doubt.common(0.5), mounting, "bench");
    }
}
