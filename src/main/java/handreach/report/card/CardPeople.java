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

    /** Only the first so many with a line of their own. */
    CardPeople first(int count) {
        if (count >= rows.size()) return this;
        List<CardPerson> moved = Stream.concat(rows.subList(count, rows.size()).stream(), rest.stream())
                .toList();
        return new CardPeople(from, note, rows.subList(0, count), moved);
    }
}
