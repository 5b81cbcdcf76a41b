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
}
