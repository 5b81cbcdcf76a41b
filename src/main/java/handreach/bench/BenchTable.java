package handreach.bench;

import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.input.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A bench file as a table: declarations above the column heads, then readings, long or wide. Collects all faults. */
final class BenchTable {
    private BenchTable() {}

    static BenchFile read(SourceText source) {
        Faults faults = new Faults();
        List<String> notes = new ArrayList<>();
        if (source.isFallback())
            notes.add("The file is not UTF-8 and was read as Windows code page 1252: check letters with accents.");
        BenchHeads heads = BenchHeads.of(Table.headsOf(source));
        Table table = Table.lenient(source, heads.needed(), heads.optional(), heads::columnOf, faults, notes::add);
        heads.faults().forEach(table::headFault);
        Declarations declarations =
                new DeclarationReader(source.name(), faults, notes).read(source.lines(), table.linesAboveHead());
        RowReader reader = new RowReader(table, heads, notes);
        List<Reading> readings =
                heads.isWide() ? wide(table, heads, declarations, reader, notes) : oneARow(table, reader);
        reader.finish();
        faults.throwIfAny();
        if (readings.isEmpty())
            throw new InputFault(
                    source.name(),
                    table.linesAboveHead() + 1,
                    "has column heads but no reading yet. Fill in the column of values and save the file again; rows that stay empty are left out.");
        return new BenchFile(source.name(), readings, declarations, notes);
    }

    private static List<Reading> oneARow(Table table, RowReader reader) {
        List<Reading> readings = new ArrayList<>();
        table.forEach(row -> reader.read(row).ifPresent(readings::add));
        return readings;
    }

    /** Column by column, which is turn by turn, unless the file says that antennas were read one after another. */
    private static List<Reading> wide(
            Table table, BenchHeads heads, Declarations declarations, RowReader reader, List<String> notes) {
        List<List<Reading>> rows = new ArrayList<>();
        List<List<Reading>> turns = new ArrayList<>();
        for (int i = 0; i < heads.trials().size(); i++) turns.add(new ArrayList<>());
        table.forEach(row -> {
            List<Reading> all = new ArrayList<>();
            for (int i = 0; i < heads.trials().size(); i++) {
                int turn = i;
                reader.read(row, heads.trials().get(i)).ifPresent(reading -> {
                    all.add(reading);
                    turns.get(turn).add(reading);
                });
            }
            rows.add(all);
        });
        boolean isInBlocks = declarations.order().equals(Optional.of(Declarations.TrialOrder.BLOCKS));
        if (declarations.order().isEmpty())
            notes.add(
                    "One column a trial: each column is taken as one turn through the antennas, top to bottom. If each antenna was"
                            + " read to the end before the next, declare # order = blocks.");
        return (isInBlocks ? rows : turns).stream().flatMap(List::stream).toList();
    }
}
