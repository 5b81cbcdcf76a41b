package handreach.uncertainty;

/**
 * A closed interval.
 *
 * @param low lower end
 * @param high upper end, not below the lower
 */
public record Interval(double low, double high) {
    /** Half-width of a 95 % interval in standard uncertainties, normal law. */
    public static final double COVERAGE_95 = 1.96;

    public Interval {
        if (!(low <= high)) throw new IllegalArgumentException("interval from " + low + " to " + high);
    }

    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    public double width() {
        return high - low;
    }
}
