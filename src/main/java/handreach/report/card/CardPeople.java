package handreach.report.card;

import java.util.List;
import java.util.stream.Stream;

/**
 * Who is where, for a field card.
 *
 * @param from what bearings and distances start from
 * @param note what the odds mean; empty where there are none
 * @param rows those with a line of their own
 * @param rest those told in brief behind them, where lines have no room
 */
public record CardPeople(String from, String note, List<CardPerson> rows, List<CardPerson> rest) {
    public CardPeople {
        rows = List.copyOf(rows);
        rest = List.copyOf(rest);
    }

    /** Everybody in brief: a numbered list in place of the table, which stands on the back. */
    CardPeople asList() {
        return new CardPeople(from, ("Places and loadouts: overleaf. " + note).strip(), List.of(), everybody());
    }

    /** Only the first so many of the list, and how many are left to the report. */
    CardPeople first(int count) {
        List<CardPerson> all = everybody();
        if (count >= all.size()) return this;
        String left = (all.size() - count) + " more overleaf.";
        return new CardPeople(from, (left + " " + note).strip(), List.of(), all.subList(0, count));
    }

    boolean isEmpty() {
        return rows.isEmpty() && rest.isEmpty();
    }

    List<CardPerson> everybody() {
        return Stream.concat(rows.stream(), rest.stream()).toList();
    }
}
