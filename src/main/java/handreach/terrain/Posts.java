package handreach.terrain;

/** The heights of one grid, row by row from the north, west to east; some of them void. Immutable once built. */
interface Posts {
    int rows();

    int columns();

    /** Height of a post, m; NaN where it is void. */
    double at(int row, int column);

    boolean isFilled(int row, int column);

    long voidCount();

    long filledCount();

    /** Lowest height, m; NaN if all are void. */
    double lowestM();

    double highestM();

    /** Memory taken, bytes. */
    long bytes();

    /**
     * Heights at positions from index {@code from} on, as long as they lie between four posts that all have a height.
     *
     * @param row0 lattice index of the first row of these posts
     * @param column0 lattice index of their first column
     * @return index of the first position that was not done
     */
    int run(
            Lattice lattice,
            int row0,
            int column0,
            double[] latitudeDeg,
            double[] longitudeDeg,
            int from,
            int to,
            double[] heightM,
            boolean[] isVoid);
}
