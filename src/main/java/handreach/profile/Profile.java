package handreach.profile;

import handreach.terrain.Cover;
import java.util.Arrays;

/**
 * Ground along a path: n samples, from the first terminal (distance 0) to the last, distances strictly increasing.
 *
 * <p>Immutable. Reads by index cost one array access; the bulk reads return copies.
 */
public final class Profile {
    private final double[] distanceKm;
    private final double[] heightM;
    private final double[] clutterM;
    private final Cover[] cover;
    private final Zone[] zone;

    private Profile(double[] distanceKm, double[] heightM, double[] clutterM, Cover[] cover, Zone[] zone) {
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
    }

    public static Profile of(double[] distanceKm, double[] heightM, double[] clutterM, Cover[] cover, Zone[] zone) {
        return new Profile(distanceKm.clone(), heightM.clone(), clutterM.clone(), cover.clone(), zone.clone());
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

    /** The same ground without anything standing on it. */
    public Profile bare() {
        return of(distanceKm, heightM, new double[count()], cover, zone);
    }

    /** The first samples up to and including index {@code last}. */
    public Profile upTo(int last) {
        int n = last + 1;
        return new Profile(
                Arrays.copyOf(distanceKm, n),
                Arrays.copyOf(heightM, n),
                Arrays.copyOf(clutterM, n),
                Arrays.copyOf(cover, n),
                Arrays.copyOf(zone, n));
    }
}
