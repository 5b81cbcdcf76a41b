package handreach.budget;

import handreach.uncertainty.Doubt;
import handreach.uncertainty.Odds;
import java.util.List;

/**
 * One direction of a link, line by line. The lines add up to the margin at the median place; the location margin that the wanted
 * odds ask for is kept beside them.
 *
 * @param from name of the sending loadout
 * @param to name of the receiving loadout
 * @param lines signed lines, power first
 * @param locationMarginDb what the wanted odds take off, dB, positive for odds above one half
 * @param doubt of the margin
 */
public record Ledger(String from, String to, List<LedgerLine> lines, double locationMarginDb, Doubt doubt) {
    public Ledger {
        lines = List.copyOf(lines);
    }

    /** Margin at the median place: the sum of all lines, dB. */
    public double marginDb() {
        double sum = 0;
        for (LedgerLine line : lines) sum += line.valueDb();
        return sum;
    }

    /** Margin beyond the wanted odds, dB; at least 0 where the target is met. */
    public double marginAtOddsDb() {
        return marginDb() - locationMarginDb;
    }

    /** Odds of copy at a place like this one. */
    public double odds() {
        return Odds.ofMargin(marginDb(), doubt.spreadDb());
    }

    /** The odds that were asked for, 0 to 1: what the margin held back for them stands for. */
    public double wantedOdds() {
        return Odds.ofMargin(locationMarginDb, doubt.spreadDb());
    }

    /**
     * Sum of the lines about this, at whichever end.
     *
     * @shape  one key in, scalar out; pure
     * @unit   dB
     * @valid  every key; 0 when there is no such line
     * @error  none
     * @source addition
     */
    public double valueDb(LineKey key) {
        double sum = 0;
        for (LedgerLine line : lines) if (line.key() == key) sum += line.valueDb();
        return sum;
    }
}
