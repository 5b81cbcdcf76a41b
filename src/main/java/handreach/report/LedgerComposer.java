package handreach.report;

import handreach.budget.LineKey;
import handreach.budget.TwoWayLedger;
import handreach.budget.Ways;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Table;
import handreach.units.Decibels;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The ledger of a link for every face: its verdict, both ways beside each other line by line, and notes to the lines. */
public final class LedgerComposer {
    private LedgerComposer() {}

    /** Margin, odds, and which way rules. */
    public static String verdict(TwoWayLedger ledger) {
        return "Margin " + Decibels.signed(ledger.marginDb(), 1) + " dB, odds of copy " + odds(ledger) + ": "
                + which(ledger);
    }

    private static String which(TwoWayLedger ledger) {
        if (ledger.needed() != Ways.BOTH)
            return "the way " + weaker(ledger) + " alone is asked for; the way "
                    + (ledger.needed() == Ways.THERE ? "back" : "there") + " has "
                    + Shares.odds((ledger.needed() == Ways.THERE ? ledger.back() : ledger.there()).odds()) + ".";
        return isEven(ledger) ? "both ways are alike." : "the way " + weaker(ledger) + " is the weaker and rules.";
    }

    private static String odds(TwoWayLedger ledger) {
        return Shares.odds(ledger.odds(), ledger.lessLikely().wantedOdds());
    }

    private static boolean isEven(TwoWayLedger ledger) {
        return ledger.areAlike();
    }

    private static String weaker(TwoWayLedger ledger) {
        return ledger.isBackWeaker() ? "back" : "there";
    }

    /** Verdict, table and notes. */
    static List<Block> blocks(TwoWayLedger ledger) {
        List<Block> blocks = new ArrayList<>(List.of(Paragraph.of(verdict(ledger)), table(ledger)));
        List<String> notes = notes(ledger);
        if (!notes.isEmpty()) blocks.add(new Bullets(notes));
        return blocks;
    }

    /** Both ways line by line, sums last. */
    public static Table<LedgerRow> table(TwoWayLedger ledger) {
        List<LedgerRow> rows = new ArrayList<>(LedgerPair.of(ledger));
        rows.addAll(LedgerSum.of(ledger));
        String caption = "First end: " + ledger.there().from() + ". Other end: "
                + ledger.there().to()
                + ". There is from the first to the other. Doubt is common to all places, spread is between places.";
        List<Column<LedgerRow>> columns = List.of(
                Column.words("dB, positive strengthens", LedgerRow::label),
                Column.number(head(ledger, "there"), LedgerRow::there),
                Column.number(head(ledger, "back"), LedgerRow::back),
                Column.number("doubt", LedgerRow::commonDoubt),
                Column.number("spread", LedgerRow::spread),
                Column.words("source", LedgerRow::source));
        return Table.of(caption, rows, columns).summing(row -> row instanceof LedgerSum sum && sum.isResult());
    }

    /** Doubt that the ledger has of its model, common to all places, dB; the walks' own where they have taught. */
    static double modelDoubtDb(TwoWayLedger ledger) {
        return ledger.there().lines().stream()
                .filter(line -> line.key() == LineKey.PATH)
                .mapToDouble(line -> line.doubt().commonDb())
                .max()
                .orElse(0);
    }

    private static String head(TwoWayLedger ledger, String way) {
        if (ledger.needed() != Ways.BOTH) return weaker(ledger).equals(way) ? way + ", asked for" : way;
        return isEven(ledger) || !weaker(ledger).equals(way) ? way : way + ", weaker";
    }

    /** Why lines are what they are, one sentence each; lines of which the same is to be said share it. */
    static List<String> notes(TwoWayLedger ledger) {
        Map<String, Set<String>> lines = new LinkedHashMap<>();
        for (LedgerPair pair : LedgerPair.of(ledger)) {
            boolean isOne = pair.first().note().equals(pair.second().note());
            String way = isOne ? "" : "there, ";
            note(lines, pair.first().note(), way + pair.firstLabel());
            if (!isOne) note(lines, pair.second().note(), "back, " + pair.secondLabel());
        }
        List<String> notes = new ArrayList<>();
        lines.forEach((note, labels) ->
                notes.add(Sentences.begun(String.join("; ", labels)) + ": " + note + (note.endsWith(".") ? "" : ".")));
        return notes;
    }

    private static void note(Map<String, Set<String>> lines, String note, String label) {
        if (!note.isBlank())
            lines.computeIfAbsent(note, same -> new LinkedHashSet<>()).add(label);
    }
}
