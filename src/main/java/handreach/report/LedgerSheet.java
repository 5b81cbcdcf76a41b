package handreach.report;

import handreach.budget.Ledger;
import handreach.budget.LedgerLine;
import handreach.budget.TwoWayLedger;
import handreach.report.figure.Axis;
import handreach.report.page.Sheet;
import handreach.uncertainty.Doubt;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.List;

/** Both directions of a link as one table: there and back beside each other, line by line. */
public final class LedgerSheet {
    private static final String NOT_THERE = "–";

    private LedgerSheet() {}

    /** The table of a link between two named ends. */
    public static Sheet of(TwoWayLedger ledger) {
        List<Sheet.Row> rows = new ArrayList<>();
        for (LedgerPair pair : LedgerPair.of(ledger)) rows.add(row(pair));
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

    /** One line of either direction or of both; where the two differ in words, both are said. */
    private static Sheet.Row row(LedgerPair pair) {
        LedgerLine first = pair.first();
        LedgerLine second = pair.second();
        return Sheet.Row.of(
                both(words(first), words(second)),
                pair.there().map(line -> Axis.signed(line.valueDb(), 1)).orElse(NOT_THERE),
                pair.back().map(line -> Axis.signed(line.valueDb(), 1)).orElse(NOT_THERE),
                both(doubt(first.doubt()), doubt(second.doubt())),
                both(first.source(), second.source()));
    }

    private static String both(String there, String back) {
        if (there.equals(back)) return there;
        return (there.isBlank() ? NOT_THERE : there) + "\nback: " + (back.isBlank() ? NOT_THERE : back);
    }

    private static String words(LedgerLine line) {
        return line.note().isBlank() ? line.label() : line.label() + " (" + line.note() + ")";
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
                Sheet.Row.sum("odds of copy", Shares.odds(there.odds()), Shares.odds(back.odds()), "", ""));
    }

    /** Both kinds apart: what is common to all places, and the spread between them. */
    public static String doubt(Doubt doubt) {
        if (doubt.commonDb() == 0 && doubt.spreadDb() == 0) return "";
        if (doubt.spreadDb() == 0) return Axis.number(doubt.commonDb(), 1) + " common";
        if (doubt.commonDb() == 0) return Axis.number(doubt.spreadDb(), 1) + " spread";
        return Axis.number(doubt.commonDb(), 1) + " common, " + Axis.number(doubt.spreadDb(), 1) + " spread";
    }
}
