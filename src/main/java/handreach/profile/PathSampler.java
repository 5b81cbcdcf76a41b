package handreach.profile;

import handreach.geodesy.GeodesicLine;
import handreach.terrain.Cover;
import handreach.terrain.Elevation;
import handreach.terrain.LandCover;
import java.util.Objects;

/**
 * Cuts paths one after another into arrays that are used again. For one thread; {@link PathCut} gives the same samples as values.
 *
 * <p>After {@link #cut} the first {@code count} entries of the arrays belong to that path, until the next cut; they are lent, not
 * given. Samples lie at equal distances from terminal to terminal, no farther apart than half of the finest posts along the path.
 * At the end samples the clutter is what stands around the person, who stands on the ground under it.
 */
final class PathSampler {
    private static final double LONGEST_M = 1_000_000;
    private static final double PROBE_EVERY_M = 1000;
    private static final int MOST_PROBES = 200;
    private static final int FEWEST_SAMPLES = 3;

    private final Elevation elevation;
    private final LandCover landCover;
    private final double[] clutterOf = new double[Cover.values().length];
    private final double[] heldOf = new double[Cover.values().length];
    private double[] latitudeDeg = {};
    private double[] longitudeDeg = {};
    private double[] distanceKm = {};
    private double[] heightM = {};
    private double[] clutterM = {};
    private boolean[] isVoid = {};
    private Cover[] cover = {};
    private int count;

    public PathSampler(Elevation elevation, LandCover landCover, CutSettings settings) {
        this.elevation = Objects.requireNonNull(elevation);
        this.landCover = Objects.requireNonNull(landCover);
        for (Cover c : Cover.values()) {
            clutterOf[c.ordinal()] = settings.clutterM(c);
            heldOf[c.ordinal()] = settings.heldM(c);
        }
    }

    /**
     * Cuts the ground along a line.
     *
     * @shape one line in, the number of samples out; the arrays are filled; O(samples)
     * @unit km and m
     * @valid up to 1000 km, the ends at least 1 m apart; else IllegalArgumentException
     * @error positions within 0.2 mm of the geodesic
     * @source spacing of half a cell: common practice, no source
     */
    int cut(GeodesicLine line) {
        check(line);
        return sample(line, finestPostsM(line) / 2);
    }

    private static void check(GeodesicLine line) {
        if (!(line.lengthM() >= 1 && line.lengthM() <= LONGEST_M))
            throw new IllegalArgumentException("a path of " + line.lengthM() + " m, 1 m to 1000 km can be cut");
    }

    private double finestPostsM(GeodesicLine line) {
        int probes = (int) Math.min(MOST_PROBES, 2 + line.lengthM() / PROBE_EVERY_M);
        reserve(probes);
        line.fill(probes, latitudeDeg, longitudeDeg);
        double finest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < probes; i++)
            finest =
                    Math.min(finest, elevation.postSpacingM(latitudeDeg[i], longitudeDeg[i], CutSettings.USUAL_POST_M));
        return finest;
    }

    private int sample(GeodesicLine line, double atMostM) {
        int steps = (int) Math.min(CutSettings.MOST_SAMPLES, Math.ceil(line.lengthM() / atMostM));
        count = Math.max(FEWEST_SAMPLES, steps + 1);
        reserve(count);
        line.fill(count, latitudeDeg, longitudeDeg);
        elevation.heights(latitudeDeg, longitudeDeg, count, heightM, isVoid);
        landCover.covers(latitudeDeg, longitudeDeg, count, cover);
        double stepKm = line.lengthM() / (count - 1) / 1000;
        for (int i = 0; i < count; i++) {
            int kind = cover[i].ordinal();
            distanceKm[i] = i * stepKm;
            clutterM[i] = clutterOf[kind];
            if (!isVoid[i]) heightM[i] -= heldOf[kind];
        }
        distanceKm[count - 1] = line.lengthM() / 1000;
        return count;
    }

    private void reserve(int wanted) {
        if (wanted <= latitudeDeg.length) return;
        int size = Math.max(wanted, latitudeDeg.length * 3 / 2);
        latitudeDeg = new double[size];
        longitudeDeg = new double[size];
        distanceKm = new double[size];
        heightM = new double[size];
        clutterM = new double[size];
        isVoid = new boolean[size];
        cover = new Cover[size];
    }

    /** Samples of the last path. */
    public int count() {
        return count;
    }

    public double[] distanceKm() {
        return distanceKm;
    }

    /** Bare ground, m above the tile's datum; where void 0, to be looked at only through {@link #isVoid}. */
    public double[] heightM() {
        return heightM;
    }

    /** Height of what stands on the ground, m; at the ends around the person, not under them. */
    public double[] clutterM() {
        return clutterM;
    }

    public boolean[] isVoid() {
        return isVoid;
    }

    public Cover[] cover() {
        return cover;
    }

    public double[] latitudeDeg() {
        return latitudeDeg;
    }

    public double[] longitudeDeg() {
        return longitudeDeg;
    }
}
