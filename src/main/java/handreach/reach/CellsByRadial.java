package handreach.reach;

import java.util.Arrays;

/**
 * Which cells lie on which radial: every cell within the radius belongs to the radial nearest to its centre, and the cells of a
 * radial are in order of distance. Sixteen bytes a cell while it is built, eight kept.
 */
final class CellsByRadial {
    /** Cells nearer than this are computed as if they were this far, in their own direction: nearer, no model holds. */
    static final double NEAREST_M = 50;

    private final int radials;
    private final int[] start;
    /** Distance as the bits of a float, which order as the numbers do, before the index of the cell. */
    private final long[] slot;

    private CellsByRadial(int radials, int[] start, long[] slot) {
        this.radials = radials;
        this.start = start;
        this.slot = slot;
    }

    static CellsByRadial of(CellGrid grid, AzimuthalFrame frame, int radials, Workers workers, SubProgress stretch) {
        int[] radialOf = new int[grid.count()];
        float[] distance = new float[grid.count()];
        workers.run(
                grid.rows(),
                () -> new RowReader(grid, frame),
                (reader, row) -> {
                    reader.row(row);
                    int first = row * grid.columns();
                    for (int c = 0; c < grid.columns(); c++) {
                        if (!reader.isWithin(c)) {
                            radialOf[first + c] = -1;
                            continue;
                        }
                        radialOf[first + c] = reader.radial(radials);
                        distance[first + c] = (float) reader.distanceM();
                    }
                },
                stretch);
        stretch.goOn();
        int[] start = new int[radials + 1];
        for (int r : radialOf) if (r >= 0) start[r + 1]++;
        for (int r = 0; r < radials; r++) start[r + 1] += start[r];
        int[] next = start.clone();
        long[] slot = new long[start[radials]];
        for (int i = 0; i < radialOf.length; i++)
            if (radialOf[i] >= 0) slot[next[radialOf[i]]++] = (long) Float.floatToRawIntBits(distance[i]) << 32 | i;
        return new CellsByRadial(radials, start, slot);
    }

    int radials() {
        return radials;
    }

    int first(int radial) {
        return start[radial];
    }

    /** One past the last slot of a radial. */
    int end(int radial) {
        return start[radial + 1];
    }

    int cell(int at) {
        return (int) slot[at];
    }

    double distanceM(int at) {
        return Float.intBitsToFloat((int) (slot[at] >>> 32));
    }

    /** Number of cells within the radius. */
    int count() {
        return slot.length;
    }

    /** Puts the cells of a radial in order of distance; equal distances keep the order of the grid. */
    void sort(int radial) {
        Arrays.sort(slot, start[radial], start[radial + 1]);
    }

    /** Distance and azimuth of the cells of one row after the other. */
    static final class RowReader {
        private final CellGrid grid;
        private final AzimuthalFrame frame;
        private final double[] eastPower = new double[AzimuthalFrame.DEGREE + 1];
        private final double[] northPower = new double[AzimuthalFrame.DEGREE + 1];
        private boolean reaches;
        private double east;
        private double north;

        RowReader(CellGrid grid, AzimuthalFrame frame) {
            this.grid = grid;
            this.frame = frame;
        }

        void row(int row) {
            double latitude = grid.latitudeOf(row);
            reaches = frame.reachesLatitude(latitude);
            if (reaches) frame.acrossLatitude(latitude, eastPower, northPower);
        }

        /** Whether the cell's centre lies within the radius; reads its place. */
        boolean isWithin(int column) {
            if (!reaches) return false;
            double share = frame.longitudeShare(grid.longitudeOf(column));
            if (!(Math.abs(share) <= 1.2)) return false;
            east = AzimuthalFrame.value(eastPower, share);
            north = AzimuthalFrame.value(northPower, share);
            return east * east + north * north <= 1;
        }

        /** East of the source, in shares of the radius. */
        double east() {
            return east;
        }

        /** North of the source, in shares of the radius. */
        double north() {
            return north;
        }

        double distanceM() {
            return Math.sqrt(east * east + north * north) * frame.radiusM();
        }

        /** Azimuth in turns, from half a turn west to half a turn east. */
        double turn() {
            return Math.atan2(east, north) / (2 * Math.PI);
        }

        int radial(int radials) {
            int r = (int) Math.rint(turn() * radials);
            return r < 0 ? r + radials : r == radials ? 0 : r;
        }
    }
}
