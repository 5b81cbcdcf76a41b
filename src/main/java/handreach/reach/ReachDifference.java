package handreach.reach;

import handreach.uncertainty.Interval;

/**
 * What one link adds to the median reach of the control.
 *
 * @param control name of the control
 * @param medianM median reach of the link less that of the control, m
 * @param interval95M 95 % interval from the doubt of the difference alone; what both share has cancelled
 */
public record ReachDifference(String control, double medianM, Interval interval95M) {
    /** Whether the two can be told apart: the interval leaves out zero. */
    public boolean isToldApart() {
        return interval95M.low() > 0 || interval95M.high() < 0;
    }
}
