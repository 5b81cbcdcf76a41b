package handreach.reach;

import java.util.Arrays;

/** Reads the ground along radials and at cells into arrays that are used again. One per thread. */
final class RaySampler {
    private final AzimuthalFrame frame;
    private final AreaGround ground;
    private final double earthKm;
    private final double[] latitudePower = new double[AzimuthalFrame.DEGREE + 1];
    private final double[] longitudePower = new double[AzimuthalFrame.DEGREE + 1];
    private double[] latitude = new double[0];
    private double[] longitude = new double[0];
    private double[] height = new double[0];
    private boolean[] isVoid = new boolean[0];
    private byte[] cover = new byte[0];

    RaySampler(AzimuthalFrame frame, AreaGround ground, double earthKm) {
        this.frame = frame;
        this.ground = ground;
        this.earthKm = earthKm;
    }

    /**
     * Fills a ray with samples at whole steps from the source.
     *
     * @param sine of the azimuth
     * @param cosine of the azimuth
     * @param count samples, the one at the source included
     * @param stepM distance of neighbours, m
     */
    void radial(double sine, double cosine, int count, double stepM, Ray ray) {
        frame.along(sine, cosine, latitudePower, longitudePower);
        room(count);
        ray.size(count);
        double shareStep = stepM / frame.radiusM();
        for (int i = 0; i < count; i++) {
            double t = i * shareStep;
            latitude[i] = AzimuthalFrame.value(latitudePower, t);
            longitude[i] = AzimuthalFrame.value(longitudePower, t);
            ray.xKm[i] = i * stepM / 1000;
        }
        wrap(count);
        ground.elevation().heights(latitude, longitude, count, ray.groundM, isVoid);
        ground.covers(latitude, longitude, count, ray.cover);
        ray.known = firstVoid(count);
        ray.flatten(earthKm);
    }

    /** Reads the ground under the centres of cells; {@link #heightM} and its like then answer by position in the list. */
    void cells(CellGrid grid, CellsByRadial cells, int first, int end) {
        int count = end - first;
        room(count);
        for (int i = 0; i < count; i++) {
            int cell = cells.cell(first + i);
            latitude[i] = grid.latitudeOf(grid.rowOf(cell));
            longitude[i] = grid.longitudeOf(grid.columnOf(cell));
            double distanceM = cells.distanceM(first + i);
            if (distanceM < CellsByRadial.NEAREST_M) moveOut(i, distanceM);
        }
        wrap(count);
        ground.elevation().heights(latitude, longitude, count, height, isVoid);
        ground.covers(latitude, longitude, count, cover);
    }

    /** Reads the ground at one place. */
    void place(double latitudeDeg, double longitudeDeg) {
        room(1);
        latitude[0] = latitudeDeg;
        longitude[0] = longitudeDeg;
        wrap(1);
        ground.elevation().heights(latitude, longitude, 1, height, isVoid);
        ground.covers(latitude, longitude, 1, cover);
    }

    double heightM(int i) {
        return height[i];
    }

    boolean isVoid(int i) {
        return isVoid[i];
    }

    int coverOrdinal(int i) {
        return cover[i];
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

    private void wrap(int count) {
        double first = longitude[0];
        if (Math.abs(first) < 170) return;
        for (int i = 0; i < count; i++) {
            if (longitude[i] >= 180) longitude[i] -= 360;
            else if (longitude[i] < -180) longitude[i] += 360;
        }
    }

    private int firstVoid(int count) {
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
    }
}
