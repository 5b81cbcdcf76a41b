package handreach.loadout;

import handreach.input.SourceText;
import handreach.units.Frequency;
import java.util.Arrays;
import java.util.List;

/**
 * Gain of an antenna over elevation, mean over azimuth, one value a degree from −90 to 90, linear in decibels between.
 *
 * <p>Immutable; a read is two array accesses.
 */
public final class ElevationPattern {
    private static final int COUNT = 181;
    private final String name;
    private final double[] gainDbi;
    private final List<PatternNote> notes;

    private ElevationPattern(String name, double[] gainDbi, List<PatternNote> notes) {
        this.name = name;
        this.gainDbi = gainDbi;
        this.notes = List.copyOf(notes);
    }

    static ElevationPattern sampled(String name, double[] gainDbi, List<PatternNote> notes) {
        if (gainDbi.length != COUNT) throw new IllegalArgumentException("a pattern has 181 values");
        for (double g : gainDbi) if (!Double.isFinite(g)) throw new IllegalArgumentException(name + " is not finite");
        return new ElevationPattern(name, gainDbi.clone(), notes);
    }

    ElevationPattern with(List<PatternNote> otherNotes) {
        return new ElevationPattern(name, gainDbi, otherNotes);
    }

    /**
     * Reads a user's own pattern.
     *
     * @shape  n rows in, one pattern out
     * @unit   columns {@code elevation_deg} (−90 to 90, increasing, the horizon within) and {@code gain_dbi}
     * @valid  3 rows and more; beyond the rows the value at the end is held; anything wrong: InputFault with all faults
     * @error  straight in decibels between rows, sampled each degree
     * @source the user's file
     */
    public static ElevationPattern read(SourceText source) {
        return PatternFile.read(source);
    }

    /**
     * Pattern of a radiator of this length on this mounting.
     *
     * @shape  a length and a frequency in, 181 values out; interpolation in tables; pure
     * @unit   length in wavelengths: from the base up, and end to end for the dipole and for the end-fed half-wave in free space;
     *     in free space the others are two such arms fed in the middle; result dBi
     * @valid  lengths to 1 wavelength and 70 to 1000 MHz on the chassis (a loaded whip to 0.24 and 910 MHz); beyond, formula or end of table,
     *     with a note; not a number, not above 0 or above 4 wavelengths: IllegalArgumentException
     * @error  within 0.3 dB (found: 0.12) of the method-of-moments code down to 10 dB below the maximum, for the wire thickness of the
     *     tables; on wires beyond half a wavelength another thickness moves the dips between lobes by 1 to 2 dB, the main lobe
     *     hardly; nulls are filled to 15 dB below the maximum
     * @source tables made with a general method-of-moments code, see src/test/reference/pattern_nec.py
     */
    public static ElevationPattern of(
            Radiator radiator, double lengthWavelengths, PatternMount mount, Frequency frequency) {
        return PatternModel.pattern(radiator, lengthWavelengths, mount, frequency);
    }

    /**
     * Gain at an elevation.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   degrees above the horizon; result dBi
     * @valid  every number; beyond ±90 the value at the end
     * @error  straight in decibels between whole degrees
     * @source linear interpolation; the values are those of {@link #of} or {@link #read}
     */
    public double gainDbi(double elevationDeg) {
        double at = elevationDeg + 90;
        if (!(at > 0)) return gainDbi[0];
        int i = (int) at;
        if (i >= COUNT - 1) return gainDbi[COUNT - 1];
        return gainDbi[i] + (at - i) * (gainDbi[i + 1] - gainDbi[i]);
    }

    public double maxGainDbi() {
        return Arrays.stream(gainDbi).max().orElseThrow();
    }

    /** Elevation of the greatest gain, degrees; of equal ones the nearest to the horizon. */
    public double maxElevationDeg() {
        int best = 90;
        for (int d = 1; d <= 90; d++) {
            if (gainDbi[90 + d] > gainDbi[best]) best = 90 + d;
            if (gainDbi[90 - d] > gainDbi[best]) best = 90 - d;
        }
        return best - 90;
    }

    /**
     * The pattern of the antenna leaning towards the path by this angle: a path at the horizon then leaves at minus this angle in
     * the antenna's own frame.
     */
    public ElevationPattern tilted(double towardsPathDeg) {
        if (towardsPathDeg == 0) return this;
        double[] g = new double[COUNT];
        for (int i = 0; i < COUNT; i++) g[i] = gainDbi(folded(i - 90 + towardsPathDeg));
        return new ElevationPattern(name + ", tilted " + towardsPathDeg + "°", g, notes);
    }

    private static double folded(double elevationDeg) {
        if (elevationDeg > 90) return 180 - elevationDeg;
        return elevationDeg < -90 ? -180 - elevationDeg : elevationDeg;
    }

    public String name() {
        return name;
    }

    /** What the gain includes, and warnings such as that the whip squints up. */
    public List<String> notes() {
        return notes.stream().map(PatternNote::words).toList();
    }

    /** Of the notes those that ask for heed. */
    public List<String> warnings() {
        return notes.stream()
                .filter(PatternNote::isWarning)
                .map(PatternNote::words)
                .toList();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ElevationPattern p
                && p.name.equals(name)
                && Arrays.equals(p.gainDbi, gainDbi)
                && p.notes.equals(notes);
    }

    @Override
    public int hashCode() {
        return 31 * name.hashCode() + Arrays.hashCode(gainDbi);
    }

    @Override
    public String toString() {
        return name;
    }
}
