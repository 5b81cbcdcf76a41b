package handreach.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TableTest {
    private static final Keyword<Boolean> TIDE = Keyword.of(List.of(true, false), isHigh -> isHigh ? "high" : "low");

    /** Depths at places: {@code place} and {@code depth_m} are needed, {@code tide} and {@code note} may be left out. */
    private record Read(List<String> rows, List<String> faults, List<String> notes) {
        static Read strict(String text) {
            Faults faults = new Faults();
            return of(Table.of(SourceText.of("d.csv", text), NEEDED, OPTIONAL, faults), faults, List.of());
        }

        static Read lenient(String text) {
            Faults faults = new Faults();
            List<String> notes = new ArrayList<>();
            Table table = Table.lenient(
                    SourceText.of("d.csv", text), NEEDED, OPTIONAL, UnaryOperator.identity(), faults, notes::add);
            return of(table, faults, notes);
        }

        private static Read of(Table table, Faults faults, List<String> notes) {
            List<String> rows = new ArrayList<>();
            table.forEach(row -> {
                OptionalDouble depth = row.requiredNumber(new Range("depth_m", 0, 11_000, "m"));
                Optional<Boolean> high = row.word("tide", TIDE);
                if (row.isSound())
                    rows.add(row.line() + " " + row.text("place") + " " + depth.getAsDouble()
                            + high.map(h -> h ? " high" : " low").orElse("")
                            + (row.text("note").isEmpty() ? "" : " ")
                            + row.text("note"));
            });
            return new Read(rows, faults.list().stream().map(Fault::message).toList(), notes);
        }
    }

    private static final List<String> NEEDED = List.of("place", "depth_m");
    private static final List<String> OPTIONAL = List.of("tide", "note");

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void cellsArePartedByWhateverPartsTheHeads(String separator) {
        String text = "place,depth_m,tide\nbay,12.5,high\nreef,3,\n".replace(",", separator);
        assertEquals(new Read(List.of("2 bay 12.5 high", "3 reef 3.0"), List.of(), List.of()), Read.strict(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"sep=;", "\"sep=;\"", "SEP=;", "sep=;;;", "\"sep=;\";;", "sep=,;;"})
    void aLineOfASpreadsheetSaysTheSeparator(String hint) {
        // one column head has commas in it, so that the heads alone would mislead
        Read read = Read.lenient(hint + "\nplace;depth_m;\"a,b,c,d\"\nbay;1,5;x\n");
        assertEquals(List.of("3 bay 1.5"), read.rows());
        assertEquals(List.of("The column \"a,b,c,d\" is not used."), read.notes());
    }

    @Test
    void columnsStandInAnyOrderAndSpelling() {
        assertEquals(
                List.of("2 bay 2.0 low"),
                Read.strict("Tide,Depth M,PLACE\nLow,2,bay\n").rows());
    }

    @Test
    void remarksAndEmptyRowsArePassedOverAndLinesStayRight() {
        Read read = Read.strict(
                "\uFEFF# made up\n\n\"# quoted remark\"\nplace,depth_m\n\n# \"half a quote\n,\nbay,1\n  # end\nreef,2");
        assertEquals(new Read(List.of("8 bay 1.0", "10 reef 2.0"), List.of(), List.of()), read);
    }

    @Test
    void aCellInQuotationMarksMayHoldSeparatorsQuotesAndLineBreaks() {
        Read read = Read.strict("place,depth_m,note\nbay,1,\"calm, \"\"flat\"\"\nall day\"\nreef,2,x\n");
        assertEquals(List.of("2 bay 1.0 calm, \"flat\"\nall day", "4 reef 2.0 x"), read.rows());
    }

    @Test
    void decimalCommasAreReadWhereCommasDoNotPartTheCells() {
        assertEquals(
                List.of("2 bay 12.5"), Read.strict("place;depth_m\nbay;12,5\n").rows());
        assertEquals(
                List.of(
                        "d.csv line 2: depth_m is \"12,5\", written with a decimal comma in a table parted by commas. Write a"
                                + " decimal point, or part the table by semicolons."),
                Read.strict("place,depth_m\nbay,\"12,5\"\n").faults());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "place,depht_m\\nbay,1|line 1: there is no column \"depht_m\". Did you mean depth_m? Columns are place, depth_m, tide, note.",
                "place,depth_m,colour\\nbay,1,x|line 1: there is no column \"colour\". Columns are",
                "place,depth_m,place\\nbay,1,x|line 1: the column place stands twice. Keep one.",
                "place,note\\nbay,x|line 1: the column heads lack depth_m. Needed are place, depth_m.",
                "bay,1\\nreef,2|line 1: the first row names none of the columns. A line of column heads is needed: place,depth_m,tide,note",
                "# nothing|d.csv: holds no table. A line of column heads is expected: place,depth_m,tide,note",
                "place,depth_m\\nbay|line 2: has 1 cell, the column heads are 2. Give every column a cell",
                "place,depth_m\\nbay,1,5|line 2: has 3 cells, the column heads are 2. A decimal comma",
                "place,depth_m\\nbay,deep|line 2: depth_m is \"deep\", allowed is a number from 0 to 11000 m. Write it like 12.5, without its unit.",
                "place,depth_m\\nbay,-1|line 2: depth_m is \"-1\", allowed is a number from 0 to 11000 m. Check the value and its unit.",
                "place,depth_m\\nbay,|line 2: depth_m is empty. Fill it in, or drop the row.",
                "place,depth_m,tide\\nbay,1,hihg|line 2: tide is \"hihg\", allowed is high, low. Did you mean high?",
                "place,depth_m\\nbay,1\\nreef,\"2\\ncove,3|line 3: the table breaks off at or after this line: a quotation mark is not closed",
            })
    void faultsSayTheLineWhatWasFoundWhatIsAllowedAndTheRemedy(String text, String part) {
        List<String> told = Read.strict(text.replace("\\n", "\n")).faults();
        assertTrue(told.stream().anyMatch(line -> line.contains(part)), told.toString());
    }

    @Test
    void aFaultOfTheHeadsKeepsEveryRowBack() {
        Read read = Read.strict("place,depth_m,colour\nbay,deep,x\n");
        assertEquals(1, read.faults().size(), read.faults().toString());
        assertEquals(List.of(), read.rows());
    }

    @Test
    void equalFaultsOfManyRowsAreToldOnceWithTheirNumber() {
        StringBuilder text = new StringBuilder("place,depth_m\n");
        for (int i = 0; i < 121; i++) text.append("bay,deep").append(i).append('\n');
        text.append("reef,-1\n");
        List<String> told = Read.strict(text.toString()).faults();
        assertEquals(2, told.size(), told.toString());
        assertEquals(
                "d.csv line 2: depth_m is \"deep0\", allowed is a number from 0 to 11000 m. Write it like 12.5, without its unit."
                        + " And 120 more like it: lines 3, 4, 5, 6 and so on.",
                told.get(0));
        assertTrue(told.get(1).startsWith("d.csv line 123: depth_m is \"-1\""), told.get(1));
    }

    @Test
    void aLenientTableNotesWhatItDoesNotUseAndLetsRowsEndEarly() {
        Read read = Read.lenient("place,depth_m,colour,note\nbay,1\nreef,2,red,calm\n");
        assertEquals(List.of("2 bay 1.0", "3 reef 2.0 calm"), read.rows());
        assertEquals(List.of("The column \"colour\" is not used."), read.notes());
        assertEquals(
                1,
                Read.lenient("place,depht_m\nbay,1\n").faults().stream()
                        .filter(line -> line.contains("Did you mean depth_m?"))
                        .count());
    }

    @Test
    void theHeadsOfAnyTableCanBeAskedFor() {
        assertEquals(
                List.of("time", "level_dbm"), Table.headsOf(SourceText.of("w.csv", "sep=;\n# log\nTime;Level dBm\n")));
        assertEquals(List.of(), Table.headsOf(SourceText.of("w.csv", "# nothing\n")));
    }

    @Test
    void anUndeclaredColumnIsADefect() {
        Table table = Table.of(SourceText.of("d.csv", "place,depth_m\nbay,1\n"), NEEDED, OPTIONAL, new Faults());
        assertThrows(IllegalArgumentException.class, () -> table.forEach(row -> row.text("colour")));
    }
}
