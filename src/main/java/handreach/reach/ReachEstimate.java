package handreach.reach;

import handreach.uncertainty.Interval;

/**
 * A figure of reach with what the doubt common to all places makes of it.
 *
 * @param value m, or a share from 0 to 1
 * @param interval95 95 % interval in the same unit: the margin shifted by 1.96 standard uncertainties either way
 */
public record ReachEstimate(double value, Interval interval95) {}
