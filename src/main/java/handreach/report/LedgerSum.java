package handreach.report;

import handreach.budget.Ledger;
import handreach.budget.LineKey;
import handreach.budget.TwoWayLedger;
import handreach.uncertainty.Doubt;
import handreach.units.Decibels;
import handreach.units.Shares;
import java.util.Arrays;
import java.util.List;

/**
 * What the lines of a ledger add up to, both ways.
 *
 * @param what which sum
 * @param ledger the lines
 */
record LedgerSum(What what, TwoWayLedger ledger) implements LedgerRow {
    /** The sums below the lines, in order. */
    public enum What {
        MARGIN(
                "margin at the median place",
                "sum before rounding",
                "The sum of all lines: how much more arrives at the median place than is needed. Half of like places do"
                        + " better, half worse."),
        HELD_BACK(
                "held back for the wanted odds",
                "spread between places",
                "Put aside because places differ: so much is needed at the median place for the wanted share of places"
                        + " to have copy."),
        LEFT("margin left", "", "What is left after that; at 0 or more the wanted odds are met."),
        ODDS("odds of copy", "", "Share of places like this one at which copy is to be expected.");

        private final String label;
        private final String source;
        private final String meaning;

        What(String label, String source, String meaning) {
            this.label = label;
            this.source = source;
            this.meaning = meaning;
        }
    }

    static List<LedgerSum> of(TwoWayLedger ledger) {
        return Arrays.stream(What.values())
                .map(what -> new LedgerSum(what, ledger))
                .toList();
    }

    /** Whether it is a result and not a step on the way to one. */
    boolean isResult() {
        return what != What.HELD_BACK;
    }

    @Override
    public String label() {
        return what.label;
    }

    @Override
    public String there() {
        return amount(ledger.there());
    }

    @Override
    public String back() {
        return amount(ledger.back());
    }

    private String amount(Ledger way) {
        return switch (what) {
            case MARGIN -> Decibels.signed(way.marginDb(), 1);
            case HELD_BACK -> Decibels.signed(-way.locationMarginDb(), 1);
            case LEFT -> Decibels.signed(way.marginAtOddsDb(), 1);
            case ODDS -> Shares.odds(way.odds(), way.wantedOdds());
        };
    }

    @Override
    public String commonDoubt() {
        if (what != What.MARGIN) return "";
        return both(
                doubt(ledger.there().doubt().commonDb()),
                doubt(ledger.back().doubt().commonDb()));
    }

    @Override
    public String spread() {
        if (what != What.MARGIN) return "";
        return both(
                doubt(ledger.there().doubt().spreadDb()),
                doubt(ledger.back().doubt().spreadDb()));
    }

    private static String both(String there, String back) {
        return there.equals(back) ? there : there + "\nback: " + back;
    }

    @Override
    public String source() {
        boolean isCalibrated = ledger.there().lines().stream().anyMatch(line -> line.key() == LineKey.SITE);
        return what == What.MARGIN && isCalibrated
                ? what.source + "; doubts: what the walks left of them"
                : what.source;
    }

    @Override
    public String title() {
        return Sentences.begun(label()) + ": " + there() + " there, " + back() + " back";
    }

    @Override
    public String meaning() {
        if (what != What.MARGIN) return what.meaning;
        String there = doubt(ledger.there().doubt());
        String back = doubt(ledger.back().doubt());
        String doubt = there.equals(back) ? there : there + "; back: " + back;
        return what.meaning + (doubt.isEmpty() ? "" : "  Doubt, dB: " + doubt + ".");
    }

    /** One kind of doubt, empty where there is none. */
    static String doubt(double db) {
        return db == 0 ? "" : Decibels.number(db, 1);
    }

    /** Both kinds apart: what is common to all places, and the spread between them. */
    static String doubt(Doubt doubt) {
        String common = doubt.commonDb() == 0 ? "" : doubt(doubt.commonDb()) + " common";
        String spread = doubt.spreadDb() == 0 ? "" : doubt(doubt.spreadDb()) + " spread";
        return common.isEmpty() || spread.isEmpty() ? common + spread : common + ", " + spread;
    }
}
