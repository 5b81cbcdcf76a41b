package handreach.budget;

import handreach.uncertainty.Doubt;

/**
 * One line of a ledger.
 *
 * @param key what it is about
 * @param end whose antenna it is about
 * @param label what it is, for people, without the end
 * @param valueDb decibels, positive strengthens; dBm in the line of the power
 * @param doubt of the line
 * @param source document, measurement, or whose suggestion
 * @param note why it is what it is; empty when there is nothing to say
 */
public record LedgerLine(
        LineKey key, LineEnd end, String label, double valueDb, Doubt doubt, String source, String note) {
    public LedgerLine {
        if (!Double.isFinite(valueDb)) throw new IllegalArgumentException(key + " is not a finite number");
    }

    /** A line that stands once in a ledger. */
    public LedgerLine(LineKey key, String label, double valueDb, Doubt doubt, String source, String note) {
        this(key, LineEnd.NEITHER, label, valueDb, doubt, source, note);
    }

    /** The same as a line of one end. */
    LedgerLine at(LineEnd one) {
        return new LedgerLine(key, one, label, valueDb, doubt, source, note);
    }

    /** Stable word for the line: {@code path}, {@code tx-antenna}, {@code rx-antenna}. */
    public String word() {
        return end.mark() + key.word();
    }

    /** The label with the end as this way sees it: {@code sender: mismatch}. */
    public String wayLabel() {
        return end.label() + label;
    }
}
