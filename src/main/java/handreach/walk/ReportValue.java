package handreach.walk;

import handreach.uncertainty.Odds;

/** What a report is worth to somebody who must decide: sums of the normal law, in decibels of margin. */
public final class ReportValue {
    private static final double ROOT_2PI = Math.sqrt(2 * Math.PI);
    /** Noise of a report that says nothing, in squares of the spread; keeps it finite. */
    private static final double MOST_NOISE = 1e12;
    /** Beyond so many standard deviations an outcome is certain. */
    private static final double CERTAIN = 7.5;

    private ReportValue() {}

    /**
     * Mean shortfall of a standard normal beyond d: φ(d) − d (1 − Φ(d)).
     *
     * @shape  scalar in, scalar out; pure
     * @unit   standard deviations
     * @valid  every finite d
     * @error  below 1e-12
     * @source unit normal linear loss integral, Raiffa and Schlaifer, Applied Statistical Decision Theory (1961), 5.4 (from memory)
     */
    public static double unitLoss(double d) {
        double density = Math.exp(-d * d / 2) / ROOT_2PI;
        return Math.max(0, density - d * Odds.ofMargin(-d, 1));
    }

    /**
     * Expected value of learning, for a decision between two ways whose difference is linear in a margin: taking the margin at zero
     * as the point where both are equally good, what is lost on average by deciding now instead of after the reports.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   margin as believed now, and the standard deviation by which the reports are expected to move it, dB; result dB
     * @valid  every finite margin; movement from 0 up, 0 teaches nothing; outside: IllegalArgumentException
     * @error  exact for normal beliefs and normal reports
     * @source s L(|m|/s): expected value of sample information, two-action problem with linear terminal utility, Raiffa and
     *     Schlaifer (1961), 5.5 (from memory)
     */
    public static double expectedDb(double marginDb, double movementDb) {
        if (!(movementDb >= 0)) throw new IllegalArgumentException("movement " + movementDb + " dB");
        if (movementDb == 0) return 0;
        return movementDb * unitLoss(Math.abs(marginDb) / movementDb);
    }

    /**
     * Chance that the reports turn the decision round: that the margin believed afterwards has the other sign.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   as {@link #expectedDb}; result 0 to 1
     * @valid  as {@link #expectedDb}
     * @error  exact for normal beliefs and normal reports
     * @source Φ(−|m|/s): the mean believed afterwards is normal about the one believed now
     */
    public static double chanceOfChange(double marginDb, double movementDb) {
        if (!(movementDb >= 0)) throw new IllegalArgumentException("movement " + movementDb + " dB");
        return movementDb == 0 ? 0 : Odds.ofMargin(-Math.abs(marginDb), movementDb);
    }

    /**
     * Variance of the level whose report would be expected to move the shift as far as one copy or no copy, spread between places
     * included.
     *
     * <p>With v² = spread² + doubt² and z = margin / v, an outcome of odds Φ(z) moves the mean of the shift with the variance
     * doubt⁴ φ(z)² / (v² Φ(z) Φ(−z)); a level of variance N moves it with doubt⁴ / (doubt² + N). Equal for
     * N = v² Φ(z) Φ(−z) / φ(z)² − doubt². Where copy is certain either way N grows without bound: such a report teaches nothing.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   margin, spread and doubt of the shift in dB; result dB²
     * @valid  spread above 0, doubt from 0; outside: IllegalArgumentException. Never above 10¹² spread²
     * @error  exact in the variance of one report. Its movement has two values and is not normal: for a margin at stake of zero the
     *     value so computed is 0.80 of the true one, and it is too high where one outcome cannot turn the decision
     * @source mean of a normal law after a probit outcome: Rasmussen and Williams, Gaussian Processes for Machine Learning (2006),
     *     3.9 (from memory); law of total variance
     */
    public static double copyVarianceDb2(double marginDb, double spreadDb, double doubtDb) {
        if (!(spreadDb > 0) || !(doubtDb >= 0))
            throw new IllegalArgumentException("spread " + spreadDb + " dB, doubt " + doubtDb + " dB");
        double most = MOST_NOISE * spreadDb * spreadDb;
        double v2 = spreadDb * spreadDb + doubtDb * doubtDb;
        double z = marginDb / Math.sqrt(v2);
        if (Math.abs(z) > CERTAIN) return most;
        double density2 = Math.exp(-z * z) / (2 * Math.PI);
        return Math.min(most, v2 * Odds.ofMargin(z, 1) * Odds.ofMargin(-z, 1) / density2 - doubtDb * doubtDb);
    }
}
