package handreach.terrain;

import java.util.Arrays;

/** Posts in metres and fractions; void is NaN. */
final class FloatPosts implements Posts {
    private final int rows;
    private final int columns;
    private final float[] heightM;
    private final int[] filled;
    private final long voidCount;
    private final float lowest;
    private final float highest;

    /** Takes over the array and fills its small voids. */
    FloatPosts(int rows, int columns, float[] heightM) {
        this(rows, columns, heightM, hasVoid(heightM) ? filledIn(rows, columns, heightM) : new int[0]);
    }

    /** Takes over the array as it is. */
    static FloatPosts asTheyAre(int rows, int columns, float[] heightM) {
        return new FloatPosts(rows, columns, heightM, new int[0]);
    }

    private FloatPosts(int rows, int columns, float[] heightM, int[] filled) {
        if (heightM.length != (long) rows * columns) throw new IllegalArgumentException("posts and size differ");
        this.rows = rows;
        this.columns = columns;
        this.heightM = heightM;
        this.filled = filled;
        long voids = 0;
        float low = Float.POSITIVE_INFINITY;
        float high = Float.NEGATIVE_INFINITY;
        for (float h : heightM) {
            if (Float.isNaN(h)) {
                voids++;
            } else {
                low = Math.min(low, h);
                high = Math.max(high, h);
            }
        }
        this.voidCount = voids;
        this.lowest = low;
        this.highest = high;
    }

    private static boolean hasVoid(float[] heightM) {
        for (float h : heightM) if (Float.isNaN(h)) return true;
        return false;
    }

    private static int[] filledIn(int rows, int columns, float[] heightM) {
        return VoidPatches.fill(
                new VoidPatches.Field() {
                    @Override
                    public double at(int index) {
                        return heightM[index];
                    }

                    @Override
                    public boolean isVoid(int index) {
                        return Float.isNaN(heightM[index]);
                    }

                    @Override
                    public void set(int index, double value) {
                        heightM[index] = (float) value;
                    }
                },
                rows,
                columns);
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
        return heightM[row * columns + column];
    }

    @Override
    public boolean isFilled(int row, int column) {
        return filled.length > 0 && Arrays.binarySearch(filled, row * columns + column) >= 0;
    }

    @Override
    public long voidCount() {
        return voidCount;
    }

    @Override
    public long filledCount() {
        return filled.length;
    }

    @Override
    public double lowestM() {
        return voidCount == heightM.length ? Double.NaN : lowest;
    }

    @Override
    public double highestM() {
        return voidCount == heightM.length ? Double.NaN : highest;
    }

    @Override
    public long bytes() {
        return 4L * heightM.length + 4L * filled.length;
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
        final float[] h = heightM;
        for (int i = from; i < to; i++) {
            double y = (originY - latitudeDeg[i]) * perY;
            double x = (longitudeDeg[i] - originX) * perX;
            int wholeY = Lattice.whole(y);
            int wholeX = Lattice.whole(x);
            int row = wholeY - row0;
            int column = wholeX - column0;
            if (row < 0 || row >= lastRow || column < 0 || column >= lastColumn) return i;
            int k = row * columns + column;
            float nw = h[k];
            float ne = h[k + 1];
            float sw = h[k + columns];
            float se = h[k + columns + 1];
            if (Float.isNaN(nw) || Float.isNaN(ne) || Float.isNaN(sw) || Float.isNaN(se)) return i;
            out[i] = Lattice.bilinear(nw, ne, sw, se, x - wholeX, y - wholeY);
            isVoid[i] = false;
        }
        return to;
    }
}
