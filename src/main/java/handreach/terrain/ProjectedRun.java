package handreach.terrain;

/** Room for the plane coordinates of one run through a projected tile. */
final class ProjectedRun {
    /** A run is projected piece by piece, since it may leave the tile soon. */
    private static final int PIECE = 64;

    private static final double NOWHERE = -1e30;

    private final double[] x;
    private final double[] y;
    private final double[] xy = new double[2];

    ProjectedRun(int count) {
        x = new double[count];
        y = new double[count];
    }

    /** As {@link Posts#run}. */
    int run(
            Tile tile,
            Posts posts,
            double[] latitudeDeg,
            double[] longitudeDeg,
            int from,
            int to,
            double[] heightM,
            boolean[] isVoid) {
        int i = from;
        while (i < to) {
            int end = Math.min(to, i + PIECE);
            for (int k = i; k < end; k++) {
                tile.lattice.frame.toPlane(latitudeDeg[k], longitudeDeg[k], xy);
                boolean isInPlane = Double.isFinite(xy[0]) && Double.isFinite(xy[1]);
                x[k] = isInPlane ? xy[0] : NOWHERE;
                y[k] = isInPlane ? xy[1] : NOWHERE;
            }
            int next = posts.run(tile.lattice, tile.row0, tile.column0, y, x, i, end, heightM, isVoid);
            if (next < end) return next;
            i = next;
        }
        return to;
    }
}
