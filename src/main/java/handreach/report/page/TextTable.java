package handreach.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** A table for the terminal: aligned columns, numbers to the right, a line under the head. Not for use by several threads. */
public final class TextTable {
    private static final String GAP = "  ";
    private static final Pattern NUMBER = Pattern.compile("[-+\u2212]?[0-9]+(\\.[0-9]+)?( ?%)?");
    private final List<Column> columns;
    private final List<List<String>> rows = new ArrayList<>();

    /** A column: its head, and whether its cells are numbers and so stand to the right. */
    private record Column(String head, boolean isNumber) {}

    private TextTable(List<Column> columns) {
        this.columns = columns;
    }

    /** Heads of the columns. A column whose cells are all numbers stands to the right, and so does one whose head starts with {@code >}. */
    public static TextTable of(String... heads) {
        List<Column> columns = new ArrayList<>();
        for (String head : heads)
            columns.add(head.startsWith(">") ? new Column(head.substring(1), true) : new Column(head, false));
        if (columns.isEmpty()) throw new IllegalArgumentException("a table without columns");
        return new TextTable(columns);
    }

    public TextTable row(String... cells) {
        if (cells.length != columns.size())
            throw new IllegalArgumentException(cells.length + " cells in a table of " + columns.size() + " columns");
        List<String> row = new ArrayList<>();
        for (String cell : cells) row.add(oneLine(cell));
        rows.add(row);
        return this;
    }

    public int rowCount() {
        return rows.size();
    }

    /** The table as lines, each ended by a line feed, without blanks at the end of a line. */
    public String text() {
        int[] width = new int[columns.size()];
        for (int c = 0; c < width.length; c++) {
            width[c] = length(columns.get(c).head());
            for (List<String> row : rows) width[c] = Math.max(width[c], length(row.get(c)));
        }
        StringBuilder out = new StringBuilder();
        append(out, columns.stream().map(Column::head).toList(), width);
        List<String> rule = new ArrayList<>();
        for (int w : width) rule.add("-".repeat(w));
        append(out, rule, width);
        for (List<String> row : rows) append(out, row, width);
        return out.toString();
    }

    private void append(StringBuilder out, List<String> cells, int[] width) {
        StringBuilder line = new StringBuilder();
        for (int c = 0; c < width.length; c++) {
            if (c > 0) line.append(GAP);
            String blanks = " ".repeat(width[c] - length(cells.get(c)));
            line.append(isNumber(c) ? blanks + cells.get(c) : cells.get(c) + blanks);
        }
        out.append(line.toString().stripTrailing()).append('\n');
    }

    private boolean isNumber(int column) {
        if (columns.get(column).isNumber()) return true;
        List<String> filled = rows.stream()
                .map(row -> row.get(column))
                .filter(cell -> !cell.isEmpty())
                .toList();
        return !filled.isEmpty()
                && filled.stream().allMatch(cell -> NUMBER.matcher(cell).matches());
    }

    /** Control characters could move the cursor of a terminal; none passes. */
    private static String oneLine(String cell) {
        return cell.replaceAll("[\\p{Cntrl}\u2028\u2029]+", " ").strip();
    }

    private static int length(String text) {
        return (int) text.codePoints()
                .filter(c ->
                        Character.getType(c) != Character.NON_SPACING_MARK && Character.getType(c) != Character.FORMAT)
                .count();
    }
}
