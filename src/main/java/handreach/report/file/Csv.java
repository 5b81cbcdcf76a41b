package handreach.report.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Rows as comma-separated values (RFC 4180): header first, CR LF at line ends, quotes where needed. */
public final class Csv {
    private Csv() {}

    /**
     * The text of a table. A text cell that a spreadsheet would take for a formula gets an apostrophe in front; numbers do not.
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

    private static String harmless(String cell) {
        boolean looksLikeFormula = !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0;
        return looksLikeFormula && !cell.matches("[+-]?[0-9.]+([eE][+-]?[0-9]+)?") ? "'" + cell : cell;
    }
}
