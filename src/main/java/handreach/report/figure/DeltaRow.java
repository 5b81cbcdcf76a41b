package handreach.report.figure;

import handreach.uncertainty.Interval;

/**
 * One antenna's difference from the control in one mounting.
 *
 * @param group mounting
 * @param label antenna
 * @param deltaDb difference, dB, positive is stronger than the control
 * @param interval 95 % interval, dB, holds the difference
 * @param isToldApart whether it can be told from the control
 * @param note a few words at the right, such as the number of trials
 */
public record DeltaRow(
        String group, String label, double deltaDb, Interval interval, boolean isToldApart, String note) {
    public DeltaRow {
        if (!interval.contains(deltaDb))
            throw new IllegalArgumentException(label + ": " + deltaDb + " dB lies outside its interval");
    }
}
