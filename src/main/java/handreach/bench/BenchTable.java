package handreach.bench;

import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.NearestWord;
import handreach.input.SourceText;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The table of a bench file: finds separator and header, hands every row to {@link RowReader}, collects all faults. */
final class BenchTable {
    static final List<String> NEEDED = List.of("antenna", "mount", "quantity", "value", "unit");
    static final List<String> OPTIONAL = List.of("frequency_mhz", "trial", "note");
    private static final List<String> ALL =
            List.of("antenna", "mount", "quantity", "value", "unit", "frequency_mhz", "trial", "note");

    private final SourceText source;
    private final Faults faults = new Faults();
    private final List<String> notes = new ArrayList<>();

    BenchTable(SourceText source) {
        this.source = source;
    }

    BenchFile read() {
        List<String> lines = source.lines();
        if (source.isFallback())
            notes.add("The file is not UTF-8 and was read as Windows code page 1252: check letters with accents.");
        int header = headerIndex(lines);
        Declarations declarations =
                new DeclarationReader(source.name(), faults, notes).read(lines, Math.max(0, header));
        if (header < 0) {
            faults.add(
                    source.name(),
                    0,
                    "holds no table. A header line is expected: " + String.join(",", ALL)
                            + ", then one reading a row.");
            throw new InputFault(faults.list());
        }
        char separator = separator(lines, header);
        List<Reading> readings = rows(lines, header, separator);
        faults.throwIfAny();
        if (readings.isEmpty())
            throw new InputFault(source.name(), header + 1, "has a header but no reading. Add one reading a row.");
        return new BenchFile(source.name(), readings, declarations, notes);
    }

    /** First line that is neither blank, a comment, nor the separator hint that spreadsheets put on top. */
    private static int headerIndex(List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            if (isPassedOver(lines.get(i)) || isSeparatorHint(lines.get(i))) continue;
            return i;
        }
        return -1;
    }

    static boolean isPassedOver(String line) {
        return isEmpty(line)
                || line.stripLeading().startsWith("#")
                || line.stripLeading().startsWith("\"#");
    }

    /** A spreadsheet writes an empty row as separators only. */
    private static boolean isEmpty(String line) {
        return line.chars().allMatch(c -> Character.isWhitespace(c) || c == ',' || c == ';');
    }

    private static boolean isSeparatorHint(String line) {
        return line.strip().toLowerCase(Locale.ROOT).matches("\"?sep=.\"?");
    }

    private static char separator(List<String> lines, int header) {
        String line = lines.get(header);
        char best = ',';
        long most = -1;
        for (char candidate : new char[] {',', ';', '\t'}) {
            long count = line.chars().filter(c -> c == candidate).count();
            if (count > most) {
                most = count;
                best = candidate;
            }
        }
        return best;
    }

    private List<Reading> rows(List<String> lines, int header, char separator) {
        StringBuilder body = new StringBuilder();
        for (int i = header; i < lines.size(); i++)
            body.append(isPassedOver(lines.get(i)) ? "" : lines.get(i)).append('\n');
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
        List<Reading> readings = new ArrayList<>();
        int line = header + 1;
        try (CSVParser parser = CSVParser.parse(new StringReader(body.toString()), format)) {
            RowReader reader = null;
            for (CSVRecord row : parser) {
                line = header + (int) parser.getCurrentLineNumber() - breaksInside(row);
                if (reader == null) {
                    reader = reader(row, line, separator);
                    if (reader == null) return readings;
                } else {
                    reader.read(row.toList(), line).ifPresent(readings::add);
                }
            }
            if (reader != null) reader.finish();
        } catch (IOException | UncheckedIOException e) {
            faults.add(
                    source.name(),
                    line + 1,
                    "the table breaks off at or after this line: a quotation mark is not closed, or text follows a closed"
                            + " one. Close it, or leave quotation marks out.");
        }
        return readings;
    }

    /** Line breaks within quotation marks: the parser counts lines to the end of a row, a fault names its start. */
    private static int breaksInside(CSVRecord row) {
        int breaks = 0;
        for (String field : row) for (int i = field.indexOf('\n'); i >= 0; i = field.indexOf('\n', i + 1)) breaks++;
        return breaks;
    }

    private RowReader reader(CSVRecord row, int line, char separator) {
        Map<String, Integer> columns = new HashMap<>();
        List<String> names = row.stream().map(BenchTable::columnName).toList();
        int before = faults.list().size();
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            if (name.isEmpty()) continue;
            if (ALL.contains(name)) {
                if (columns.put(name, i) != null)
                    faults.add(source.name(), line, "the column " + name + " stands twice. Keep one.");
            } else if (NearestWord.of(name, ALL)
                    .filter(near -> !names.contains(near))
                    .isPresent()) {
                faults.add(
                        source.name(),
                        line,
                        "there is no column \"" + row.get(i) + "\"." + NearestWord.hint(name, ALL) + " Columns are "
                                + String.join(", ", ALL) + ".");
            } else {
                notes.add("The column \"" + row.get(i) + "\" is not used.");
            }
        }
        List<String> missing =
                NEEDED.stream().filter(name -> !columns.containsKey(name)).toList();
        if (missing.size() == NEEDED.size())
            faults.add(
                    source.name(),
                    line,
                    "the first row names none of the columns. A header is needed: " + String.join(",", ALL)
                            + ", in any order, separated by comma, semicolon or tab.");
        else if (!missing.isEmpty())
            faults.add(
                    source.name(),
                    line,
                    "the header lacks " + String.join(", ", missing) + ". Needed are " + String.join(", ", NEEDED)
                            + "; " + String.join(", ", OPTIONAL) + " may be left out.");
        if (faults.list().size() > before) return null;
        return new RowReader(source.name(), columns, names.size(), separator, faults, notes);
    }

    private static String columnName(String typed) {
        return typed.strip().toLowerCase(Locale.ROOT).replaceAll("[ -]+", "_");
    }
}
