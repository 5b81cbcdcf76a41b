package handreach.terrain;

/** Whether a number of a tile can be ground, or is a mark of missing data or damage. */
final class EarthHeight {
    static final int LOWEST_M = Elevation.LOWEST_M;
    static final int HIGHEST_M = Elevation.HIGHEST_M;

    private EarthHeight() {}

    /** Whether ground can lie at a height, m; false for NaN. */
    static boolean holds(double heightM) {
        return heightM >= LOWEST_M && heightM <= HIGHEST_M;
    }
}
