package handreach.loadout;

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
    private final List<String> notes;

    private ElevationPattern(String name, double[] gainDbi, List<String> notes) {
        this.name = name;
        this.gainDbi = gainDbi;
        this.notes = List.copyOf(notes);
    }

    static ElevationPattern sampled(String name, double[] gainDbi, List<String> notes) {
        if (gainDbi.length != COUNT) throw new IllegalArgumentException("a pattern has 181 values");
        for (double g : gainDbi) if (!Double.isFinite(g)) throw new IllegalArgumentException(name + " is not finite");
        return new ElevationPattern(name, gainDbi.clone(), notes);
    }

    /** The same to all sides. */
    public static ElevationPattern isotropic() {
        return new ElevationPattern("isotropic", new double[COUNT], List.of());
    }

    /** Pattern of a radiator of this length on this mounting. */
    public static ElevationPattern of(
            Radiator radiator, double lengthWavelengths, PatternMount mount, Frequency frequency) {
        return PatternModel.pattern(radiator, lengthWavelengths, mount, frequency);
    }

    /** Gain at an elevation, degrees above the horizon; beyond ±90 the value at the end. */
    public double gainDbi(double elevationDeg) {
        double at = elevationDeg + 90;
        if (!(at > 0)) return gainDbi[0];
        int i = (int) at;
        if (i >= COUNT - 1) return gainDbi[COUNT - 1];
        return gainDbi[i] + (at - i) * (gainDbi[i + 1] - gainDbi[i]);
    }

    /** Gain over that at the horizon, dB: what a path at this angle has over one at which a delta was measured. */
    public double overHorizonDb(double elevationDeg) {
        return gainDbi(elevationDeg) - gainDbi[90];
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
        return notes;
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
