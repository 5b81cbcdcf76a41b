package handreach.reach;

import java.util.concurrent.CancellationException;

/**
 * Which cells lie on which radial: every cell within the radius belongs to the radial nearest to its centre, and the cells of a
 * radial are in order of distance. Three numbers a cell while it is built, two kept.
 */
final class CellsByRadial {
    /** Cells nearer than this are reckoned as if they were this far, in their own direction: nearer, no model holds. */
    static final double NEAREST_M = 50;

    private final int radials;
    private final int[] start;
    private final int[] cell;
    private final float[] distanceM;

    private CellsByRadial(int radials, int[] start, int[] cell, float[] distanceM) {
        this.radials = radials;
        this.start = start;
        this.cell = cell;
        this.distanceM = distanceM;
    }

    static CellsByRadial of(
            CellGrid grid, AzimuthalFrame frame, int radials, Workers workers, Workers.Stretch stretch) {
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
        if (stretch.progress().isCancelled()) throw new CancellationException("stopped");
        int[] start = new int[radials + 1];
        for (int r : radialOf) if (r >= 0) start[r + 1]++;
        for (int r = 0; r < radials; r++) start[r + 1] += start[r];
        int[] next = start.clone();
        int[] cell = new int[start[radials]];
        float[] far = new float[start[radials]];
        for (int i = 0; i < radialOf.length; i++) {
            if (radialOf[i] < 0) continue;
            int slot = next[radialOf[i]]++;
            cell[slot] = i;
            far[slot] = distance[i];
        }
        return new CellsByRadial(radials, start, cell, far);
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

    int cell(int slot) {
        return cell[slot];
    }

    double distanceM(int slot) {
        return distanceM[slot];
    }

    /** Number of cells within the radius. */
    int count() {
        return cell.length;
    }

    /** Puts the cells of a radial in order of distance; equal distances keep the order of the grid. */
    void sort(int radial) {
        for (int i = start[radial] + 1; i < start[radial + 1]; i++) {
            int movedCell = cell[i];
            float movedM = distanceM[i];
            int j = i - 1;
            while (j >= start[radial] && distanceM[j] > movedM) {
                cell[j + 1] = cell[j];
                distanceM[j + 1] = distanceM[j];
                j--;
            }
            cell[j + 1] = movedCell;
            distanceM[j + 1] = movedM;
        }
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
            return Math.hypot(east, north) * frame.radiusM();
        }

        int radial(int radials) {
            double turn = Math.atan2(east, north) / (2 * Math.PI);
            int r = (int) Math.rint(turn * radials);
            return r < 0 ? r + radials : r == radials ? 0 : r;
        }
    }
}
