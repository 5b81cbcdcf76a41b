package handreach.report.file;

import handreach.input.Unseen;
import handreach.report.page.Table;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Rows as comma-separated values (RFC 4180): header first, CR LF at line ends, quotes where needed. */
public final class Csv {
    private Csv() {}

    /**
     * The text of a table, one line a row. A text cell that a spreadsheet would take for a formula gets an apostrophe in front;
     * numbers do not.
     */
    public static String text(List<String> header, List<List<String>> rows) {
        StringBuilder out = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
            printer.printRecord(header);
            for (List<String> row : rows) {
                if (row.size() != header.size())
                    throw new IllegalArgumentException(row.size() + " cells under " + header.size() + " heads");
                printer.printRecord(row.stream().map(Csv::harmless).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    /** The text of a table of an answer: its heads and cells as they are, without its caption. */
    public static String text(Table<?> table) {
        List<String> heads =
                IntStream.range(0, table.columnCount()).mapToObj(table::head).toList();
        List<List<String>> rows = new ArrayList<>();
        for (int row = 0; row < table.rowCount(); row++) {
            int number = row;
            rows.add(IntStream.range(0, heads.size())
                    .mapToObj(column -> table.cell(number, column))
                    .toList());
        }
        return text(heads, rows);
    }

    private static String harmless(String words) {
        String cell = Unseen.oneLine(words);
        boolean looksLikeFormula = !cell.isEmpty() && "=+-@".indexOf(cell.charAt(0)) >= 0;
        return looksLikeFormula && !cell.matches("[+-]?[0-9.]+([eE][+-]?[0-9]+)?") ? "'" + cell : cell;
    }
}
