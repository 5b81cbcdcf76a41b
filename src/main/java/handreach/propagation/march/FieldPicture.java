package handreach.propagation.march;

/**
 * The field over the ground on a coarse raster: what fills a valley, what hangs behind a crest.
 *
 * <p>Columns run outward from the source, rows upward from the lowest height. Immutable to all but the march that draws it.
 */
public final class FieldPicture {
    private final int columns;
    private final int rows;
    private final double lengthKm;
    private final double lowestM;
    private final double highestM;
    private final float[] levelDb;

    FieldPicture(int columns, int rows, double lengthKm, double lowestM, double highestM) {
        if (columns < 2 || rows < 2 || columns > 4000 || rows > 2000)
            throw new IllegalArgumentException("a picture of " + columns + " columns and " + rows + " rows");
        this.columns = columns;
        this.rows = rows;
        this.lengthKm = lengthKm;
        this.lowestM = lowestM;
        this.highestM = highestM;
        this.levelDb = new float[columns * rows];
        java.util.Arrays.fill(levelDb, Float.NEGATIVE_INFINITY);
    }

    public int columns() {
        return columns;
    }

    public int rows() {
        return rows;
    }

    /** Distance of the middle of a column, km. */
    public double distanceKm(int column) {
        return (column + 0.5) * lengthKm / columns;
    }

    /** Height of the middle of a row above sea level, m. */
    public double heightM(int row) {
        return lowestM + (row + 0.5) * (highestM - lowestM) / rows;
    }

    /** Whether no field was marched there: ground, or closer to the source than the march begins. */
    public boolean isVoid(int column, int row) {
        return levelDb[row * columns + column] == Float.NEGATIVE_INFINITY;
    }

    /** Field over that of free space at the same slant distance, dB, negative in the shadow. */
    public double levelDb(int column, int row) {
        if (isVoid(column, row)) throw new IllegalArgumentException("no field at " + column + ", " + row);
        return levelDb[row * columns + column];
    }

    void set(int column, int row, double db) {
        levelDb[row * columns + column] = (float) db;
    }
}
