package handreach.terrain;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;

/** A tile seated in its lattice. Its posts are read when first needed and may be let go again. */
final class Tile {
    final TileSummary summary;
    final Lattice lattice;
    final int row0;
    final int column0;
    final int rows;
    final int columns;
    /** Order of preference, finest first; set once when the folder is opened. */
    private int rank;

    private TileBounds[] rivals = {};
    private final PostSource source;
    private volatile Posts posts;
    private volatile long lastUsed;
    private volatile boolean isAsked;
    private volatile boolean hasNoFilled;

    Tile(TileHeader draft, Lattice.GridOffset seat) {
        this.summary = draft.summary();
        this.lattice = seat.lattice();
        this.row0 = seat.row();
        this.column0 = seat.column();
        this.source = draft.source();
        this.rows = source.rows();
        this.columns = source.columns();
    }

    void rank(int rank) {
        this.rank = rank;
    }

    /** Where tiles that are preferred to this one may answer instead of it; elsewhere inside it, it alone answers. */
    void rivals(TileBounds[] wider) {
        this.rivals = wider;
    }

    /** The first position from an index on that a rival may claim. */
    int clearOfRivals(double[] latitudeDeg, double[] longitudeDeg, int from, int to) {
        if (rivals.length == 0) return to;
        for (int i = from; i < to; i++)
            for (TileBounds rival : rivals) if (rival.holds(latitudeDeg[i], longitudeDeg[i])) return i;
        return to;
    }

    int rank() {
        return rank;
    }

    PostSource source() {
        return source;
    }

    Posts held() {
        return posts;
    }

    void hold(Posts read) {
        posts = read;
        if (read != null) hasNoFilled = read.filledCount() == 0;
    }

    /** Whether heights of it were wanted and none of them was filled in, so far as it has been read. */
    boolean isKnownUnfilled() {
        return isAsked && hasNoFilled;
    }

    /** Somebody wants heights of this tile; true for the first. */
    boolean isFirstAsked() {
        return !isAsked && askedFirst();
    }

    private synchronized boolean askedFirst() {
        boolean isFirst = !isAsked;
        isAsked = true;
        return isFirst;
    }

    boolean isAsked() {
        return isAsked;
    }

    long lastUsed() {
        return lastUsed;
    }

    void use(long now) {
        if (lastUsed != now) lastUsed = now;
    }

    /** Column of a position's lattice column counted inside this tile, brought round the earth where that helps. */
    int inside(int latticeColumn) {
        int column = latticeColumn - column0;
        if (lattice.turn > 0) {
            if (column < -1) column += lattice.turn;
            else if (column >= columns + 1) column -= lattice.turn;
        }
        return column;
    }

    boolean hasPost(int row, int column) {
        return row >= 0 && row < rows && column >= 0 && column < columns;
    }

    /** The smaller spacing on the ground, m, at a latitude. */
    double spacingM(double latitudeDeg) {
        if (!lattice.frame.isDegrees()) return summary.spacing().smallerM();
        return Math.min(northSouthM(latitudeDeg) / lattice.perY, eastWestM(latitudeDeg) / lattice.perX);
    }

    /** Mean of the two spacings, m, by which tiles are preferred. */
    static double meanSpacingM(GridFit fit, TileBounds bounds) {
        double lat = bounds.centreLatitudeDeg();
        if (fit.frame().isDegrees())
            return Math.sqrt(northSouthM(lat) / fit.postsPerY() * Math.max(1, eastWestM(lat)) / fit.postsPerX());
        double[] ground = groundSpacingM(fit, bounds);
        return Math.sqrt(ground[0] * ground[1]);
    }

    /** Spacing on the ground at the middle of the bounds, m: along a row, along a column. */
    static double[] groundSpacingM(GridFit fit, TileBounds bounds) {
        double lat = bounds.centreLatitudeDeg();
        if (fit.frame().isDegrees())
            return new double[] {Math.max(0.01, eastWestM(lat)) / fit.postsPerX(), northSouthM(lat) / fit.postsPerY()};
        double[] xy = new double[2];
        fit.frame().toPlane(lat, bounds.centreLongitudeDeg(), xy);
        Position here = fit.frame().toPosition(xy[0], xy[1]);
        return new double[] {
            GeodesicLine.distanceM(here, fit.frame().toPosition(xy[0] + 1 / fit.postsPerX(), xy[1])),
            GeodesicLine.distanceM(here, fit.frame().toPosition(xy[0], xy[1] + 1 / fit.postsPerY()))
        };
    }

    /** Length of a degree along the meridian, m; series of the WGS 84 meridian radius, within 1 m. */
    private static double northSouthM(double latitudeDeg) {
        return 111_132.95 - 559.85 * Math.cos(Math.toRadians(2 * latitudeDeg));
    }

    /** Length of a degree along the parallel, m; within 1 m. */
    private static double eastWestM(double latitudeDeg) {
        double lat = Math.toRadians(latitudeDeg);
        return 111_412.88 * Math.cos(lat) - 93.50 * Math.cos(3 * lat);
    }
}
