package handreach.reach;

import handreach.profile.Profile;
import handreach.profile.Zone;
import handreach.propagation.march.CoveredMarch;
import handreach.terrain.Cover;
import java.util.Arrays;
import java.util.stream.Stream;

/**
 * Ground samples along one radial, in arrays that are used again for the next: sample 0 is the ground under the source.
 *
 * <p>Heights are kept twice: as they are, and flattened for the earth's curvature (h − x²/2a), where rays are straight lines
 * whatever the far end is. Blocks of samples remember their highest flattened point, so that a search for the worst clearance
 * may skip what lies deep.
 */
final class Ray {
    static final int BLOCK = 32;
    private static final double CLEAR_NU = -0.78;
    private static final Cover[] COVERS = Cover.values();
    private static final double[] REPRESENTATIVE_M = Arrays.stream(Cover.values())
            .mapToDouble(Cover::representativeHeightM)
            .toArray();

    int count;
    /** Samples from here on are unknown: the first void, or {@code count}. */
    int known;
    /** Samples end before ground too steep for the march, not before a void. */
    boolean endsAtSteepGround;

    double[] xKm = new double[0];
    double[] groundM = new double[0];
    double[] clutterM = new double[0];
    byte[] cover = new byte[0];
    /** Height of what stands on ground of each cover, m, by its ordinal; the sampler's own table, only read. */
    double[] standingM = REPRESENTATIVE_M;
    /** No wood stands anywhere along it, and that is known without a look at the samples. */
    boolean isWoodless;

    /** What the arrays hold from end to end, when that is one cover; else -1. */
    private int evenCover = -1;

    double[] flatM = new double[0];
    private double flattenedForKm;
    private double[] blockTopM = new double[0];

    /** Makes room for this many samples. */
    void size(int samples) {
        count = samples;
        flattenedForKm = 0;
        if (xKm.length >= samples) return;
        int room = samples + samples / 4 + 16;
        xKm = new double[room];
        groundM = new double[room];
        clutterM = new double[room];
        cover = new byte[room];
        evenCover = -1;
        flatM = new double[room];
        blockTopM = new double[room / BLOCK + 1];
    }

    /** Puts one cover and its height on all samples. */
    void coverEvenly(int ordinal, double heightM) {
        isWoodless = ordinal != Cover.WOODLAND.ordinal();
        if (evenCover == ordinal) return;
        evenCover = ordinal;
        Arrays.fill(cover, (byte) ordinal);
        Arrays.fill(clutterM, heightM);
    }

    /** The first samples as a profile, the last of them its far end. */
    Profile profile(int samples) {
        int last = samples - 1;
        return profile(last, xKm[last], groundM[last], cover[last]);
    }

    /** The first samples and a receiver behind them as a profile. */
    Profile profile(int samples, double atKm, double onGroundM, int coverOrdinal) {
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

    /** Heights of roofs that a receiver along it may stand among, m, each once. */
    double[] roofsM() {
        Stream<Cover> covers = evenCover < 0 ? Stream.of(Cover.values()) : Stream.of(Cover.values()[evenCover]);
        return covers.flatMapToDouble(kind -> Arrays.stream(CoveredMarch.roofsM(kind, standingM[kind.ordinal()])))
                .distinct()
                .toArray();
    }

    /** The cover differs from sample to sample, and is filled in one by one. */
    void coverUnevenly() {
        isWoodless = false;
        evenCover = -1;
    }

    /** Flattens the known samples for an effective earth radius and notes the top of every block; once for a filling. */
    void flatten(double earthKm) {
        if (flattenedForKm == earthKm) return;
        flattenedForKm = earthKm;
        double curve = 500 / earthKm;
        for (int b = 0; b * BLOCK < known; b++) {
            double top = Double.NEGATIVE_INFINITY;
            int end = Math.min(known, (b + 1) * BLOCK);
            for (int i = b * BLOCK; i < end; i++) {
                double flat = groundM[i] - curve * xKm[i] * xKm[i];
                flatM[i] = flat;
                if (flat > top) top = flat;
            }
            blockTopM[b] = top;
        }
    }

    /**
     * Largest ν of samples {@code from} to {@code to} − 1 against the straight line between two points in flattened coordinates;
     * −0.78 when none comes nearer than that.
     *
     * <p>With ν = H √(0.002 D/(λ p q)) the comparison needs no root: the signed square of ν/√(0.002 D/λ) orders alike. Blocks are
     * taken from the middle outwards, where over even ground the worst lies.
     */
    double worstClearNu(int from, int to, double x1, double y1, double x2, double y2, double wavelengthM) {
        double span = x2 - x1;
        double slope = (y2 - y1) / span;
        double scale = 0.002 * span / wavelengthM;
        // Largest signed H²/(pq) so far; H is negative, so is the figure.
        double clear = -(CLEAR_NU * CLEAR_NU) / scale;
        double worst = clear;
        if (from >= to) return CLEAR_NU;
        int first = from / BLOCK;
        int last = (to - 1) / BLOCK;
        int middle = (first + last) >>> 1;
        for (int step = 0; ; step++) {
            int left = middle - step;
            int right = middle + 1 + step;
            if (left < first && right > last) break;
            if (left >= first) worst = scan(left, from, to, x1, y1, x2, slope, worst);
            if (right <= last) worst = scan(right, from, to, x1, y1, x2, slope, worst);
        }
        // The root would lift a clear ray by a rounding error over the step that J(ν) takes at −0.78.
        if (worst <= clear) return CLEAR_NU;
        return worst < 0 ? -Math.sqrt(-worst * scale) : Math.sqrt(worst * scale);
    }

    private double scan(int block, int from, int to, double x1, double y1, double x2, double slope, double worst) {
        int start = Math.max(from, block * BLOCK);
        int end = Math.min(to, (block + 1) * BLOCK);
        double lineStart = y1 + slope * (xKm[start] - x1);
        double lineEnd = y1 + slope * (xKm[end - 1] - x1);
        double above = blockTopM[block] - Math.min(lineStart, lineEnd);
        if (above < 0) {
            double p1 = xKm[start] - x1;
            double p2 = xKm[end - 1] - x1;
            double half = (x2 - x1) / 2;
            double p = p2 < half ? p2 : p1 > half ? p1 : half;
            if (-above * above <= worst * p * (x2 - x1 - p)) return worst;
        }
        for (int i = start; i < end; i++) {
            double p = xKm[i] - x1;
            double h = flatM[i] - y1 - slope * p;
            double signedSquare = h * Math.abs(h);
            double product = p * (x2 - xKm[i]);
            if (signedSquare > worst * product) worst = signedSquare / product;
        }
        return worst;
    }
}
