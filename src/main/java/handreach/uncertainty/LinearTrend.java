package handreach.uncertainty;

import java.util.List;

/**
 * A straight line through readings: does something drift.
 *
 * @param slope change per unit of x, with its doubt
 * @param meanX mean of x
 * @param level value of the line at mean x, which is the mean of the readings
 * @param residual scatter of single readings about the line
 */
public record LinearTrend(Estimate slope, double meanX, double level, double residual) {
    /**
     * The line of least squares.
     *
     * @shape  two lists of the same n in, one line out; O(n), pure
     * @unit   slope in unit of y per unit of x
     * @valid  at least three points, not all at one x; outside: IllegalArgumentException
     * @error  rounding only
     * @source ordinary least squares, any statistics text; JCGM 100:2008 (GUM) H.3
     */
    public static LinearTrend of(List<Double> x, List<Double> y) {
        int n = x.size();
        if (n != y.size() || n < 3) throw new IllegalArgumentException(n + " and " + y.size() + " points");
        double meanX = MeanDifference.mean(x);
        double meanY = MeanDifference.mean(y);
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < n; i++) {
            sxx += (x.get(i) - meanX) * (x.get(i) - meanX);
            sxy += (x.get(i) - meanX) * (y.get(i) - meanY);
        }
        if (!(sxx > 0)) throw new IllegalArgumentException("all points at one x");
        double slope = sxy / sxx;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double off = y.get(i) - meanY - slope * (x.get(i) - meanX);
            squares += off * off;
        }
        double residual = Math.sqrt(squares / (n - 2));
        return new LinearTrend(new Estimate(slope, residual / Math.sqrt(sxx), n - 2), meanX, meanY, residual);
    }
}
