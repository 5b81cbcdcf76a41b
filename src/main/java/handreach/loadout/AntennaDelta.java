package handreach.loadout;

import handreach.uncertainty.Doubt;
import handreach.units.Db;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/**
 * Level of an antenna over the control, from the bench.
 *
 * @param delta decibels over the control
 * @param doubt standard uncertainty of it
 * @param mount the mounting it was measured in, as the file calls it
 * @param readings number of readings behind it; 0 when declared
 * @param source where it comes from, to be printed
 * @param holds what it already contains
 */
public record AntennaDelta(Db delta, Doubt doubt, String mount, int readings, String source, Set<Effect> holds) {
    /** What a received-level difference holds in any mounting; the body only where there was one. */
    private static final Set<Effect> RECEIVED_LEVEL =
            Set.copyOf(EnumSet.of(Effect.MISMATCH, Effect.EFFICIENCY, Effect.CHASSIS, Effect.PATTERN));

    public AntennaDelta {
        if (!(Math.abs(delta.db()) <= 60)) throw new IllegalArgumentException("delta over the control " + delta);
        if (readings < 0) throw new IllegalArgumentException("readings " + readings);
        holds = Set.copyOf(holds);
    }

    /** From received levels in a mounting; {@code withCounterpoise} when the wire was on. */
    public static AntennaDelta measured(
            Db delta, Doubt doubt, String mount, int readings, String source, boolean withCounterpoise) {
        EnumSet<Effect> holds = EnumSet.copyOf(RECEIVED_LEVEL);
        if (withCounterpoise) holds.add(Effect.COUNTERPOISE);
        if (isOnBody(mount)) holds.add(Effect.BODY);
        return new AntennaDelta(delta, doubt, mount, readings, source, holds);
    }

    /** Stated by the user without readings; it counts as holding all there is to the antenna in that mounting. */
    public static AntennaDelta declared(Db delta, Doubt doubt, String mount, String source, boolean withCounterpoise) {
        return measured(delta, doubt, mount, 0, source, withCounterpoise);
    }

    /** Whether a person held or wore the radio in a mounting of this name. */
    public static boolean isOnBody(String mount) {
        String low = mount.toLowerCase(Locale.ROOT);
        return low.contains("hand") && !low.contains("handheld")
                || placeOf(mount) != null && placeOf(mount).isAtBody();
    }

    private static Carry placeOf(String mount) {
        String low = mount.toLowerCase(Locale.ROOT);
        for (Carry carry : Carry.values()) if (low.contains(carry.word())) return carry;
        for (String other : new String[] {"belt", "hip", "head", "shoulder", "pole"})
            if (low.contains(other)) return Carry.of(other).orElseThrow();
        return low.contains("hand") && !low.contains("handheld") ? Carry.FACE : null;
    }

    /**
     * Doubt added by using the delta in another position than it was measured in.
     *
     * @shape  scalar out; pure
     * @unit   dB, standard uncertainty, common
     * @valid  0 in the same position, 1.5 dB from one position at the body to another, 3 dB from a box or an analyser
     * @error  the figures are our suggestion
     * @source our suggestion
     */
    public double transferDoubtDb(Carry carry) {
        Carry place = placeOf(mount);
        if (place == carry) return 0;
        return place != null && place.isAtBody() && carry.isAtBody() ? 1.5 : 3;
    }
}
