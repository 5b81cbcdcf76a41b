package handreach.profile;

import handreach.terrain.Cover;
import java.util.Arrays;
import java.util.function.Supplier;

/**
 * Ground along a path: n samples, from the first terminal (distance 0) to the last, distances strictly increasing.
 *
 * <p>Where it was cut from tiles, more heights are to be had between the samples ({@link #dividedHeightsM}), for a model that goes along
 * every face of the ground.
 *
 * <p>Immutable. Reads by index cost one array access; the bulk reads return copies.
 */
public final class Profile {
    private final double[] distanceKm;
    private final double[] heightM;
    private final double[] clutterM;
    private final Cover[] cover;
    private final Zone[] zone;
    private final int parts;
    private final Supplier<double[]> divided;

    private Profile(
            double[] distanceKm,
            double[] heightM,
            double[] clutterM,
            Cover[] cover,
            Zone[] zone,
            int parts,
            Supplier<double[]> divided) {
        int n = distanceKm.length;
        if (n < 2) throw new IllegalArgumentException("a profile needs at least 2 samples, not " + n);
        if (heightM.length != n || clutterM.length != n || cover.length != n || zone.length != n)
            throw new IllegalArgumentException("columns of a profile differ in length");
        if (distanceKm[0] != 0) throw new IllegalArgumentException("a profile starts at distance 0");
        for (int i = 0; i < n; i++) {
            if (i > 0 && !(distanceKm[i] > distanceKm[i - 1]))
                throw new IllegalArgumentException("distances must increase, sample " + i);
            if (!Double.isFinite(distanceKm[i])
                    || !Double.isFinite(heightM[i])
                    || !(clutterM[i] >= 0 && clutterM[i] < 1000))
                throw new IllegalArgumentException("sample " + i + " is not a number, or its clutter is below 0");
        }
        this.distanceKm = distanceKm;
        this.heightM = heightM;
        this.clutterM = clutterM;
        this.cover = cover;
        this.zone = zone;
        this.parts = parts;
        this.divided = divided;
    }

    public static Profile of(double[] distanceKm, double[] heightM, double[] clutterM, Cover[] cover, Zone[] zone) {
        double[] own = heightM.clone();
        return new Profile(distanceKm.clone(), own, clutterM.clone(), cover.clone(), zone.clone(), 1, own::clone);
    }

    /**
     * The same with heights between its samples.
     *
     * @param into equal parts of every interval, between which heights are known
     * @param heightsM all those heights, the samples' own among them, m; asked for when they are wanted, a new array each time
     */
    public Profile divided(int into, Supplier<double[]> heightsM) {
        if (into < 1) throw new IllegalArgumentException("an interval in " + into + " parts");
        return new Profile(distanceKm, heightM, clutterM, cover, zone, into, heightsM);
    }

    /** Number of samples, at least 2. */
    public int count() {
        return distanceKm.length;
    }

    /** Distance from the first terminal, km. */
    public double distanceKm(int i) {
        return distanceKm[i];
    }

    /** Bare ground above sea level, m. */
    public double heightM(int i) {
        return heightM[i];
    }

    /** Height of what stands on the ground, m, not negative. */
    public double clutterM(int i) {
        return clutterM[i];
    }

    public Cover cover(int i) {
        return cover[i];
    }

    public Zone zone(int i) {
        return zone[i];
    }

    public double lengthKm() {
        return distanceKm[distanceKm.length - 1];
    }

    public double[] distancesKm() {
        return distanceKm.clone();
    }

    public double[] heightsM() {
        return heightM.clone();
    }

    /** Equal parts of every interval between which heights are known; 1 where none are known but the samples' own. */
    public int parts() {
        return parts;
    }

    /** Distances at which the intervals are divided, the samples' own among them, km. */
    public double[] dividedKm() {
        return Intervals.divided(distanceKm, parts);
    }

    /** Bare ground there, m above sea level. */
    public double[] dividedHeightsM() {
        double[] heights = divided.get();
        if (heights.length != (count() - 1) * parts + 1)
            throw new IllegalStateException(
                    heights.length + " heights for " + count() + " samples in " + parts + " parts");
        return heights;
    }

    /** The same ground without anything standing on it. */
    public Profile bare() {
        return new Profile(distanceKm, heightM, new double[count()], cover, zone, parts, divided);
    }

    /** The same with every sample so much higher, and the ground between them with its neighbours. */
    public Profile raised(double[] byM) {
        double[] raised = heightM.clone();
        for (int i = 0; i < raised.length; i++) raised[i] += byM[i];
        Supplier<double[]> between = () -> {
            double[] heights = divided.get();
            for (int i = 0; i < heights.length; i++) heights[i] += Intervals.at(i, byM, parts);
            return heights;
        };
        return new Profile(distanceKm, raised, clutterM, cover, zone, parts, between);
    }

    /** The first samples up to and including index {@code last}. */
    public Profile upTo(int last) {
        int n = last + 1;
        return new Profile(
                Arrays.copyOf(distanceKm, n),
                Arrays.copyOf(heightM, n),
                Arrays.copyOf(clutterM, n),
                Arrays.copyOf(cover, n),
                Arrays.copyOf(zone, n),
                parts,
                () -> Arrays.copyOf(divided.get(), last * parts + 1));
    }
}
