package handreach.report;

import handreach.budget.Ledger;
import handreach.budget.LedgerLine;
import handreach.budget.TwoWayLedger;
import handreach.uncertainty.Doubt;
import java.util.ArrayList;
import java.util.List;

/** Both directions of a link as one table: there and back beside each other, line by line. */
public final class LedgerSheet {
    private static final String NOT_THERE = "–";

    private LedgerSheet() {}

    /** The table of a link between two named ends. */
    public static Sheet of(TwoWayLedger ledger) {
        List<Sheet.Row> rows = new ArrayList<>();
        List<LedgerLine> back = new ArrayList<>(ledger.back().lines());
        for (LedgerLine line : ledger.there().lines()) {
            LedgerLine other = taken(back, line);
            rows.add(row(
                    line, Axis.signed(line.valueDb(), 1), other == null ? NOT_THERE : Axis.signed(other.valueDb(), 1)));
        }
        for (LedgerLine line : back) rows.add(row(line, NOT_THERE, Axis.signed(line.valueDb(), 1)));
        rows.addAll(sums(ledger.there(), ledger.back()));
        String weaker = ledger.weaker().equals(ledger.there()) ? "there" : "back";
        String caption = "There: from " + ledger.there().from() + " to "
                + ledger.there().to() + ". Back: the other way. The way " + weaker
                + " is the weaker and rules. Positive strengthens.";
        return new Sheet(
                caption,
                List.of(
                        Sheet.Column.words("line"),
                        Sheet.Column.number("there, dB"),
                        Sheet.Column.number("back, dB"),
                        Sheet.Column.number("doubt, dB"),
                        Sheet.Column.words("source")),
                rows);
    }

    /** The line of the other direction that says the same thing about the other end. */
    private static LedgerLine taken(List<LedgerLine> others, LedgerLine line) {
        for (LedgerLine other : others) {
            if (!other.key().equals(line.key()) || !sameWords(other, line)) continue;
            others.remove(other);
            return other;
        }
        for (LedgerLine other : others) {
            if (!other.key().equals(line.key())) continue;
            others.remove(other);
            return other;
        }
        return null;
    }

    private static boolean sameWords(LedgerLine a, LedgerLine b) {
        return a.label().equals(b.label());
    }

    private static Sheet.Row row(LedgerLine line, String there, String back) {
        String words = line.note().isBlank() ? line.label() : line.label() + " (" + line.note() + ")";
        return Sheet.Row.of(words, there, back, doubt(line.doubt()), line.source());
    }

    private static List<Sheet.Row> sums(Ledger there, Ledger back) {
        return List.of(
                Sheet.Row.sum(
                        "margin at the median place",
                        Axis.signed(there.marginDb(), 1),
                        Axis.signed(back.marginDb(), 1),
                        doubt(there.doubt()),
                        "sum of the lines"),
                Sheet.Row.of(
                        "held back for the wanted odds",
                        Axis.signed(-there.locationMarginDb(), 1),
                        Axis.signed(-back.locationMarginDb(), 1),
                        "",
                        "spread between places"),
                Sheet.Row.sum(
                        "margin left",
                        Axis.signed(there.marginAtOddsDb(), 1),
                        Axis.signed(back.marginAtOddsDb(), 1),
                        "",
                        ""),
                Sheet.Row.sum("odds of copy", percent(there.odds()), percent(back.odds()), "", ""));
    }

    private static String percent(double share) {
        return Axis.number(100 * share, 0) + " %";
    }

    /** Both kinds apart: what is common to all places, and the spread between them. */
    private static String doubt(Doubt doubt) {
        if (doubt.commonDb() == 0 && doubt.spreadDb() == 0) return "";
        if (doubt.spreadDb() == 0) return Axis.number(doubt.commonDb(), 1) + " common";
        if (doubt.commonDb() == 0) return Axis.number(doubt.spreadDb(), 1) + " spread";
        return Axis.number(doubt.commonDb(), 1) + " common, " + Axis.number(doubt.spreadDb(), 1) + " spread";
    }
}
