package handreach.budget;

import handreach.uncertainty.Doubt;

/**
 * One line of a ledger.
 *
 * @param key stable word for the line
 * @param label what it is, for people
 * @param valueDb decibels, positive strengthens; dBm in the line of the power
 * @param doubt of the line
 * @param source document, measurement, or whose suggestion
 * @param note why it is what it is; empty when there is nothing to say
 */
public record LedgerLine(String key, String label, double valueDb, Doubt doubt, String source, String note) {
    public LedgerLine {
        if (!Double.isFinite(valueDb)) throw new IllegalArgumentException(key + " is not a finite number");
    }
}
