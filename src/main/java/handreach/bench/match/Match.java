package handreach.bench.match;

import handreach.uncertainty.Interval;
import org.apache.commons.math3.complex.Complex;

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
     * From an impedance on a line of real impedance.
     *
     * @shape  scalars in, one match out; pure
     * @unit   ohms
     * @valid  resistance not negative, line impedance above 0; outside: IllegalArgumentException
     * @error  rounding only; total reflection is taken as {@link #MOST_REFLECTION}
     * @source Γ = (Z − Z0)/(Z + Z0), any line textbook
     */
    public static Match ofImpedance(Complex ohm, double lineOhm) {
        if (!(ohm.getReal() >= 0) || !(lineOhm > 0))
            throw new IllegalArgumentException("impedance " + ohm + " on " + lineOhm + " ohm");
        double magnitude = ohm.subtract(lineOhm).divide(ohm.add(lineOhm)).abs();
        return new Match(Math.min(MOST_REFLECTION, magnitude));
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

    /**
     * The match that a meter sees at the far end of a line: better than that of the antenna, for no good reason.
     *
     * @shape  scalar in, one match out; pure
     * @unit   matched loss of the line dB, positive
     * @valid  loss from 0 dB up; outside: IllegalArgumentException
     * @error  rounding only, for a line whose own impedance is right
     * @source |Γ| falls by twice the matched loss, reference handbooks (from memory)
     */
    public Match throughLine(double matchedLossDb) {
        requireLoss(matchedLossDb);
        return new Match(reflection * Math.pow(10, -2 * matchedLossDb / 20));
    }

    /**
     * The match at the antenna when the meter sat at the near end of a line.
     *
     * @shape  scalar in, one match out; pure
     * @unit   matched loss of the line dB, positive
     * @valid  as {@link #throughLine}; a result of total reflection or above is taken as {@link #MOST_REFLECTION}: the line's
     *     loss was overstated
     * @error  the doubt of the line's loss enters twice
     * @source inverse of {@link #throughLine}
     */
    public Match behindLine(double matchedLossDb) {
        requireLoss(matchedLossDb);
        return new Match(Math.min(MOST_REFLECTION, reflection * Math.pow(10, 2 * matchedLossDb / 20)));
    }

    /**
     * What a line ending in this load costs altogether, more than matched when waves run both ways; mismatch at its input is
     * not in it.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   dB, positive weakens
     * @valid  loss from 0 dB up; outside: IllegalArgumentException
     * @error  rounding only
     * @source 10 log[(a² − ρ²)/(a(1 − ρ²))], a = 10^(A/10), reference handbooks (from memory)
     */
    public double lineLossDb(double matchedLossDb) {
        requireLoss(matchedLossDb);
        double a = Math.pow(10, matchedLossDb / 10);
        double square = reflection * reflection;
        return 10 * Math.log10((a * a - square) / (a * (1 - square)));
    }

    /**
     * How far a level may be off, either way, when this load meets a source that is not matched either and the phase between
     * the two is unknown.
     *
     * @shape  one match in, one interval out; pure
     * @unit   dB, positive reads too high
     * @valid  every two matches
     * @error  rounding only
     * @source ±20 log(1 ± |Γ||Γ'|), any measurement text; U-shaped in the GUM's terms
     */
    public Interval ripple(Match source) {
        double product = reflection * source.reflection;
        return new Interval(20 * Math.log10(1 - product), 20 * Math.log10(1 + product));
    }

    private static void requireLoss(double matchedLossDb) {
        if (!(matchedLossDb >= 0) || Double.isInfinite(matchedLossDb))
            throw new IllegalArgumentException("line loss " + matchedLossDb);
    }
}
