package handreach.report;

import handreach.budget.Ledger;
import handreach.budget.LedgerLine;
import handreach.budget.TwoWayLedger;
import handreach.report.page.TextTable;
import handreach.units.Decibels;
import handreach.units.Shares;

/** Both directions of a link, line by line, for the terminal. */
final class LedgerText {
    private LedgerText() {}

    static String of(TwoWayLedger ledger) {
        String weaker = ledger.weaker().equals(ledger.there()) ? "there" : "back";
        return one("There: ", ledger.there()) + "\n" + one("Back: ", ledger.back())
                + "\nThe way " + weaker + " is the weaker and rules: margin " + Decibels.text(ledger.marginDb())
                + ", odds of copy " + Shares.odds(ledger.odds()) + ".\n";
    }

    private static String one(String title, Ledger ledger) {
        TextTable table = TextTable.of(
                title + ledger.from() + " to " + ledger.to(), "dB", "common \u00b1", "spread \u00b1", "source");
        for (LedgerLine line : ledger.lines())
            table.row(
                    line.note().isEmpty() ? line.label() : line.label() + " (" + line.note() + ")",
                    number(line.valueDb()),
                    blankIfZero(line.doubt().commonDb()),
                    blankIfZero(line.doubt().spreadDb()),
                    line.source());
        table.row(
                "margin at the median place",
                number(ledger.marginDb()),
                number(ledger.doubt().commonDb()),
                number(ledger.doubt().spreadDb()),
                "sum");
        table.row("location margin for the wanted odds", number(-ledger.locationMarginDb()), "", "", "spread");
        table.row("margin left", number(ledger.marginAtOddsDb()), "", "", "");
        return table.text();
    }

    private static String number(double value) {
        return Decibels.number(value, 1);
    }

    private static String blankIfZero(double value) {
        return value == 0 ? "" : number(value);
    }
}
