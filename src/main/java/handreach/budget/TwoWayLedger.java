package handreach.budget;

import handreach.units.Decibels;

/**
 * Both directions of a link; the weaker one of those asked for rules.
 *
 * @param there from the first end to the second
 * @param back from the second end to the first
 * @param needed which of them must work
 */
public record TwoWayLedger(Ledger there, Ledger back, Ways needed) {
    private static final int SHOWN_DECIMALS = 1;
    /** Sums of the same lines in another order differ by less. */
    private static final double LAST_DIGITS_DB = 1e-9;

    /** Where both must work. */
    public TwoWayLedger(Ledger there, Ledger back) {
        this(there, back, Ways.BOTH);
    }

    /** The direction with the smaller margin, or the one asked for; there, when equal. */
    public Ledger weaker() {
        return isBackWeaker() ? back : there;
    }

    /** Whether {@link #weaker} is the way back. */
    public boolean isBackWeaker() {
        if (needed != Ways.BOTH) return needed == Ways.BACK;
        return back.marginDb() < there.marginDb() - LAST_DIGITS_DB;
    }

    /** Whether neither way is told to be the weaker: both margins are the same in the tenths of a decibel in which they are shown. */
    public boolean areAlike() {
        return Decibels.signed(there.marginDb(), SHOWN_DECIMALS)
                .equals(Decibels.signed(back.marginDb(), SHOWN_DECIMALS));
    }

    public double marginDb() {
        return weaker().marginDb();
    }

    /** Odds of copy as asked; both ways, those of the way with the lower odds, which a wide spread can make the one with the larger margin. */
    public double odds() {
        return lessLikely().odds();
    }

    /** The direction with the lower odds; the weaker, when equal. */
    public Ledger lessLikely() {
        if (needed != Ways.BOTH) return weaker();
        double thereOdds = there.odds();
        double backOdds = back.odds();
        if (thereOdds == backOdds) return weaker();
        return backOdds < thereOdds ? back : there;
    }

    /** What the way that lacks most has over the wanted odds, dB; below 0 it lacks that. */
    public double marginAtOddsDb() {
        return needed.least(there.marginAtOddsDb(), back.marginAtOddsDb());
    }
}
