package handreach.bench;

import handreach.uncertainty.LinearTrend;

/**
 * Whether levels moved while the session went on.
 *
 * @param basis whose levels show it
 * @param trend level over the order of readings
 * @param p odds of such a slope by chance alone
 * @param significant whether it is taken as real; the bar is high, so that scatter alone seldom passes it
 */
public record ControlDrift(Basis basis, LinearTrend trend, double p, boolean significant) {
    /** What the drift is seen from. */
    public enum Basis {
        /** The readings of the control. */
        CONTROL,
        /** What all antennas of a turn have in common, where antennas were read in turns. */
        TURNS
    }

    /** Change per reading, in the order of the file. */
    public double dbPerReading() {
        return trend.slope().value();
    }
}
