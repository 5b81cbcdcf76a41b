package handreach.report;

/** A row of a ledger both ways: a line, or a sum below the lines. */
public sealed interface LedgerRow permits LedgerPair, LedgerSum {
    /** What it is; both names where the two ways name it differently. */
    String label();

    /** Amount on the way there. */
    String there();

    /** Amount on the way back. */
    String back();

    /** Doubt that is the same at all places, dB; empty where there is none. */
    String commonDoubt();

    /** Spread between places, dB; empty where there is none. */
    String spread();

    /** Who says so. */
    String source();

    /** Label and amounts in one line. */
    String title();

    /** What it means, why it is so, how sure it is and who says so. */
    String meaning();
}
