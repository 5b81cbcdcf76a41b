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

    /** Odds of copy both ways: those of the way with the lower odds, which a wide spread can make the one with the larger margin. */
    public double odds() {
        return lessLikely().odds();
    }

    /** The direction with the lower odds; the weaker, when equal. */
    public Ledger lessLikely() {
        double thereOdds = there.odds();
        double backOdds = back.odds();
        if (thereOdds == backOdds) return weaker();
        return backOdds < thereOdds ? back : there;
    }
}
