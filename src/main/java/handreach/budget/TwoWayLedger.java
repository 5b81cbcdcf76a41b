package handreach.budget;

/**
 * Both directions of a link; the weaker one rules.
 *
 * @param there from the first end to the second
 * @param back from the second end to the first
 */
public record TwoWayLedger(Ledger there, Ledger back) {
    /** The direction with the smaller margin; there, when equal. */
    public Ledger weaker() {
        return back.marginDb() < there.marginDb() ? back : there;
    }

    public double marginDb() {
        return weaker().marginDb();
    }

    public double odds() {
        return Math.min(there.odds(), back.odds());
    }
}
