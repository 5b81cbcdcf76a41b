package handreach.uncertainty;

import java.util.List;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.apache.commons.math3.stat.descriptive.moment.Variance;

/** Mean of one set of readings minus mean of another, with the scatter of the readings as doubt (type A). */
public final class MeanDifference {
    private MeanDifference() {}

    /**
     * Difference of readings taken in pairs.
     *
     * @shape  two lists of the same n in, one estimate out; O(n), pure
     * @unit   that of the readings, first minus second
     * @valid  at least two pairs, every reading finite; outside: IllegalArgumentException
     * @error  rounding only, below 1e-12 relative to the readings
     * @source JCGM 100:2008 (GUM), 4.2.3 applied to the differences; paired t test
     */
    public static Estimate paired(List<Double> first, List<Double> second) {
        if (first.size() != second.size() || first.size() < 2)
            throw new IllegalArgumentException(first.size() + " readings against " + second.size() + " in pairs");
        double[] difference = new double[first.size()];
        for (int i = 0; i < difference.length; i++) difference[i] = first.get(i) - second.get(i);
        double mean = new Mean().evaluate(difference);
        double u = Math.sqrt(new Variance().evaluate(difference, mean) / difference.length);
        return new Estimate(mean, u, difference.length - 1);
    }

    /**
     * Difference of two independent sets with scatters of their own.
     *
     * @shape  lists of n and m in, one estimate out; O(n + m), pure
     * @unit   that of the readings, first minus second
     * @valid  at least two readings each, every one finite; outside: IllegalArgumentException
     * @error  rounding only, below 1e-12 relative to the readings
     * @source Welch, Biometrika 34 (1947) 28; degrees of freedom as JCGM 100:2008 (GUM) G.4.1, not cut to a whole number
     */
    public static Estimate welch(List<Double> first, List<Double> second) {
        if (first.size() < 2 || second.size() < 2)
            throw new IllegalArgumentException(first.size() + " readings against " + second.size());
        double squareA = squareOfMean(first);
        double squareB = squareOfMean(second);
        double square = squareA + squareB;
        double shareA = square == 0 ? 0.5 : squareA / square;
        double inverse = shareA * shareA / (first.size() - 1) + (1 - shareA) * (1 - shareA) / (second.size() - 1);
        return new Estimate(mean(first) - mean(second), Math.sqrt(square), 1 / inverse);
    }

    /**
     * Arithmetic mean.
     *
     * @shape  n values in, scalar out; O(n), pure
     * @unit   that of the values
     * @valid  at least one value; none: IllegalArgumentException
     * @error  rounding only
     * @source JCGM 100:2008 (GUM), 4.2.1
     */
    public static double mean(List<Double> values) {
        if (values.isEmpty()) throw new IllegalArgumentException("the mean of nothing");
        return new Mean().evaluate(primitive(values));
    }

    /**
     * Standard deviation of single values.
     *
     * @shape  n values in, scalar out; O(n), pure
     * @unit   that of the values
     * @valid  at least two values; fewer: IllegalArgumentException
     * @error  rounding only; as an estimate known to 1/√(2(n − 1)) of its value
     * @source JCGM 100:2008 (GUM), 4.2.2, n − 1 in the denominator
     */
    public static double standardDeviation(List<Double> values) {
        if (values.size() < 2) throw new IllegalArgumentException("the scatter of " + values.size() + " values");
        return Math.sqrt(new Variance().evaluate(primitive(values)));
    }

    private static double squareOfMean(List<Double> values) {
        return new Variance().evaluate(primitive(values)) / values.size();
    }

    private static double[] primitive(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
