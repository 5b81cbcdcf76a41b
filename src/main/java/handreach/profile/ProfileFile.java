package handreach.profile;

import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.SourceText;
import handreach.terrain.Cover;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A profile as a table: {@code distance_km,height_m} and, if wanted, {@code clutter_m} and {@code zone} (inland, coastal, sea).
 * Lines that begin with # and blank lines are passed over; the header is required; distances increase strictly from 0.
 */
public final class ProfileFile {
    private static final List<String> COLUMNS = List.of("distance_km", "height_m", "clutter_m", "zone");
    private static final int MOST_SAMPLES = 1_000_000;
    private static final int MOST_FAULTS = 200;

    private final String name;
    private final Faults faults = new Faults();
    private int faultCount;
    private int[] columnOf;
    private int columns;
    private int count;
    private final double[] distanceKm;
    private final double[] heightM;
    private final double[] clutterM;
    private final Cover[] cover;
    private final Zone[] zone;

    private ProfileFile(String name, int atMost) {
        this.name = name;
        distanceKm = new double[atMost];
        heightM = new double[atMost];
        clutterM = new double[atMost];
        cover = new Cover[atMost];
        zone = new Zone[atMost];
    }

    /**
     * Reads a profile.
     *
     * @shape file in, profile out
     * @unit km, m above sea level, m above ground
     * @valid 2 to 1 000 000 samples; heights −12000 to 9000 m, clutter 0 to 150 m; else {@link InputFault} with all faults
     * @error numbers as written
     * @source no formula; the format is ours
     */
    public static Profile read(Path file) {
        return read(SourceText.read(file));
    }

    public static Profile read(SourceText source) {
        List<String> lines = source.lines();
        if (lines.size() > MOST_SAMPLES + 10_000)
            throw new InputFault(
                    source.name(),
                    0,
                    "has " + lines.size() + " lines, at most " + MOST_SAMPLES + " samples are read. Thin it out.");
        ProfileFile file = new ProfileFile(source.name(), lines.size());
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (line.isBlank() || line.startsWith("#")) continue;
            String[] cells = line.split(",", -1);
            if (file.columnOf == null) file.header(i + 1, line, cells);
            else file.row(i + 1, line, cells);
        }
        return file.profile();
    }

    private void header(int line, String text, String[] cells) {
        columnOf = new int[COLUMNS.size()];
        Arrays.fill(columnOf, -1);
        columns = cells.length;
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < cells.length; i++) {
            String title = unquoted(cells[i]).toLowerCase(Locale.ROOT);
            int known = COLUMNS.indexOf(title);
            if (known < 0)
                throw new InputFault(
                        name,
                        line,
                        "column '" + unquoted(cells[i]) + "' is not known; the columns are "
                                + String.join(", ", COLUMNS) + "." + NearestWord.hint(title, COLUMNS)
                                + (text.contains(";")
                                        ? " Part the columns by commas, not semicolons."
                                        : " The first line must be the header."));
            if (!seen.add(title))
                throw new InputFault(name, line, "column " + title + " occurs twice. Keep one of them.");
            columnOf[known] = i;
        }
        for (int k = 0; k < 2; k++)
            if (columnOf[k] < 0)
                throw new InputFault(name, line, "column " + COLUMNS.get(k) + " is missing. Add it to the header.");
    }

    private void row(int line, String text, String[] cells) {
        if (cells.length != columns) {
            fault(
                    line,
                    "has " + cells.length + " values, the header has " + columns + " columns."
                            + (text.contains(";")
                                    ? " Part the values by commas, not semicolons."
                                    : " Decimal signs must be points."));
            return;
        }
        double distance = number(line, cells, 0, 0, 20_100);
        if (count == 0 && distance != 0 && !Double.isNaN(distance))
            fault(
                    line,
                    "distance_km begins at " + text(cells, 0)
                            + ", but the first sample is at 0. Count from the first terminal.");
        if (count > 0 && distance <= distanceKm[count - 1])
            fault(
                    line,
                    "distance_km is " + text(cells, 0) + " after " + distanceKm[count - 1]
                            + ", but distances must increase. Sort the rows, or drop the repeated one.");
        Zone where = zone(line, cells);
        double height = number(line, cells, 1, -12_000, 9_000);
        double clutter = columnOf[2] < 0 || text(cells, 2).isEmpty() ? 0 : number(line, cells, 2, 0, 150);
        if (Double.isNaN(distance)) return;
        distanceKm[count] = distance;
        heightM[count] = height;
        clutterM[count] = clutter;
        zone[count] = where;
        cover[count] = where == Zone.SEA ? Cover.WATER : Cover.OPEN;
        count++;
    }

    private double number(int line, String[] cells, int column, double least, double most) {
        String typed = text(cells, column);
        var value = NumberText.parse(typed);
        String title = COLUMNS.get(column);
        if (value.isEmpty()) {
            fault(
                    line,
                    title + " is '" + typed + "', a number is expected."
                            + (typed.isEmpty() ? " Give a value, or drop the row." : " Write it like 12.5."));
            return Double.NaN;
        }
        double number = value.getAsDouble();
        if (number < least || number > most) {
            fault(
                    line,
                    String.format(
                            Locale.ROOT,
                            "%s is %s, allowed is %.0f to %.0f. Check unit and column order.",
                            title,
                            typed,
                            least,
                            most));
            return column == 0 ? number : Double.NaN;
        }
        return number;
    }

    private Zone zone(int line, String[] cells) {
        if (columnOf[3] < 0 || text(cells, 3).isEmpty()) return Zone.INLAND;
        String typed = text(cells, 3).toLowerCase(Locale.ROOT);
        for (Zone known : Zone.values())
            if (known.name().toLowerCase(Locale.ROOT).equals(typed)) return known;
        fault(
                line,
                "zone is '" + typed + "', allowed is inland, coastal or sea."
                        + NearestWord.hint(typed, List.of("inland", "coastal", "sea")));
        return Zone.INLAND;
    }

    private String text(String[] cells, int column) {
        return unquoted(cells[columnOf[column]]);
    }

    private static String unquoted(String cell) {
        String t = cell.strip();
        return t.length() >= 2 && t.startsWith("\"") && t.endsWith("\"")
                ? t.substring(1, t.length() - 1).strip()
                : t;
    }

    private void fault(int line, String text) {
        faultCount++;
        if (faultCount <= MOST_FAULTS) faults.add(name, line, text);
    }

    private Profile profile() {
        if (columnOf == null)
            throw new InputFault(name, 0, "is empty; the first line must be the header distance_km,height_m. Add it.");
        if (faultCount > MOST_FAULTS)
            faults.add(
                    name,
                    0,
                    "has " + (faultCount - MOST_FAULTS)
                            + " more faults of these kinds. Mend the first ones and try again.");
        if (faults.isEmpty() && count < 2)
            faults.add(
                    name,
                    0,
                    "has " + count + " sample" + (count == 1 ? "" : "s") + ", a profile needs at least 2. Add rows.");
        faults.throwIfAny();
        return Profile.of(
                Arrays.copyOf(distanceKm, count),
                Arrays.copyOf(heightM, count),
                Arrays.copyOf(clutterM, count),
                Arrays.copyOf(cover, count),
                Arrays.copyOf(zone, count));
    }
}
