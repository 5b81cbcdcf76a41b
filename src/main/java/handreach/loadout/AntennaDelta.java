package handreach.loadout;

import handreach.bench.DeltaOverControl;
import handreach.bench.Effect;
import handreach.bench.EffectsHeld;
import handreach.bench.MountKind;
import handreach.bench.Mounting;
import handreach.uncertainty.Doubt;
import handreach.uncertainty.Estimate;
import handreach.units.Db;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Level of an antenna over the control as it goes into a budget.
 *
 * @param delta decibels over the control
 * @param doubt standard uncertainty of it
 * @param mounting what both stood on
 * @param readings number of readings behind it; 0 when declared
 * @param source where it comes from, to be printed
 * @param held what it already contains
 */
public record AntennaDelta(Db delta, Doubt doubt, Mounting mounting, int readings, String source, EffectsHeld held) {
    /** Largest delta that is believed of an antenna, either way, dB: a shorted plug loses less. */
    public static final double LARGEST_DB = 60;
    /** Doubt of a delta from a single trial, which shows no scatter of its own, dB; scatter in the hand, our suggestion. */
    private static final double SINGLE_TRIAL_DB = 2;

    public AntennaDelta {
        if (!(Math.abs(delta.db()) <= LARGEST_DB))
            throw new IllegalArgumentException("delta over the control " + delta);
        if (readings < 0) throw new IllegalArgumentException("readings " + readings);
        Objects.requireNonNull(doubt);
        Objects.requireNonNull(mounting);
        Objects.requireNonNull(held);
    }

    /**
     * From the bench, with the doubt that its 95 % interval speaks of: a scatter known from few turns is widened by t(0.975, ν)/1.96. A delta
     * without scatter gets a doubt of 2 dB, our suggestion.
     */
    public static AntennaDelta of(DeltaOverControl bench, int readings, String source) {
        double commonDb = bench.estimate().map(Estimate::normalUncertainty).orElse(SINGLE_TRIAL_DB);
        return new AntennaDelta(
                bench.delta(), Doubt.common(commonDb), bench.mounting(), readings, source, bench.effects());
    }

    /** Stated by the user without readings; it counts as holding what a level reading in that mounting holds. */
    public static AntennaDelta declared(String antenna, Db delta, Doubt doubt, String mounting, String source) {
        Mounting place = Mounting.of(mounting);
        return new AntennaDelta(delta, doubt, place, 0, source, EffectsHeld.of(antenna, place));
    }

    /** The same with one more standard uncertainty that is common to all places. */
    public AntennaDelta withFurtherDoubt(double commonDb) {
        Doubt more = new Doubt(Math.hypot(doubt.commonDb(), commonDb), doubt.spreadDb());
        return new AntennaDelta(delta, more, mounting, readings, source, held);
    }

    public boolean holds(Effect effect) {
        return held.holds(effect);
    }

    /**
     * Doubt added by using the delta in another position than it was measured in.
     *
     * @shape  scalar out; pure
     * @unit   dB, standard uncertainty, common
     * @valid  0 in the same position, 1.5 dB from one position at the body to another, 3 dB from a box, an instrument or to a mast
     * @error  the figures are our suggestion
     * @source our suggestion
     */
    public double transferDoubtDb(Carry carry) {
        if (isSamePlace(carry)) return 0;
        boolean fromBody = mounting.kind() == MountKind.HAND || mounting.kind() == MountKind.BODY;
        return fromBody && carry.isAtBody() ? 1.5 : 3;
    }

    /** Whether it was measured elsewhere than in this position. */
    boolean isMoved(Carry carry) {
        return !isSamePlace(carry);
    }

    /** The words of a mounting, in lower case. */
    static List<String> words(Mounting mounting) {
        return List.of(mounting.name().toLowerCase(Locale.ROOT).split("[^\\p{L}]+"));
    }

    private boolean isSamePlace(Carry carry) {
        List<String> words = words(mounting);
        if (mounting.kind() == MountKind.HAND) return carry == Carry.FACE;
        return switch (carry) {
            case FACE -> false;
            case CHEST -> words.contains("chest") || words.contains("vest");
            case SHOULDER_MIC -> words.contains("shoulder");
            case HIP_SWIVEL, HIP_TIGHT -> words.contains("hip") || words.contains("belt") || words.contains("waist");
            case VEHICLE -> words.contains("vehicle");
            case ROOF -> words.contains("roof");
            case MAST -> words.contains("mast") || words.contains("pole");
        };
    }
}
