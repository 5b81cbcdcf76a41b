package handreach.propagation.radial;

import handreach.profile.Profile;
import handreach.profile.Zone;
import handreach.propagation.BlockedGround;
import handreach.propagation.march.CoveredMarch;
import handreach.terrain.Cover;
import java.util.Arrays;
import java.util.stream.Stream;

/**
 * Ground samples along one radial, in arrays that are used again for the next: sample 0 is the ground under the source. Whoever cuts
 * radials fills the arrays; walkers only read.
 *
 * <p>Heights are kept twice: as they are, and flattened for the earth's curvature (h − x²/2a), where rays are straight lines
 * whatever the far end is.
 */
public final class Radial {
    private static final Cover[] COVERS = Cover.values();
    private static final double[] REPRESENTATIVE_M = Arrays.stream(Cover.values())
            .mapToDouble(Cover::representativeHeightM)
            .toArray();

    int count;
    int known;
    double[] xKm = new double[0];
    double[] groundM = new double[0];
    double[] clutterM = new double[0];
    byte[] cover = new byte[0];
    private int parts = 1;
    private double[] dividedM = new double[0];
    double[] standingM = REPRESENTATIVE_M;
    /** No wood stands anywhere along it, and that is known without a look at the samples. */
    boolean isWoodless;

    /** What the arrays hold from end to end, when that is one cover; else -1. */
    private int evenCover = -1;

    double[] flatM = new double[0];
    BlockedGround flat = new BlockedGround(xKm, flatM);
    private double flattenedForKm;

    /** Makes room for this many samples. */
    public void size(int samples) {
        count = samples;
        parts = 1;
        flattenedForKm = 0;
        if (xKm.length >= samples) return;
        int room = samples + samples / 4 + 16;
        xKm = new double[room];
        groundM = new double[room];
        clutterM = new double[room];
        cover = new byte[room];
        evenCover = -1;
        flatM = new double[room];
        flat = new BlockedGround(xKm, flatM);
    }

    /** Room for heights between the samples, every interval in so many equal parts: those of the samples and all between, m. */
    public double[] divide(int into) {
        parts = into;
        int heights = (count - 1) * into + 1;
        if (dividedM.length < heights) dividedM = new double[heights + heights / 4];
        return dividedM;
    }

    /** Number of samples, known or not. */
    public int count() {
        return count;
    }

    /** Samples from here on are unknown, or are not to be looked at: the first void, or {@link #count}. */
    public int known() {
        return known;
    }

    public void knowUpTo(int samples) {
        known = samples;
    }

    /** Distances from the source, km; longer than {@link #count}, as all arrays are. */
    public double[] distancesKm() {
        return xKm;
    }

    /** Ground above sea level, m. */
    public double[] groundM() {
        return groundM;
    }

    /** Height of what stands there, m. */
    public double[] clutterM() {
        return clutterM;
    }

    /** Ordinals of the covers. */
    public byte[] cover() {
        return cover;
    }

    /** Says how high what stands on ground of each cover is, m, by its ordinal; the table is only read. */
    public void standing(double[] heightsM) {
        standingM = heightsM;
    }

    /** Puts one cover and its height on all samples. */
    public void coverEvenly(int ordinal, double heightM) {
        isWoodless = ordinal != Cover.WOODLAND.ordinal();
        if (evenCover == ordinal) return;
        evenCover = ordinal;
        Arrays.fill(cover, (byte) ordinal);
        Arrays.fill(clutterM, heightM);
    }

    /** The first samples as a profile, the last of them its far end, with the heights between them where there are such. */
    public Profile profile(int samples) {
        int last = samples - 1;
        Profile profile = profile(last, xKm[last], groundM[last], cover[last]);
        if (parts == 1) return profile;
        double[] heightsM = Arrays.copyOf(dividedM, last * parts + 1);
        return profile.divided(parts, heightsM::clone);
    }

    /** The first samples and a receiver behind them as a profile. */
    public Profile profile(int samples, double atKm, double onGroundM, int coverOrdinal) {
        int n = samples + 1;
        double[] distanceKm = Arrays.copyOf(xKm, n);
        double[] heightM = Arrays.copyOf(groundM, n);
        double[] standing = Arrays.copyOf(clutterM, n);
        Cover[] kind = new Cover[n];
        for (int i = 0; i < samples; i++) kind[i] = COVERS[cover[i]];
        distanceKm[samples] = atKm;
        heightM[samples] = onGroundM;
        standing[samples] = standingM[coverOrdinal];
        kind[samples] = COVERS[coverOrdinal];
        Zone[] zone = new Zone[n];
        Arrays.fill(zone, Zone.INLAND);
        return Profile.of(distanceKm, heightM, standing, kind, zone);
    }

    /** The source, one sample between, where there is one, and a receiver behind it. */
    Profile outline(int between, double atKm, double onGroundM, int coverOrdinal) {
        boolean isBetween = between > 0 && xKm[between] < atKm;
        int n = isBetween ? 3 : 2;
        double[] distanceKm = new double[n];
        double[] heightM = new double[n];
        double[] standing = new double[n];
        Cover[] kind = new Cover[n];
        Zone[] zone = new Zone[n];
        Arrays.fill(zone, Zone.INLAND);
        heightM[0] = groundM[0];
        standing[0] = clutterM[0];
        kind[0] = COVERS[cover[0]];
        if (isBetween) {
            distanceKm[1] = xKm[between];
            heightM[1] = groundM[between];
            standing[1] = clutterM[between];
            kind[1] = COVERS[cover[between]];
        }
        distanceKm[n - 1] = atKm;
        heightM[n - 1] = onGroundM;
        standing[n - 1] = standingM[coverOrdinal];
        kind[n - 1] = COVERS[coverOrdinal];
        return Profile.of(distanceKm, heightM, standing, kind, zone);
    }

    /** Heights of roofs that a receiver along it may stand among, m, each once. */
    double[] roofsM() {
        Stream<Cover> covers = evenCover < 0 ? Stream.of(Cover.values()) : Stream.of(Cover.values()[evenCover]);
        return covers.flatMapToDouble(kind -> Arrays.stream(CoveredMarch.roofsM(kind, standingM[kind.ordinal()])))
                .distinct()
                .toArray();
    }

    /** The cover differs from sample to sample, and is filled in one by one. */
    public void coverUnevenly() {
        isWoodless = false;
        evenCover = -1;
    }

    /** Flattens the known samples for an effective earth radius and notes the top of every block; once for a filling. */
    void flatten(double earthKm) {
        if (flattenedForKm == earthKm) return;
        flattenedForKm = earthKm;
        double curve = 500 / earthKm;
        for (int b = 0; b * BlockedGround.BLOCK < known; b++) {
            double top = Double.NEGATIVE_INFINITY;
            int end = Math.min(known, (b + 1) * BlockedGround.BLOCK);
            for (int i = b * BlockedGround.BLOCK; i < end; i++) {
                double level = groundM[i] - curve * xKm[i] * xKm[i];
                flatM[i] = level;
                if (level > top) top = level;
            }
            flat.top(b, top);
        }
    }
}
