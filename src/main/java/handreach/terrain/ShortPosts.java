package handreach.terrain;

import java.util.Arrays;

/** Posts in whole metres. */
final class ShortPosts implements Posts {
    static final short VOID = Short.MIN_VALUE;
    private static final int EIGHT = 8;

    private final int rows;
    private final int columns;
    private final short[] heightM;
    private final int[] filled;
    /** Computed when first asked for: a tile of one second has 13 million posts, and most work never asks. */
    private volatile Tally tally;

    /** Takes over the array, makes void what is no height of ground, and fills small voids. */
    ShortPosts(int rows, int columns, short[] heightM) {
        this(rows, columns, heightM, true);
    }

    /** Takes over the array as it is. */
    static ShortPosts asTheyAre(int rows, int columns, short[] heightM) {
        return new ShortPosts(rows, columns, heightM, false);
    }

    private ShortPosts(int rows, int columns, short[] heightM, boolean fills) {
        if (heightM.length != (long) rows * columns) throw new IllegalArgumentException("posts and size differ");
        this.rows = rows;
        this.columns = columns;
        this.heightM = heightM;
        if (fills && hasBeyond(heightM)) {
            makeVoid(heightM);
            this.filled = filledIn(rows, columns, heightM);
        } else {
            this.filled = new int[0];
        }
    }

    /** Whether a post is void, or no height of ground, which comes to the same. */
    private static boolean hasBeyond(short[] heightM) {
        int inEights = heightM.length - heightM.length % EIGHT;
        for (int i = 0; i < inEights; i += EIGHT) if (isAnyOfEightBeyond(heightM, i)) return true;
        for (int i = inEights; i < heightM.length; i++) if (!EarthHeight.holds(heightM[i])) return true;
        return false;
    }

    /**
     * One comparison for eight posts of the 13 million of a tile: negative when any lies below or above; the void, −32768, lies below.
     * Written out, for until code is compiled in full a method is a call.
     */
    private static boolean isAnyOfEightBeyond(short[] h, int i) {
        return (h[i] - EarthHeight.LOWEST_M
                        | EarthHeight.HIGHEST_M - h[i]
                        | h[i + 1] - EarthHeight.LOWEST_M
                        | EarthHeight.HIGHEST_M - h[i + 1]
                        | h[i + 2] - EarthHeight.LOWEST_M
                        | EarthHeight.HIGHEST_M - h[i + 2]
                        | h[i + 3] - EarthHeight.LOWEST_M
                        | EarthHeight.HIGHEST_M - h[i + 3]
                        | h[i + 4] - EarthHeight.LOWEST_M
                        | EarthHeight.HIGHEST_M - h[i + 4]
                        | h[i + 5] - EarthHeight.LOWEST_M
                        | EarthHeight.HIGHEST_M - h[i + 5]
                        | h[i + 6] - EarthHeight.LOWEST_M
                        | EarthHeight.HIGHEST_M - h[i + 6]
                        | h[i + 7] - EarthHeight.LOWEST_M
                        | EarthHeight.HIGHEST_M - h[i + 7])
                < 0;
    }

    private static void makeVoid(short[] heightM) {
        for (int i = 0; i < heightM.length; i++) if (!EarthHeight.holds(heightM[i])) heightM[i] = VOID;
    }

    private Tally tally() {
        if (tally == null) tally = Tally.of(heightM);
        return tally;
    }

    /** Voids and extremes. */
    private record Tally(long voids, int lowest, int highest) {
        static Tally of(short[] heightM) {
            int voids = 0;
            int low = Short.MAX_VALUE;
            int high = Short.MIN_VALUE;
            for (short h : heightM) {
                if (h == VOID) {
                    voids++;
                    continue;
                }
                low = Math.min(low, h);
                high = Math.max(high, h);
            }
            return new Tally(voids, low, high);
        }
    }

    private static int[] filledIn(int rows, int columns, short[] heightM) {
        return VoidPatches.fill(
                new VoidPatches.Field() {
                    @Override
                    public double at(int index) {
                        return heightM[index] == VOID ? Double.NaN : heightM[index];
                    }

                    @Override
                    public boolean isVoid(int index) {
                        return heightM[index] == VOID;
                    }

                    @Override
                    public void set(int index, double value) {
                        heightM[index] = (short) Math.rint(value);
                    }
                },
                rows,
                columns);
    }

    /** Copies posts next to one another as they are. */
    void copy(int from, int count, short[] out, int at) {
        System.arraycopy(heightM, from, out, at, count);
    }

    short raw(int index) {
        return heightM[index];
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public int columns() {
        return columns;
    }

    @Override
    public double at(int row, int column) {
        short h = heightM[row * columns + column];
        return h == VOID ? Double.NaN : h;
    }

    @Override
    public boolean isFilled(int row, int column) {
        return filled.length > 0 && Arrays.binarySearch(filled, row * columns + column) >= 0;
    }

    @Override
    public long voidCount() {
        return tally().voids;
    }

    @Override
    public long filledCount() {
        return filled.length;
    }

    @Override
    public double lowestM() {
        return tally().voids == heightM.length ? Double.NaN : tally().lowest;
    }

    @Override
    public double highestM() {
        return tally().voids == heightM.length ? Double.NaN : tally().highest;
    }

    @Override
    public long bytes() {
        return 2L * heightM.length + 4L * filled.length;
    }

    @Override
    public int run(
            Lattice lattice,
            int row0,
            int column0,
            double[] latitudeDeg,
            double[] longitudeDeg,
            int from,
            int to,
            double[] out,
            boolean[] isVoid) {
        final double originX = lattice.originX;
        final double originY = lattice.originY;
        final double perX = lattice.perX;
        final double perY = lattice.perY;
        final int lastRow = rows - 1;
        final int lastColumn = columns - 1;
        final short[] h = heightM;
        // The innermost loop of all area work: a field read in it, or four comparisons for one, cost a quarter more;
        // before it is compiled in full, each comparison is counted besides.
        final int width = columns;
        for (int i = from; i < to; i++) {
            double y = (originY - latitudeDeg[i]) * perY;
            double x = (longitudeDeg[i] - originX) * perX;
            int wholeY = Lattice.whole(y);
            int wholeX = Lattice.whole(x);
            int row = wholeY - row0;
            int column = wholeX - column0;
            // negative when any of the four is
            if ((row | column | lastRow - 1 - row | lastColumn - 1 - column) < 0) return i;
            int k = row * width + column;
            int nw = h[k];
            int ne = h[k + 1];
            int sw = h[k + width];
            int se = h[k + width + 1];
            if (Math.min(Math.min(nw, ne), Math.min(sw, se)) == VOID) return i;
            out[i] = Lattice.bilinear(nw, ne, sw, se, x - wholeX, y - wholeY);
            isVoid[i] = false;
        }
        return to;
    }
}
