package handreach.cartography;

import handreach.terrain.Elevation;

/**
 * Ground heights at evenly spaced pixels of a map, with a margin of nodes around it so that slopes are known up to the edge.
 *
 * <p>Node (0, 0) lies {@code margin} steps north-west of the centre of the upper left pixel. Immutable.
 */
public final class HeightLattice {
    private final MapFrame frame;
    private final int stepPx;
    private final int margin;
    private final int columns;
    private final int rows;
    private final float[] heightM;
    private final boolean[] isVoid;

    private HeightLattice(MapFrame frame, int stepPx, int margin) {
        if (stepPx < 1 || margin < 0) throw new IllegalArgumentException("step " + stepPx + ", margin " + margin);
        this.frame = frame;
        this.stepPx = stepPx;
        this.margin = margin;
        this.columns = (frame.widthPx() + stepPx - 1) / stepPx + 2 * margin;
        this.rows = (frame.heightPx() + stepPx - 1) / stepPx + 2 * margin;
        this.heightM = new float[columns * rows];
        this.isVoid = new boolean[columns * rows];
    }

    /** Reads the heights of a map, one node every {@code stepPx} pixels. */
    public static HeightLattice over(Elevation elevation, MapFrame frame, int stepPx, int margin) {
        HeightLattice lattice = new HeightLattice(frame, stepPx, margin);
        int n = lattice.columns;
        double[] latitude = new double[n];
        double[] longitude = new double[n];
        double[] height = new double[n];
        boolean[] isVoid = new boolean[n];
        for (int c = 0; c < n; c++) longitude[c] = frame.longitudeDeg(lattice.xPx(c));
        for (int r = 0; r < lattice.rows; r++) {
            java.util.Arrays.fill(latitude, frame.latitudeDeg(lattice.yPx(r)));
            elevation.heights(latitude, longitude, n, height, isVoid);
            for (int c = 0; c < n; c++) {
                lattice.isVoid[r * n + c] = isVoid[c];
                lattice.heightM[r * n + c] = isVoid[c] ? 0 : (float) height[c];
            }
        }
        return lattice;
    }

    public MapFrame frame() {
        return frame;
    }

    public int columns() {
        return columns;
    }

    public int rows() {
        return rows;
    }

    /** Height of a node, m; to be looked at only where {@link #isVoid} is false. */
    public float heightM(int column, int row) {
        return heightM[row * columns + column];
    }

    public boolean isVoid(int column, int row) {
        return isVoid[row * columns + column];
    }

    /** Pixel column of a node; the margin lies outside the map. */
    double xPx(double column) {
        return (column - margin) * stepPx + 0.5;
    }

    double yPx(double row) {
        return (row - margin) * stepPx + 0.5;
    }

    /** Lowest height, or empty where every node is void. */
    public java.util.OptionalDouble lowestM() {
        return extreme(-1);
    }

    /** Greatest height, or empty where every node is void. */
    public java.util.OptionalDouble highestM() {
        return extreme(1);
    }

    private java.util.OptionalDouble extreme(int sign) {
        double best = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < heightM.length; i++) if (!isVoid[i]) best = Math.max(best, sign * heightM[i]);
        return Double.isInfinite(best) ? java.util.OptionalDouble.empty() : java.util.OptionalDouble.of(sign * best);
    }
}
