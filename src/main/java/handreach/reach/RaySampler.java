package handreach.reach;

import handreach.profile.CutSettings;
import handreach.profile.Intervals;
import handreach.propagation.radial.Radial;
import handreach.terrain.Cover;
import java.util.Arrays;

/** Reads the ground along radials and at cells into arrays that are used again. One per thread. */
final class RaySampler {
    private static final double PROBE_EVERY_M = 1000;
    private static final int MOST_PROBES = 200;
    private static final double NEGLIGIBLE_DEG = 1e-10;

    private final AzimuthalFrame frame;
    private final AreaGround ground;
    private final double[] latitudePower = new double[AzimuthalFrame.DEGREE + 1];
    private final double[] longitudePower = new double[AzimuthalFrame.DEGREE + 1];
    private double[] latitude = new double[0];
    private double[] longitude = new double[0];
    private double[] height = new double[0];
    private boolean[] isVoid = new boolean[0];
    /** 0, 1, 2 … as doubles: loops over them run several at a time. */
    private double[] number = new double[0];

    private byte[] cover = new byte[0];
    private Cover[] read = new Cover[0];
    private final double[] heldM = new double[Cover.values().length];
    private final double[] clutterM = new double[Cover.values().length];
    private double[] lowered = new double[0];
    /** Ordinal of the only cover there is; -1 where one has to look. */
    private final int everywhere;

    RaySampler(AzimuthalFrame frame, AreaGround ground) {
        this.frame = frame;
        this.ground = ground;
        this.everywhere = ground.landCover().everywhere().map(Cover::ordinal).orElse(-1);
        for (Cover kind : Cover.values()) {
            heldM[kind.ordinal()] = ground.settings().heldM(kind);
            clutterM[kind.ordinal()] = ground.settings().clutterM(kind);
        }
    }

    /** Turns to an azimuth, given by its sine and cosine. */
    void aim(double sine, double cosine) {
        frame.along(sine, cosine, latitudePower, longitudePower);
    }

    /** Finest post spacing along the azimuth, m: probed as a single path is before it is cut. */
    double finestPostM(double lengthM) {
        int probes = (int) Math.min(MOST_PROBES, 2 + lengthM / PROBE_EVERY_M);
        double finest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < probes; i++) {
            double t = lengthM * i / (probes - 1) / frame.radiusM();
            double lat = AzimuthalFrame.value(latitudePower, t);
            double lon = AzimuthalFrame.value(longitudePower, t);
            finest = Math.min(finest, ground.elevation().postSpacingM(lat, folded(lon), CutSettings.USUAL_POST_M));
        }
        return finest;
    }

    /**
     * Fills a ray with samples at whole steps from the source along the azimuth.
     *
     * @param count samples, the one at the source included
     * @param stepM distance of neighbours, m
     */
    void fill(int count, double stepM, Radial radial) {
        room(count);
        radial.size(count);
        place(count, stepM / frame.radiusM());
        scaled(number, stepM / 1000, count, radial.distancesKm());
        wrap(count);
        ground.elevation().heights(latitude, longitude, count, radial.groundM(), isVoid);
        radial.knowUpTo(firstVoid(isVoid, count));
        radial.standing(clutterM);
        if (everywhere < 0) {
            radial.coverUnevenly();
            cover(count, radial.groundM(), radial.cover());
            lookedUp(clutterM, radial.cover(), count, radial.clutterM());
        } else {
            lower(radial.groundM(), count);
            radial.coverEvenly(everywhere, clutterM[everywhere]);
        }
    }

    /** The same with heights between the samples, every interval in equal parts, as a single path has them; known is what lies before the first void sample. */
    void fillDivided(int count, double stepM, int parts, Radial radial) {
        fill(count, stepM, radial);
        double[] heightM = radial.divide(parts);
        int all = (count - 1) * parts + 1;
        room(all);
        if (lowered.length < count) lowered = new double[latitude.length];
        for (int i = 0; i < count; i++) lowered[i] = heldM[everywhere < 0 ? radial.cover()[i] : everywhere];
        place(all, stepM / parts / frame.radiusM());
        wrap(all);
        ground.elevation().heights(latitude, longitude, all, heightM, isVoid);
        Intervals.bare(heightM, isVoid, all, radial.groundM(), lowered, parts);
    }

    // Loops stand in methods of their own: woven into one, they take the compiler a quarter of a second.

    private static void scaled(double[] in, double factor, int count, double[] out) {
        for (int i = 0; i < count; i++) out[i] = in[i] * factor;
    }

    private static void lookedUp(double[] table, byte[] key, int count, double[] out) {
        for (int i = 0; i < count; i++) out[i] = table[key[i]];
    }

    /** Takes off what the heights hold of the only cover. */
    private void lower(double[] groundM, int count) {
        double byM = heldM[everywhere];
        if (byM == 0) return;
        for (int i = 0; i < count; i++) groundM[i] -= byM;
    }

    /** Positions at equal shares of the radius along the azimuth; powers that move nothing by 0.01 mm are left out. */
    private void place(int count, double shareStep) {
        double farthest = count * shareStep;
        double fifth = farthest * farthest * farthest * farthest * farthest;
        double left = 0;
        for (int k = 5; k <= AzimuthalFrame.DEGREE; k++)
            left = Math.max(left, fifth * Math.max(Math.abs(latitudePower[k]), Math.abs(longitudePower[k])));
        if (left > NEGLIGIBLE_DEG) {
            all(latitudePower, count, shareStep, latitude);
            all(longitudePower, count, shareStep, longitude);
            return;
        }
        fourth(latitudePower, number, count, shareStep, latitude);
        fourth(longitudePower, number, count, shareStep, longitude);
    }

    private static void all(double[] power, int count, double shareStep, double[] out) {
        for (int i = 0; i < count; i++) out[i] = AzimuthalFrame.value(power, i * shareStep);
    }

    private static void fourth(double[] power, double[] n, int count, double shareStep, double[] out) {
        double s = shareStep;
        double a = power[0];
        double b = power[1] * s;
        double c = power[2] * s * s;
        double d = power[3] * s * s * s;
        double e = power[4] * s * s * s * s;
        for (int i = 0; i < count; i++) out[i] = a + n[i] * (b + n[i] * (c + n[i] * (d + n[i] * e)));
    }

    /** Reads the ground under the centres of cells; {@link #heightM} and its like then answer by position in the list. */
    void cells(CellGrid grid, CellsByRadial cells, int first, int end) {
        int count = end - first;
        room(count);
        centres(grid, cells, first, count);
        wrap(count);
        ground.elevation().heights(latitude, longitude, count, height, isVoid);
        if (everywhere < 0) cover(count, height, cover);
        else lower(height, count);
    }

    private void centres(CellGrid grid, CellsByRadial cells, int first, int count) {
        for (int i = 0; i < count; i++) {
            int cell = cells.cell(first + i);
            latitude[i] = grid.latitudeOf(grid.rowOf(cell));
            longitude[i] = grid.longitudeOf(grid.columnOf(cell));
            double distanceM = cells.distanceM(first + i);
            if (distanceM < CellsByRadial.NEAREST_M) moveOut(i, distanceM);
        }
    }

    double heightM(int i) {
        return height[i];
    }

    boolean isVoid(int i) {
        return isVoid[i];
    }

    int coverOrdinal(int i) {
        return everywhere < 0 ? cover[i] : everywhere;
    }

    /** A cell too near the source is read where a path of the least length in its direction ends. */
    private void moveOut(int i, double distanceM) {
        double north = latitude[i] - frame.source().latitudeDeg();
        double east = longitude[i] - frame.source().longitudeDeg();
        if (distanceM < 0.5) {
            latitude[i] = frame.source().latitudeDeg() + CellsByRadial.NEAREST_M / frame.metresPerDegree();
            longitude[i] = frame.source().longitudeDeg();
            return;
        }
        double stretch = CellsByRadial.NEAREST_M / distanceM;
        latitude[i] = frame.source().latitudeDeg() + north * stretch;
        longitude[i] = frame.source().longitudeDeg() + east * stretch;
    }

    /** Reads what stands at the positions and takes off what the heights hold of it. */
    private void cover(int count, double[] groundM, byte[] ordinal) {
        if (read.length < count) read = new Cover[latitude.length];
        ground.landCover().covers(latitude, longitude, count, read);
        for (int i = 0; i < count; i++) {
            int kind = read[i].ordinal();
            ordinal[i] = (byte) kind;
            groundM[i] -= heldM[kind];
        }
    }

    private void wrap(int count) {
        if (Math.abs(longitude[0]) < 170) return;
        for (int i = 0; i < count; i++) longitude[i] = folded(longitude[i]);
    }

    private static double folded(double longitudeDeg) {
        if (longitudeDeg >= 180) return longitudeDeg - 360;
        return longitudeDeg < -180 ? longitudeDeg + 360 : longitudeDeg;
    }

    private static int firstVoid(boolean[] isVoid, int count) {
        for (int i = 0; i < count; i++) if (isVoid[i]) return i;
        return count;
    }

    private void room(int count) {
        if (latitude.length >= count) return;
        int more = count + count / 4 + 16;
        latitude = Arrays.copyOf(latitude, more);
        longitude = Arrays.copyOf(longitude, more);
        height = new double[more];
        isVoid = new boolean[more];
        cover = new byte[more];
        number = new double[more];
        for (int i = 0; i < more; i++) number[i] = i;
    }
}
