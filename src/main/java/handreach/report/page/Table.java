package handreach.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * A table of an answer: the values its rows are about, and once for all faces what each column shows of them. Page, terminal,
 * window and spreadsheet read the same cells.
 *
 * @param <T> what a row is about
 */
public final class Table<T> implements Block {
    /** Names of so many letters keep their line. */
    private static final int SHORT = 14;

    private final String caption;
    private final List<Column<T>> columns;
    private final List<T> rows;
    private final Predicate<? super T> isSum;
    private final Predicate<? super T> isMarked;
    private final boolean isForWriting;
    /** By column, then by row. */
    private final List<List<String>> cells = new ArrayList<>();

    private Table(
            String caption,
            List<Column<T>> columns,
            List<T> rows,
            Predicate<? super T> isSum,
            Predicate<? super T> isMarked,
            boolean isForWriting) {
        if (columns.isEmpty()) throw new IllegalArgumentException("a table without columns");
        this.caption = caption;
        this.columns = List.copyOf(columns);
        this.rows = List.copyOf(rows);
        this.isSum = isSum;
        this.isMarked = isMarked;
        this.isForWriting = isForWriting;
        for (Column<T> column : this.columns) {
            List<String> texts = List.copyOf(column.cells().apply(this.rows));
            if (texts.size() != this.rows.size())
                throw new IllegalArgumentException(
                        texts.size() + " cells under \"" + column.head() + "\" for " + this.rows.size() + " rows");
            cells.add(texts);
        }
    }

    /**
     * A table.
     *
     * @param caption what it shows; may be empty
     */
    public static <T> Table<T> of(String caption, List<T> rows, List<Column<T>> columns) {
        return new Table<>(caption, columns, rows, row -> false, row -> false, false);
    }

    /** The same with rows marked that sum up what stands above them. */
    public Table<T> summing(Predicate<? super T> sum) {
        return new Table<>(caption, columns, rows, sum, isMarked, isForWriting);
    }

    /** The same with rows marked that the reader has chosen; a window sets them off. */
    public Table<T> marking(Predicate<? super T> chosen) {
        return new Table<>(caption, columns, rows, isSum, chosen, isForWriting);
    }

    /** The same with rows high enough to write into by hand. */
    public Table<T> forWriting() {
        return new Table<>(caption, columns, rows, isSum, isMarked, true);
    }

    public String caption() {
        return caption;
    }

    public int columnCount() {
        return columns.size();
    }

    public int rowCount() {
        return rows.size();
    }

    public String head(int column) {
        return columns.get(column).head();
    }

    public boolean isNumber(int column) {
        return columns.get(column).isNumber();
    }

    public String cell(int row, int column) {
        return cells.get(column).get(row);
    }

    /** What a row is about, for a face that offers more than to read it. */
    public T row(int row) {
        return rows.get(row);
    }

    public boolean isSum(int row) {
        return isSum.test(rows.get(row));
    }

    public boolean isMarked(int row) {
        return isMarked.test(rows.get(row));
    }

    @Override
    public void appendTo(Html html) {
        html.open("div", "class", isForWriting ? "wide blank" : "wide").open("table");
        if (!caption.isBlank()) html.element("caption", caption);
        html.open("thead").open("tr");
        for (int c = 0; c < columns.size(); c++)
            html.element("th", head(c), look("scope", "col", isNumber(c) ? "n" : ""));
        html.close("tr").close("thead").open("tbody");
        boolean[] isShort = new boolean[columns.size()];
        for (int c = 0; c < isShort.length; c++)
            isShort[c] = !isNumber(c) && cells.get(c).stream().allMatch(cell -> cell.length() <= SHORT);
        for (int r = 0; r < rows.size(); r++) {
            if (isSum(r)) html.open("tr", "class", "sum");
            else html.open("tr");
            for (int c = 0; c < columns.size(); c++) {
                String element = c == 0 ? "th" : "td";
                boolean isSpan = isNumber(c) && cell(r, c).contains(" to ");
                String look = isNumber(c) ? "n" : isShort[c] ? "short" : "";
                html.open(element, c == 0 ? look("scope", "row", look) : look("", "", look));
                if (isSpan) span(html, cell(r, c));
                else lines(html, cell(r, c));
                html.close(element);
            }
            html.close("tr");
        }
        html.close("tbody").close("table").close("div");
    }

    /** Where the column is narrow, the second number of a span stands below the first. */
    private static void span(Html html, String cell) {
        html.open("span", "class", "span");
        for (String part : cell.split("(?<= )(?=to )")) html.whole(part);
        html.close("span");
    }

    private static void lines(Html html, String cell) {
        String[] lines = cell.split("\n", -1);
        for (int k = 0; k < lines.length; k++) {
            if (k > 0) html.open("br");
            html.text(lines[k]);
        }
    }

    private static String[] look(String name, String value, String look) {
        List<String> attributes = new ArrayList<>();
        if (!name.isEmpty()) attributes.addAll(List.of(name, value));
        if (!look.isEmpty()) attributes.addAll(List.of("class", look));
        return attributes.toArray(new String[0]);
    }
}
