package handreach.loadout;

import handreach.input.Faults;
import handreach.input.Range;
import handreach.input.SourceText;
import handreach.input.Table;
import handreach.input.TableRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** A user's own pattern: columns {@code elevation_deg} and {@code gain_dbi}, elevations increasing, the horizon among them. */
final class PatternFile {
    private static final Range ELEVATION = new Range("elevation_deg", -90, 90, "degrees");
    private static final Range GAIN = new Range("gain_dbi", -60, 30, "dBi");

    private final SourceText source;
    private final Faults faults = new Faults();
    private final List<double[]> rows = new ArrayList<>();

    private PatternFile(SourceText source) {
        this.source = source;
    }

    static ElevationPattern read(SourceText source) {
        PatternFile file = new PatternFile(source);
        Table table = Table.of(source, List.of("elevation_deg", "gain_dbi"), List.of(), file.faults);
        file.faults.throwIfAny();
        table.forEach(file::row);
        file.checkRows();
        file.faults.throwIfAny();
        return file.pattern();
    }

    private void row(TableRow row) {
        OptionalDouble elevation = row.requiredNumber(ELEVATION);
        OptionalDouble gain = row.requiredNumber(GAIN);
        if (elevation.isEmpty() || gain.isEmpty()) return;
        double deg = elevation.getAsDouble();
        if (!rows.isEmpty() && deg <= rows.get(rows.size() - 1)[0])
            row.fault(
                    "elevation_deg",
                    "is \"" + row.text("elevation_deg")
                            + "\", it must be above that of the row before. Sort the rows and drop doubles.");
        else rows.add(new double[] {deg, gain.getAsDouble()});
    }

    private void checkRows() {
        if (rows.size() < 3) fault("has " + rows.size() + " usable rows, at least 3 are needed. Add elevations.");
        else if (rows.get(0)[0] > 0 || rows.get(rows.size() - 1)[0] < 0)
            fault("does not reach the horizon, but levels over the control hold there. Add elevation 0.");
    }

    private void fault(String text) {
        faults.add(source.name(), 0, text);
    }

    private ElevationPattern pattern() {
        double[] gains = new double[181];
        for (int i = 0; i < gains.length; i++) gains[i] = at(i - 90);
        List<PatternNote> notes = new ArrayList<>(List.of(PatternNote.basis("Gain as the file states it.")));
        double first = rows.get(0)[0];
        double last = rows.get(rows.size() - 1)[0];
        if (first > -90 || last < 90)
            notes.add(PatternNote.warning(String.format(
                    Locale.ROOT, "Below %.0f° and above %.0f° the value at the end is held.", first, last)));
        return ElevationPattern.sampled(source.name(), gains, notes);
    }

    private double at(double deg) {
        double[] before = rows.get(0);
        if (deg <= before[0]) return before[1];
        for (double[] row : rows) {
            if (deg <= row[0]) return before[1] + (row[1] - before[1]) * (deg - before[0]) / (row[0] - before[0]);
            before = row;
        }
        return before[1];
    }
}
