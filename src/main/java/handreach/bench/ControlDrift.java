package handreach.bench;

import handreach.uncertainty.LinearTrend;

/**
 * Whether the control itself moved while the session went on.
 *
 * @param trend level of the control over the order of readings
 * @param p odds of such a slope by chance alone
 * @param significant whether it is taken as real; the bar is high, so that scatter alone seldom passes it
 */
public record ControlDrift(LinearTrend trend, double p, boolean significant) {
    /** Change per reading, in the order of the file. */
    public double dbPerReading() {
        return trend.slope().value();
    }
}
