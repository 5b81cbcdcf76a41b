package handreach.terrain;

/**
 * Ground heights of a region. Implementations are safe for use by several threads and give the same answer every time.
 *
 * <p>Heights are bilinear between the four posts around the position; a void post with non-zero weight makes the height void.
 */
public interface Elevation {
    /**
     * Lowest height, m, that ground can have; whatever a tile or a table holds beyond this and {@link #HIGHEST_M} is a mark of missing
     * data or damage, never ground. The lowest land is the shore of the Dead Sea, some 430 m below the sea <em>(from memory)</em>; the
     * rest is room for pits, datums and noise, our suggestion.
     */
    int LOWEST_M = -500;
    /** Greatest height, m, that ground can have: above a summit of 8849 m <em>(from memory)</em>. */
    int HIGHEST_M = 9000;

    /**
     * Heights at many positions at once.
     *
     * @param latitudeDeg degrees north, entries 0 to count − 1 are read
     * @param longitudeDeg degrees east, −180 to 180
     * @param heightM receives metres above the datum; where void it receives 0, to be looked at only through {@code isVoid}
     * @param isVoid receives true where there is no height: outside every tile, or next to a void post
     */
    void heights(double[] latitudeDeg, double[] longitudeDeg, int count, double[] heightM, boolean[] isVoid);

    /**
     * Spacing of the finest posts at the position, the smaller of the two directions; the default if no tile covers it.
     *
     * @shape  one position in, scalar out
     * @unit   degrees north and east; result m on the ground
     * @valid  every position
     * @error  the size of a degree is taken at the centre of the tile: by hand 0.9 % off at the edge of a one-degree tile at 45°, 2.4 % at 70°
     * @source the heads of the tiles
     */
    double postSpacingM(double latitudeDeg, double longitudeDeg, double defaultM);

    /** How many of the positions lean on a post that was void in its file and was filled from its neighbours. */
    default int countFilled(double[] latitudeDeg, double[] longitudeDeg, int count) {
        return 0;
    }
}
