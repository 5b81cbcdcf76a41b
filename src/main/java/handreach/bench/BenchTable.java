package handreach.bench;

import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.input.Table;
import java.util.ArrayList;
import java.util.List;

/** A bench file as a table: declarations above the column heads, one reading a row. Collects all faults. */
final class BenchTable {
    static final List<String> NEEDED = List.of("antenna", "mount", "quantity", "value", "unit");
    private static final List<String> OPTIONAL = List.of("frequency_mhz", "trial", "note");

    private BenchTable() {}

    static BenchFile read(SourceText source) {
        Faults faults = new Faults();
        List<String> notes = new ArrayList<>();
        if (source.isFallback())
            notes.add("The file is not UTF-8 and was read as Windows code page 1252: check letters with accents.");
        Table table = Table.lenient(source, NEEDED, OPTIONAL, faults, notes::add);
        Declarations declarations =
                new DeclarationReader(source.name(), faults, notes).read(source.lines(), table.linesAboveHead());
        List<Reading> readings = new ArrayList<>();
        RowReader reader = new RowReader(table, notes);
        table.forEach(row -> reader.read(row).ifPresent(readings::add));
        reader.finish();
        faults.throwIfAny();
        if (readings.isEmpty())
            throw new InputFault(
                    source.name(),
                    table.linesAboveHead() + 1,
                    "has column heads but no reading. Add one reading a row.");
        return new BenchFile(source.name(), readings, declarations, notes);
    }
}
