package handreach.input;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One row of a {@link Table}, cells by the names of their columns. What is wrong is told with the row's line, equal faults of many rows once. */
public final class TableRow {
    private final Table table;
    private final int line;
    private final List<String> cells;
    private boolean sound = true;

    TableRow(Table table, int line, List<String> cells) {
        this.table = table;
        this.line = line;
        this.cells = cells;
    }

    /** Line of the file in which the row starts, from 1. */
    public int line() {
        return line;
    }

    /** A cell; empty where the table has no such column. */
    public String text(String column) {
        return table.column(column)
                .filter(at -> at < cells.size())
                .map(cells::get)
                .orElse("");
    }

    /** A number within limits; nothing if the cell is empty, nothing and a fault if it holds anything else. */
    public OptionalDouble number(Range range) {
        return number(range, text(range.key()));
    }

    /** The same of the part of a cell that is a number. */
    public OptionalDouble number(Range range, String typed) {
        String column = range.key();
        if (typed.isBlank()) return OptionalDouble.empty();
        boolean hasComma = NumberText.hasDecimalComma(typed);
        if (hasComma && table.isPartedByCommas()) {
            fault(
                    column,
                    "is \"" + typed + "\", written with a decimal comma in a table parted by commas. Write a decimal"
                            + " point, or part the table by semicolons.");
            return OptionalDouble.empty();
        }
        OptionalDouble value = NumberText.parse(hasComma ? typed.replace(',', '.') : typed);
        if (value.isPresent() && range.accepts(value.getAsDouble())) return value;
        fault(
                column,
                "is \"" + typed + "\", allowed is a number from " + range.words() + ". "
                        + (value.isPresent()
                                ? "Check the value and its unit."
                                : "Write it like 12.5, without its unit."));
        return OptionalDouble.empty();
    }

    /** A number that must be there. */
    public OptionalDouble requiredNumber(Range range) {
        if (text(range.key()).isBlank()) fault(range.key(), "is empty. Fill it in, or drop the row.");
        return number(range);
    }

    /** The value that a word means; nothing if the cell is empty, nothing and a fault if the word means none. */
    public <E> Optional<E> word(String column, Keyword<E> keyword) {
        String typed = text(column);
        return typed.isEmpty() ? Optional.empty() : keyword.read(typed, refused -> fault(column, refused));
    }

    /** Notes what is wrong with a cell. What was found stands in quotation marks: faults that differ in nothing else are told once. */
    public void fault(String column, String text) {
        fault(column + " " + text);
    }

    /** Notes what is wrong with the row as a whole. */
    public void fault(String text) {
        sound = false;
        table.fault(line, text);
    }

    /** Whether no fault has been noted. */
    public boolean isSound() {
        return sound;
    }
}
