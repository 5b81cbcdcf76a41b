package handreach.budget;

import handreach.units.Dbm;
import handreach.units.Frequency;

/** What keeps a relay's transmitter out of a receiver beside it. Isolation and losses in dB, positive. */
public final class Isolation {
    /** What spacing alone can be counted on to give, dB; beyond it other ways round (case, cable, scatter) decide. */
    public static final double SPACING_LIMIT_DB = 70;

    private Isolation() {}

    /**
     * Isolation that keeps a receiver from being blocked.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   transmitter power and sensitivity dBm, blocking ratio dB; result dB
     * @valid  every finite value
     * @error  3 dB, as blocking ratios are class figures (84 dB for EN 300 086, from memory)
     * @source Ptx − (S + blocking ratio), definition of the blocking ratio
     */
    public static double neededAgainstBlockingDb(Dbm power, Dbm sensitivity, double blockingRatioDb) {
        return power.dbm() - (sensitivity.dbm() + blockingRatioDb);
    }

    /**
     * Isolation of two upright dipoles one above the other.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   spacing m from centre to centre; result dB
     * @valid  spacing from half a wavelength up; count on no more than {@link #SPACING_LIMIT_DB}
     * @error  3 dB or so
     * @source 28 + 40 log(s/λ), seen in public manuals, original source not found
     */
    public static double verticalDb(double spacingM, Frequency frequency) {
        return 28 + 40 * Math.log10(ratio(spacingM, frequency));
    }

    /**
     * Spacing that {@link #verticalDb} asks for.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   isolation dB; result m from centre to centre
     * @valid  as {@link #verticalDb}; no promise beyond its limit
     * @error  3 dB or so in the isolation, a fifth of the spacing
     * @source inverse of {@link #verticalDb}
     */
    public static double verticalSpacingM(double isolationDb, Frequency frequency) {
        return frequency.wavelengthM() * Math.pow(10, (isolationDb - 28) / 40);
    }

    private static double ratio(double spacingM, Frequency frequency) {
        if (!(spacingM > 0)) throw new IllegalArgumentException("spacing " + spacingM + " m");
        return spacingM / frequency.wavelengthM();
    }
}
