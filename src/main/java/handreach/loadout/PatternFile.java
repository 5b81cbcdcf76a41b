package handreach.loadout;

import handreach.input.Faults;
import handreach.input.NumberText;
import handreach.input.SourceText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** A user's own pattern: columns {@code elevation_deg,gain_dbi}, elevations increasing, the horizon among them. */
final class PatternFile {
    private static final String HEADER = "elevation_deg,gain_dbi";

    private final SourceText source;
    private final Faults faults = new Faults();
    private final List<double[]> rows = new ArrayList<>();

    private PatternFile(SourceText source) {
        this.source = source;
    }

    static ElevationPattern read(SourceText source) {
        PatternFile file = new PatternFile(source);
        file.readRows();
        file.faults.throwIfAny();
        return file.pattern();
    }

    private void readRows() {
        boolean headed = false;
        int number = 0;
        for (String line : source.lines()) {
            number++;
            String text = line.strip();
            if (text.isEmpty() || text.startsWith("#")) continue;
            if (!headed) {
                headed = true;
                if (!text.toLowerCase(Locale.ROOT).replace(" ", "").equals(HEADER))
                    fault(number, "the header is \"" + text + "\", it must be " + HEADER + ". Name the two columns.");
                continue;
            }
            readRow(number, text);
        }
        if (rows.size() < 3) fault(0, "has " + rows.size() + " usable rows, at least 3 are needed. Add elevations.");
        else checkHorizon();
    }

    private void readRow(int number, String text) {
        String[] cells = text.split(",", -1);
        if (cells.length != 2) {
            String hint = cells.length == 4 || text.contains(";")
                    ? "Write numbers with a point and part columns with a comma."
                    : "Give one elevation and one gain a row.";
            fault(number, "has " + cells.length + " columns, 2 are needed. " + hint);
            return;
        }
        OptionalDouble elevation = number(number, "elevation_deg", cells[0], -90, 90, "degrees");
        OptionalDouble gain = number(number, "gain_dbi", cells[1], -60, 30, "dBi");
        if (elevation.isEmpty() || gain.isEmpty()) return;
        double deg = elevation.getAsDouble();
        if (!rows.isEmpty() && deg <= rows.get(rows.size() - 1)[0]) {
            fault(
                    number,
                    "elevation_deg is " + cells[0].strip() + ", it must be above that of the row before."
                            + " Sort the rows and drop doubles.");
            return;
        }
        rows.add(new double[] {deg, gain.getAsDouble()});
    }

    private OptionalDouble number(int line, String column, String cell, double low, double high, String unit) {
        OptionalDouble value = NumberText.parse(cell);
        if (value.isPresent() && value.getAsDouble() >= low && value.getAsDouble() <= high) return value;
        fault(
                line,
                String.format(
                        Locale.ROOT,
                        "%s is \"%s\", allowed is a number from %.0f to %.0f %s. Correct it, or drop the row.",
                        column,
                        cell.strip(),
                        low,
                        high,
                        unit));
        return OptionalDouble.empty();
    }

    private void fault(int line, String text) {
        faults.add(source.name(), line, text);
    }

    private void checkHorizon() {
        if (rows.get(0)[0] > 0 || rows.get(rows.size() - 1)[0] < 0)
            fault(0, "does not reach the horizon, but levels over the control hold there. Add elevation 0.");
    }

    private ElevationPattern pattern() {
        double[] gains = new double[181];
        for (int i = 0; i < gains.length; i++) gains[i] = at(i - 90);
        List<String> notes = new ArrayList<>(List.of("Gain as the file states it."));
        double first = rows.get(0)[0];
        double last = rows.get(rows.size() - 1)[0];
        if (first > -90 || last < 90)
            notes.add(String.format(
                    Locale.ROOT, "Below %.0f° and above %.0f° the value at the end is held.", first, last));
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
