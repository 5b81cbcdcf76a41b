package handreach.uncertainty;

import org.apache.commons.math3.distribution.NormalDistribution;

/** Odds of copy from a margin and the spread between places, both in decibels (log-normal shadowing). */
public final class Odds {
    private static final NormalDistribution STANDARD = new NormalDistribution(null, 0, 1);

    private Odds() {}

    /**
     * Share of places, or of tries, at which a link with this median margin works.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   margin and spread dB; result 0 to 1
     * @valid  every finite margin, spread from 0 (a step) up
     * @error  below 1e-12
     * @source normal law of shadowing in decibels, Rec. ITU-R P.1546, location variability (log-normal)
     */
    public static double ofMargin(double marginDb, double spreadDb) {
        if (spreadDb <= 0) return marginDb >= 0 ? 1 : 0;
        return StandardNormal.below(marginDb / spreadDb);
    }

    /**
     * Margin that gives the wanted odds.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   odds 0 to 1, both ends left out; spread and result dB
     * @valid  odds strictly between 0 and 1; outside: IllegalArgumentException
     * @error  below 1e-9 dB
     * @source inverse of {@link #ofMargin}
     */
    public static double marginFor(double odds, double spreadDb) {
        if (!(odds > 0 && odds < 1)) throw new IllegalArgumentException("odds " + odds);
        return spreadDb * STANDARD.inverseCumulativeProbability(odds);
    }
}
