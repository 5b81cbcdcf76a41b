package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MountingTest {
    @ParameterizedTest
    @CsvSource({
        "in hand,HAND,false",
        "In  the HAND,HAND,false",
        "hand,HAND,false",
        "hand with counterpoise,HAND,true",
        "chassis box,CHASSIS,false",
        "chassis,CHASSIS,false",
        "box with wire,COUNTERPOISE,true",
        "box without wire,CHASSIS,false",
        "box (no counterpoise),CHASSIS,false",
        "counterpoise,COUNTERPOISE,true",
        "on instrument,INSTRUMENT,false",
        "analyser,INSTRUMENT,false",
        "on belt,BODY,false",
        "radio on hip,BODY,false",
        "body,BODY,false"
    })
    void wordsMeanAKind(String words, MountKind kind, boolean wire) {
        Mounting found = Mounting.of(words);
        assertEquals(kind, found.kind());
        assertEquals(wire, found.withCounterpoise());
        assertTrue(found.known());
    }

    @Test
    void unknownWordsAreAGuess() {
        assertFalse(Mounting.of("roof rack").known());
        assertEquals(MountKind.CHASSIS, Mounting.of("roof rack").kind());
        assertThrows(IllegalArgumentException.class, () -> Mounting.of(" "));
    }

    @Test
    void whatAReadingHolds() {
        EffectsHeld box = EffectsHeld.of("whip", Mounting.of("chassis box"));
        assertTrue(box.holds(Effect.MISMATCH) && box.holds(Effect.CHASSIS));
        assertFalse(box.holds(Effect.HAND) || box.holds(Effect.BODY) || box.holds(Effect.COUNTERPOISE));
        assertTrue(EffectsHeld.of("whip with wire", Mounting.of("in hand")).holds(Effect.COUNTERPOISE));
        assertTrue(EffectsHeld.of("whip", Mounting.of("hand with counterpoise")).holds(Effect.COUNTERPOISE));
        assertFalse(EffectsHeld.of("whip without wire", Mounting.of("in hand")).holds(Effect.COUNTERPOISE));
    }

    /** The nearer to the user, the more a reading holds. */
    @Test
    void eachMountingHoldsAllThatTheOneBeforeHolds() {
        assertTrue(MountKind.CHASSIS.effects().containsAll(MountKind.INSTRUMENT.effects()));
        assertTrue(MountKind.HAND.effects().containsAll(MountKind.CHASSIS.effects()));
        assertTrue(MountKind.BODY.effects().containsAll(MountKind.HAND.effects()));
        assertTrue(MountKind.COUNTERPOISE.effects().containsAll(MountKind.CHASSIS.effects()));
        for (MountKind kind : MountKind.values()) assertTrue(kind.effects().contains(Effect.MISMATCH));
    }
}
