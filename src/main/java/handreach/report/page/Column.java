package handreach.report.page;

import java.util.List;
import java.util.function.Function;

/**
 * A column of a table: its head, the side its cells stand at, and what it shows of the rows. All rows are handed over at once, so
 * that a column can choose one unit and one number of digits for all of them.
 *
 * @param <T> what a row is about
 * @param head words at the top, with the unit where cells do not carry it
 * @param isNumber whether cells stand to the right
 * @param cells text of every row's cell, in order; a line feed in a cell starts a new line
 */
public record Column<T>(String head, boolean isNumber, Function<? super List<T>, List<String>> cells) {
    /** Words, to the left. */
    public static <T> Column<T> words(String head, Function<? super T, String> cell) {
        return new Column<>(head, false, each(cell));
    }

    /** Numbers, to the right; the text is the quantity's own writer's. */
    public static <T> Column<T> number(String head, Function<? super T, String> cell) {
        return new Column<>(head, true, each(cell));
    }

    private static <T> Function<List<T>, List<String>> each(Function<? super T, String> cell) {
        return rows -> rows.stream().<String>map(cell).toList();
    }
}
