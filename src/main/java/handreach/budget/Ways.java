package handreach.budget;

import handreach.loadout.NeededWays;

/** Which directions of a link rule its margin, odds and doubt; both are computed whatever is asked. */
public enum Ways {
    /** Both must work: the weaker rules. */
    BOTH,
    /** From the first end to the second alone. */
    THERE,
    /** From the second end to the first alone. */
    BACK;

    /** What is needed between two ends, of which one may be the base; between two of a kind both ways are. */
    public static Ways between(NeededWays needed, boolean isFirstBase, boolean isSecondBase) {
        if (needed == NeededWays.BOTH || isFirstBase == isSecondBase) return BOTH;
        return isSecondBase == (needed == NeededWays.CALLS) ? THERE : BACK;
    }

    /** The same seen from the other end. */
    public Ways turned() {
        return switch (this) {
            case BOTH -> BOTH;
            case THERE -> BACK;
            case BACK -> THERE;
        };
    }

    /**
     * Of two figures, one a way, the lesser of those that count.
     *
     * @shape  two scalars in, scalar out; pure
     * @unit   that of the figures, the same for both
     * @valid  every figure
     * @error  none
     * @source minimum
     */
    public double least(double there, double back) {
        return switch (this) {
            case BOTH -> Math.min(there, back);
            case THERE -> there;
            case BACK -> back;
        };
    }
}
