package handreach.uncertainty;

/**
 * A measured value with what is known about its doubt.
 *
 * @param value the best value
 * @param standardUncertainty one standard uncertainty, in the unit of the value, not negative
 * @param degreesOfFreedom how well that uncertainty is known; above zero, infinity when it is known exactly
 */
public record Estimate(double value, double standardUncertainty, double degreesOfFreedom) {
    public Estimate {
        if (!Double.isFinite(value)) throw new IllegalArgumentException("value " + value);
        if (!(standardUncertainty >= 0) || Double.isInfinite(standardUncertainty))
            throw new IllegalArgumentException("standard uncertainty " + standardUncertainty);
        if (!(degreesOfFreedom > 0)) throw new IllegalArgumentException("degrees of freedom " + degreesOfFreedom);
    }

    /**
     * The interval that covers the true value 19 times out of 20.
     *
     * @shape  one interval out; pure
     * @unit   that of the value
     * @valid  always; without uncertainty the interval is the value itself
     * @error  that of {@link StudentT#quantile}
     * @source JCGM 100:2008 (GUM), G.3.2: expanded uncertainty U = t(0.975, ν) u
     */
    public Interval interval95() {
        double half = expandedUncertainty95();
        return new Interval(value - half, value + half);
    }

    /**
     * One of several intervals that together cover all their true values 19 times out of 20.
     *
     * @shape  count in, one interval out; pure
     * @unit   that of the value
     * @valid  one interval and more, which then is {@link #interval95}; fewer: IllegalArgumentException
     * @error  that of {@link StudentT#quantile}; wider than need be where the values hang together
     * @source Bonferroni's inequality, Dunn, J. American Statistical Association 56 (1961) 52: t(1 − 0.025/m, ν) u
     */
    public Interval interval95Among(int count) {
        if (count < 1) throw new IllegalArgumentException(count + " intervals");
        if (standardUncertainty == 0) return new Interval(value, value);
        double half = StudentT.quantile(1 - 0.025 / count, degreesOfFreedom) * standardUncertainty;
        return new Interval(value - half, value + half);
    }

    /**
     * Half the width of {@link #interval95}.
     *
     * @shape  scalar out; pure
     * @unit   that of the value
     * @valid  always
     * @error  as {@link #interval95}
     * @source as {@link #interval95}
     */
    public double expandedUncertainty95() {
        return standardUncertainty == 0 ? 0 : StudentT.coverageFactor95(degreesOfFreedom) * standardUncertainty;
    }

    /**
     * Odds that a value at least this far from zero comes by chance alone.
     *
     * @shape  scalar out; pure
     * @unit   0 to 1
     * @valid  always; without uncertainty 0, or 1 when the value is zero too
     * @error  that of {@link StudentT#twoSidedP}
     * @source two-sided t test
     */
    public double twoSidedP() {
        if (standardUncertainty == 0) return value == 0 ? 1 : 0;
        return StudentT.twoSidedP(value / standardUncertainty, degreesOfFreedom);
    }

    /**
     * The standard uncertainty of a normal value that has the same {@link #interval95}: what goes into a sum whose odds are read off a normal
     * distribution, so that an uncertainty known from few readings weighs there as it does in its own interval.
     *
     * @shape  scalar out; pure
     * @unit   that of the value
     * @valid  always; the standard uncertainty itself where the degrees of freedom are infinite
     * @error  exact at 95 %; at other odds the tails of t are the longer, the centre the narrower
     * @source JCGM 100:2008 (GUM), G.3.2, solved for u: t(0.975, ν) u / 1.96
     */
    public double normalUncertainty() {
        return standardUncertainty * normalFactor();
    }

    /**
     * By how much {@link #normalUncertainty} is wider than the standard uncertainty.
     *
     * @shape  scalar out; pure
     * @unit   ratio, 1 and more
     * @valid  always
     * @error  as {@link StudentT#quantile}
     * @source JCGM 100:2008 (GUM), table G.2: 2.571/1.960 = 1.31 with 5 degrees of freedom, 4.303/1.960 = 2.20 with 2
     */
    public double normalFactor() {
        return Double.isInfinite(degreesOfFreedom)
                ? 1
                : StudentT.coverageFactor95(degreesOfFreedom) / StudentT.coverageFactor95(Double.POSITIVE_INFINITY);
    }
}
