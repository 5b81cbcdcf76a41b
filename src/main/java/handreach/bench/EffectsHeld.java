package handreach.bench;

import java.util.EnumSet;
import java.util.Set;

/**
 * What the received-level readings behind a delta already contain. Whoever makes a ledger asks here before it adds a line:
 * what is held is shown as "already in the delta" and counts nothing.
 *
 * @param mounting where it was measured
 * @param effects what the readings contain
 */
public record EffectsHeld(Mounting mounting, Set<Effect> effects) {
    public EffectsHeld {
        effects = Set.copyOf(effects);
    }

    /** What a reading of this antenna in this mounting contains; a wire named with the antenna counts as one that was on. */
    public static EffectsHeld of(String antenna, Mounting mounting) {
        Set<Effect> effects = EnumSet.noneOf(Effect.class);
        effects.addAll(mounting.kind().effects());
        if (mounting.withCounterpoise() || Mounting.saysCounterpoise(antenna)) effects.add(Effect.COUNTERPOISE);
        return new EffectsHeld(mounting, effects);
    }

    public boolean holds(Effect effect) {
        return effects.contains(effect);
    }
}
