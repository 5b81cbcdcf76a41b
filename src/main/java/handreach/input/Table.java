package handreach.input;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A table of named columns as people and spreadsheets write it: one line of column heads, then one row a line. The columns stand in
 * any order, parted by commas, semicolons or tabs, whichever the heads are parted by or a {@code sep=} line above them says; cells may
 * stand in quotation marks. Lines that start with # and empty rows are passed over.
 *
 * <p>A row that is read strictly has a cell for every head. With a listener for notes the table is read leniently: a column that is
 * near to no known one is noted in place of refused, and a row may leave off cells at its end.
 */
public final class Table {
    private static final List<Character> SEPARATORS = List.of(',', ';', '\t');
    /** With the empty cells that a spreadsheet pads it with, whose separator then goes before the one named. */
    private static final Pattern SEPARATOR_HINT =
            Pattern.compile("\\s*\"?sep=(.)\"?\\s*([,;\\t]?)[,;\\s]*", Pattern.CASE_INSENSITIVE);

    private static final String QUOTES =
            "the table breaks off at or after this line: a quotation mark is not closed, or text follows a closed one. Close it,"
                    + " or leave quotation marks out.";

    private final SourceText source;
    private final List<String> needed;
    private final List<String> all;
    private final Faults faults;
    private final Optional<Consumer<String>> notes;
    private final UnaryOperator<String> naming;
    private final int head;
    private final CSVFormat format;
    private final Map<String, Integer> columns = new HashMap<>();
    private int width;
    private boolean readable = true;

    private Table(
            SourceText source,
            List<String> needed,
            List<String> optional,
            Faults faults,
            Optional<Consumer<String>> notes,
            UnaryOperator<String> naming) {
        this.source = source;
        this.needed = needed;
        this.all = Stream.concat(needed.stream(), optional.stream()).toList();
        this.faults = faults;
        this.notes = notes;
        this.naming = naming;
        this.head = headOf(source.lines());
        this.format = format(source, head);
        if (head >= 0) {
            readHeads();
        } else {
            readable = false;
            faults.add(
                    source.name(),
                    0,
                    "holds no table. A line of column heads is expected: " + example() + ", then one row a line.");
        }
    }

    /**
     * A table with these columns, read strictly. What is wrong with the column heads is noted at once.
     *
     * @param needed columns that must be there, in the order in which they are told
     * @param optional columns that may be left out
     * @param faults takes whatever is wrong
     */
    public static Table of(SourceText source, List<String> needed, List<String> optional, Faults faults) {
        return new Table(source, needed, optional, faults, Optional.empty(), UnaryOperator.identity());
    }

    /**
     * The same, read leniently: what is accepted but should be known goes to the listener, and a column may go by several names.
     *
     * @param naming the column that a head means, given as {@link #headsOf} spells it
     */
    public static Table lenient(
            SourceText source,
            List<String> needed,
            List<String> optional,
            UnaryOperator<String> naming,
            Faults faults,
            Consumer<String> notes) {
        return new Table(source, needed, optional, faults, Optional.of(notes), naming);
    }

    /** Lines above the column heads, which hold remarks and whatever else the format puts there. */
    public int linesAboveHead() {
        return Math.max(0, head);
    }

    /** Whether the table has one of these columns. */
    public boolean hasAnyOf(String... names) {
        return Arrays.stream(names).anyMatch(name -> column(name).isPresent());
    }

    /** Notes what is wrong with the column heads beyond what {@link #of} was told; no row is handed out then. */
    public void headFault(String text) {
        readable = false;
        faults.add(source.name(), head + 1, text);
    }

    private static int headOf(List<String> lines) {
        for (int i = 0; i < lines.size(); i++)
            if (!isPassedOver(lines.get(i))
                    && !SEPARATOR_HINT.matcher(lines.get(i)).matches()) return i;
        return -1;
    }

    /** A remark, which a spreadsheet may have put in quotation marks, or a row without content. */
    private static boolean isPassedOver(String line) {
        String text = line.strip();
        if (text.startsWith("#") || text.startsWith("\"#")) return true;
        for (int i = 0; i < text.length(); i++)
            if (!Character.isWhitespace(text.charAt(i)) && !SEPARATORS.contains(text.charAt(i))) return false;
        return true;
    }

    private static char separatorOf(List<String> lines, int head) {
        if (head < 0) return ',';
        for (String line : lines.subList(0, head)) {
            Matcher hint = SEPARATOR_HINT.matcher(line);
            if (!hint.matches()) continue;
            String said = hint.group(2).isEmpty() ? hint.group(1) : hint.group(2);
            if (SEPARATORS.contains(said.charAt(0))) return said.charAt(0);
        }
        String heads = lines.get(head);
        char best = ',';
        for (char candidate : SEPARATORS) if (count(heads, candidate) > count(heads, best)) best = candidate;
        return best;
    }

    private static long count(String line, char wanted) {
        long count = 0;
        for (int i = 0; i < line.length(); i++) if (line.charAt(i) == wanted) count++;
        return count;
    }

    /** Hands out every row that has its cells; none if the column heads are at fault. */
    public void forEach(Consumer<TableRow> reader) {
        if (!readable) return;
        int line = head + 1;
        try (CSVParser parser = CSVParser.parse(new StringReader(body()), format)) {
            for (CSVRecord record : parser) {
                line = head + 1 + (int) parser.getCurrentLineNumber() - breaksInside(record);
                if (!isRemark(record.toList())) row(record.toList(), line).ifPresent(reader);
            }
        } catch (IOException | UncheckedIOException e) {
            fault(line + 1, QUOTES);
        }
    }

    private String body() {
        StringBuilder body = new StringBuilder();
        for (String line : source.lines().subList(head + 1, source.lines().size()))
            body.append(line).append('\n');
        return body.toString();
    }

    /** Line breaks within quotation marks: the parser counts lines to the end of a row, a fault names its start. */
    private static int breaksInside(CSVRecord row) {
        int breaks = 0;
        for (String cell : row) if (cell.indexOf('\n') >= 0) breaks += (int) count(cell, '\n');
        return breaks;
    }

    private static boolean isRemark(List<String> cells) {
        return cells.get(0).startsWith("#") || cells.stream().allMatch(String::isBlank);
    }

    /** Names of the columns of whatever table this is, as this class spells them; none where there is no table. */
    public static List<String> headsOf(SourceText source) {
        int head = headOf(source.lines());
        return head < 0
                ? List.of()
                : typedHeads(source, head, format(source, head)).orElse(List.of()).stream()
                        .map(Table::plain)
                        .toList();
    }

    private static CSVFormat format(SourceText source, int head) {
        return CSVFormat.DEFAULT
                .builder()
                .setDelimiter(separatorOf(source.lines(), head))
                .setCommentMarker('#')
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
    }

    /** The column heads as they stand there; nothing if their quotation marks are at fault. */
    private static Optional<List<String>> typedHeads(SourceText source, int head, CSVFormat format) {
        try (CSVParser parser = CSVParser.parse(new StringReader(source.lines().get(head)), format)) {
            return Optional.of(parser.getRecords().get(0).toList());
        } catch (IOException | UncheckedIOException e) {
            return Optional.empty();
        }
    }

    private void readHeads() {
        Optional<List<String>> there = typedHeads(source, head, format);
        if (there.isEmpty()) {
            headFault(QUOTES);
            return;
        }
        List<String> typed = there.get();
        List<String> heads = typed.stream().map(Table::plain).map(naming).toList();
        width = heads.size();
        if (heads.stream().noneMatch(name -> NearestWord.of(name, all).isPresent())) {
            headFault("the first row names none of the columns. A line of column heads is needed: " + example()
                    + ", in any order, parted by comma, semicolon or tab.");
            return;
        }
        for (int i = 0; i < width; i++) {
            String name = heads.get(i);
            if (name.isEmpty()) continue;
            if (!all.contains(name)) unknown(typed.get(i), name, heads);
            else if (columns.put(name, i) != null) headFault("the column " + name + " stands twice. Keep one.");
        }
        List<String> missing =
                needed.stream().filter(name -> !columns.containsKey(name)).toList();
        if (readable && !missing.isEmpty())
            headFault("the column heads lack " + String.join(", ", missing) + ". Needed are "
                    + String.join(", ", needed) + ".");
    }

    private String example() {
        return String.join(",", all);
    }

    private void unknown(String typed, String name, List<String> heads) {
        boolean isMistyped =
                NearestWord.of(name, all).filter(near -> !heads.contains(near)).isPresent();
        if (notes.isPresent() && !isMistyped) notes.get().accept("The column \"" + typed + "\" is not used.");
        else
            headFault("there is no column \"" + typed + "\"." + NearestWord.hint(name, all) + " Columns are "
                    + String.join(", ", all) + ".");
    }

    private static String plain(String head) {
        String low = head.strip().toLowerCase(Locale.ROOT);
        return low.indexOf(' ') < 0 && low.indexOf('-') < 0 ? low : low.replaceAll("[ -]+", "_");
    }

    private Optional<TableRow> row(List<String> cells, int line) {
        boolean isFull = cells.size() == width
                || cells.size() < width && notes.isPresent()
                || cells.size() > width
                        && cells.subList(width, cells.size()).stream().allMatch(String::isBlank);
        if (isFull) return Optional.of(new TableRow(this, line, cells));
        String why = cells.size() < width
                ? "Give every column a cell, if only an empty one."
                : "A decimal comma, or a comma in a note, splits a cell: write decimals with a point, put text in quotation marks,"
                        + " or part the table by semicolons.";
        fault(
                line,
                "has " + cells.size() + (cells.size() == 1 ? " cell" : " cells") + ", the column heads are " + width
                        + ". " + why);
        return Optional.empty();
    }

    /** Whether commas part the cells, so that none can be a decimal sign. */
    public boolean isPartedByCommas() {
        return format.getDelimiterString().equals(",");
    }

    /** Column number of a name; empty where the table does not have it. */
    Optional<Integer> column(String name) {
        if (!all.contains(name)) throw new IllegalArgumentException("column " + name + " is not declared");
        return Optional.ofNullable(columns.get(name));
    }

    void fault(int line, String text) {
        faults.addLike(source.name(), line, text);
    }
}
