package handreach.bench.match;

/**
 * How well a load takes power from a line: one number, the magnitude of the reflection coefficient, under its four names.
 *
 * @param reflection magnitude |Γ|, from 0 (all taken) to below 1 (nothing taken)
 */
public record Match(double reflection) {
    /** Return loss of a perfect load is infinite; no instrument shows more than this. */
    private static final double LEAST_REFLECTION = 1e-10;

    /** Largest reflection that is kept apart from total: SWR 2 million. */
    public static final double MOST_REFLECTION = 1 - 1e-6;

    public Match {
        if (!(reflection >= 0 && reflection < 1)) throw new IllegalArgumentException("reflection " + reflection);
    }

    public static Match ofReflection(double magnitude) {
        return new Match(magnitude);
    }

    /** From SWR, 1 or more. */
    public static Match ofSwr(double swr) {
        if (!(swr >= 1) || Double.isInfinite(swr)) throw new IllegalArgumentException("SWR " + swr);
        return new Match((swr - 1) / (swr + 1));
    }

    /** From return loss, dB, positive; 0 dB, total reflection, is taken as {@link #MOST_REFLECTION}. */
    public static Match ofReturnLossDb(double returnLossDb) {
        if (!(returnLossDb >= 0)) throw new IllegalArgumentException("return loss " + returnLossDb);
        return new Match(Math.min(MOST_REFLECTION, Math.pow(10, -returnLossDb / 20)));
    }

    /**
     * Standing-wave ratio.
     *
     * @shape  scalar out; pure
     * @unit   1 or more
     * @valid  every match
     * @error  rounding only
     * @source (1 + |Γ|)/(1 − |Γ|), any line textbook
     */
    public double swr() {
        return (1 + reflection) / (1 - reflection);
    }

    /**
     * Return loss.
     *
     * @shape  scalar out; pure
     * @unit   dB, positive; the more, the better the match
     * @valid  every match; limited to 200 dB for a perfect load
     * @error  rounding only
     * @source −20 log |Γ|, any line textbook
     */
    public double returnLossDb() {
        return -20 * Math.log10(Math.max(LEAST_REFLECTION, reflection));
    }

    /**
     * What the mismatch costs, the same on transmit and on receive as long as the radio is near the line's impedance.
     *
     * @shape  scalar out; pure
     * @unit   dB, positive weakens
     * @valid  every match; a transmitter that folds back its power into a mismatch loses more, so on transmit it is a lower
     *     bound
     * @error  rounding only
     * @source −10 log(1 − |Γ|²), any line textbook
     */
    public double mismatchLossDb() {
        return -10 * Math.log10(1 - reflection * reflection);
    }
}
