package handreach.terrain;

/**
 * Between what heights ground can lie. Whatever a tile or a table holds beyond is a mark of missing data or damage, never ground.
 *
 * <p>The lowest land is the shore of the Dead Sea, some 430 m below the sea, the highest a summit of 8849 m <em>(from memory)</em>; the
 * rest is room for pits, datums and noise, our suggestion.
 */
public final class EarthHeight {
    public static final int LOWEST_M = -500;
    public static final int HIGHEST_M = 9000;

    private EarthHeight() {}

    /** Whether ground can lie at a height, m; false for NaN. */
    public static boolean holds(double heightM) {
        return heightM >= LOWEST_M && heightM <= HIGHEST_M;
    }
}
