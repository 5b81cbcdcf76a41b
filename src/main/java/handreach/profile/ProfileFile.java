package handreach.profile;

import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.Keyword;
import handreach.input.Range;
import handreach.input.SourceText;
import handreach.input.Table;
import handreach.input.TableRow;
import handreach.terrain.Cover;
import handreach.terrain.Elevation;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A profile as a table: {@code distance_km,height_m} and, if wanted, {@code clutter_m} and {@code zone} (inland, coastal, sea).
 * Distances increase strictly from 0.
 */
public final class ProfileFile {
    private static final Keyword<Zone> ZONE =
            Keyword.of(List.of(Zone.values()), zone -> zone.name().toLowerCase(Locale.ROOT));
    /** Samples closer than a millimetre tell nothing, and a slope between them leaves the range of numbers. */
    private static final double CLOSEST_KM = 1e-6;

    private static final Range DISTANCE = new Range("distance_km", 0, 20_100, "km");
    private static final Range HEIGHT = new Range("height_m", Elevation.LOWEST_M, Elevation.HIGHEST_M, "m");
    private static final Range CLUTTER = new Range("clutter_m", 0, 150, "m");
    private static final int MOST_SAMPLES = 1_000_000;

    private final SourceText source;
    private final Faults faults = new Faults();
    private int count;
    private final double[] distanceKm;
    private final double[] heightM;
    private final double[] clutterM;
    private final Cover[] cover;
    private final Zone[] zone;

    private ProfileFile(SourceText source) {
        this.source = source;
        int atMost = source.lines().size();
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
     * @valid 2 to 1 000 000 samples; heights as {@link Elevation#LOWEST_M} says, clutter 0 to 150 m; else {@link InputFault} with all faults
     * @error numbers as written
     * @source no formula; the format is ours
     */
    public static Profile read(Path file) {
        return read(SourceText.readTable(file));
    }

    public static Profile read(SourceText source) {
        int lines = source.lines().size();
        if (lines > MOST_SAMPLES + 10_000)
            throw new InputFault(
                    source.name(),
                    0,
                    "has " + lines + " lines, at most " + MOST_SAMPLES + " samples are read. Thin it out.");
        ProfileFile file = new ProfileFile(source);
        Table.of(source, List.of("distance_km", "height_m"), List.of("clutter_m", "zone"), file.faults)
                .forEach(file::sample);
        return file.profile();
    }

    private void sample(TableRow row) {
        OptionalDouble distance = row.requiredNumber(DISTANCE);
        OptionalDouble height = row.requiredNumber(HEIGHT);
        OptionalDouble clutter = row.number(CLUTTER);
        Zone where = row.word("zone", ZONE).orElse(Zone.INLAND);
        if (distance.isEmpty()) return;
        double km = distance.getAsDouble();
        if (count == 0 && km != 0)
            row.fault(
                    "distance_km",
                    "begins at \"" + row.text("distance_km")
                            + "\", but the first sample is at 0. Count from the first terminal.");
        if (count > 0 && km <= distanceKm[count - 1])
            row.fault(
                    "distance_km",
                    "is \"" + row.text("distance_km") + "\" after \"" + distanceKm[count - 1]
                            + "\", but distances must increase. Sort the rows, or drop the repeated one.");
        else if (count > 0 && km - distanceKm[count - 1] < CLOSEST_KM)
            row.fault(
                    "distance_km",
                    "is \"" + row.text("distance_km") + "\", less than a millimetre after \"" + distanceKm[count - 1]
                            + "\". Check the unit, or drop the row.");
        distanceKm[count] = km;
        heightM[count] = height.orElse(0);
        clutterM[count] = clutter.orElse(0);
        zone[count] = where;
        cover[count] = where == Zone.SEA ? Cover.WATER : Cover.OPEN;
        count++;
    }

    private Profile profile() {
        if (faults.isEmpty() && count < 2)
            faults.add(
                    source.name(),
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
