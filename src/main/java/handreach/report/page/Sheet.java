package handreach.report.page;

import java.util.ArrayList;
import java.util.List;

/**
 * A table of a page.
 *
 * @param caption what it shows, with the units of its columns where heads do not say them
 * @param columns heads and how cells stand
 * @param rows cells, as many in each row as there are columns; a line feed in a cell starts a new line
 */
public record Sheet(String caption, List<Column> columns, List<Row> rows) implements Block {
    /**
     * A column.
     *
     * @param head words at the top, with the unit
     * @param isNumber whether cells stand to the right
     */
    public record Column(String head, boolean isNumber) {
        public static Column words(String head) {
            return new Column(head, false);
        }

        public static Column number(String head) {
            return new Column(head, true);
        }
    }

    /**
     * A row.
     *
     * @param cells text of each cell
     * @param isSum whether it sums up what stands above
     */
    public record Row(List<String> cells, boolean isSum) {
        public Row {
            cells = List.copyOf(cells);
        }

        public static Row of(String... cells) {
            return new Row(List.of(cells), false);
        }

        public static Row sum(String... cells) {
            return new Row(List.of(cells), true);
        }
    }

    public Sheet {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        for (Row row : rows)
            if (row.cells().size() != columns.size())
                throw new IllegalArgumentException(row.cells().size() + " cells under " + columns.size() + " heads");
    }

    @Override
    public void appendTo(Html html) {
        html.open("div", "class", "wide").open("table");
        if (!caption.isBlank()) html.element("caption", caption);
        html.open("thead").open("tr");
        for (Column column : columns) html.element("th", column.head(), look("scope", "col", column.isNumber()));
        html.close("tr").close("thead").open("tbody");
        for (Row row : rows) {
            if (row.isSum()) html.open("tr", "class", "sum");
            else html.open("tr");
            for (int i = 0; i < columns.size(); i++) {
                String cell = row.cells().get(i);
                boolean isNumber = columns.get(i).isNumber();
                html.open(i == 0 ? "th" : "td", i == 0 ? look("scope", "row", isNumber) : look("", "", isNumber));
                lines(html, cell);
                html.close(i == 0 ? "th" : "td");
            }
            html.close("tr");
        }
        html.close("tbody").close("table").close("div");
    }

    private static void lines(Html html, String cell) {
        String[] lines = cell.split("\n", -1);
        for (int k = 0; k < lines.length; k++) {
            if (k > 0) html.open("br");
            html.text(lines[k]);
        }
    }

    private static String[] look(String name, String value, boolean isNumber) {
        List<String> attributes = new ArrayList<>();
        if (!name.isEmpty()) attributes.addAll(List.of(name, value));
        if (isNumber) attributes.addAll(List.of("class", "n"));
        return attributes.toArray(new String[0]);
    }
}
