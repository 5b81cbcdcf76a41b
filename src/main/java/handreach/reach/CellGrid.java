package handreach.reach;

import handreach.geodesy.Ellipsoid;
import handreach.geodesy.Position;
import handreach.input.Memory;
import handreach.input.NumberText;
import handreach.input.Range;
import java.util.Locale;
import java.util.Optional;

/**
 * A regular grid of cells in latitude and longitude: row 0 is the northernmost, column 0 the westernmost, and a cell is spoken
 * of by its centre. Every grid is made by one constructor, which refuses what would not fit.
 *
 * <p>Sides are chosen so that a cell is {@code cellM} high and wide at the middle latitude; towards either edge the width changes
 * with the cosine of the latitude (0.8 % over 50 km at 45°).
 */
public final class CellGrid {
    /** Most cells of one grid: a radius of 60 km in cells of 30 m. */
    public static final int MOST_CELLS = 16_100_000;

    /** Beside the losses: order of the cells, outlines, files before they are written; measured, docs/performance.md. */
    private static final int BYTES_BESIDE = 31;

    /** Latitude of an area's middle; closer to the pole a grid in degrees is no longer near square. */
    public static final Range LATITUDE = new Range(
            "centre", -80, 80, "degrees", "nearer to a pole, no map is drawn; single paths are answered there too");

    private final double northDeg;
    private final double westDeg;
    private final int rows;
    private final int columns;
    private final double latitudeStepDeg;
    private final double longitudeStepDeg;
    /** Where this grid starts within the one whose edges it is counted from; zero unless it is a part. */
    private final int firstRow;

    private final int firstColumn;

    private CellGrid(double middleLatitudeDeg, double middleLongitudeDeg, int rows, int columns, double cellM) {
        this.rows = rows;
        this.columns = columns;
        this.latitudeStepDeg = Math.toDegrees(cellM / Ellipsoid.meridionalRadiusM(middleLatitudeDeg));
        this.longitudeStepDeg = Math.toDegrees(
                cellM / (Ellipsoid.transverseRadiusM(middleLatitudeDeg) * Math.cos(Math.toRadians(middleLatitudeDeg))));
        this.northDeg = middleLatitudeDeg + rows * latitudeStepDeg / 2;
        this.westDeg = middleLongitudeDeg - columns * longitudeStepDeg / 2;
        this.firstRow = 0;
        this.firstColumn = 0;
        if (northDeg > 90 || southDeg() < -90 || columns * longitudeStepDeg > 360)
            throw new IllegalArgumentException("the grid would run over a pole or round the earth");
    }

    private CellGrid(CellGrid whole, int row, int column, int rows, int columns) {
        this.rows = rows;
        this.columns = columns;
        this.latitudeStepDeg = whole.latitudeStepDeg;
        this.longitudeStepDeg = whole.longitudeStepDeg;
        this.northDeg = whole.northDeg;
        this.westDeg = whole.westDeg;
        this.firstRow = whole.firstRow + row;
        this.firstColumn = whole.firstColumn + column;
    }

    /** Some of these cells as a grid of its own; their centres are the same to the last digit. */
    public CellGrid part(int row, int column, int rows, int columns) {
        if (rows < 1 || columns < 1)
            throw new IllegalArgumentException("a part of " + rows + " x " + columns + " cells");
        index(row, column);
        index(row + rows - 1, column + columns - 1);
        return new CellGrid(this, row, column, rows, columns);
    }

    /**
     * The least grid that covers a box; its middle is that of the box.
     *
     * @shape  as many rows and columns as the box needs; O(1)
     * @unit   edges degrees, the eastern one above the western one; cell m
     * @valid  as {@link #around}; what does not fit is told by {@link #refusal(double, double, double, double, double)} before
     * @error  none
     * @source radii of curvature of the WGS 84 ellipsoid
     */
    public static CellGrid over(double southDeg, double westDeg, double northDeg, double eastDeg, double cellM) {
        refusal(southDeg, westDeg, northDeg, eastDeg, cellM).ifPresent(sentence -> {
            throw new IllegalArgumentException(sentence);
        });
        CellGrid one = new CellGrid((southDeg + northDeg) / 2, (westDeg + eastDeg) / 2, 1, 1, cellM);
        return new CellGrid(
                (southDeg + northDeg) / 2,
                (westDeg + eastDeg) / 2,
                (int) acrossBox(northDeg - southDeg, one.latitudeStepDeg),
                (int) acrossBox(eastDeg - westDeg, one.longitudeStepDeg),
                cellM);
    }

    private static double acrossBox(double wideDeg, double stepDeg) {
        return Math.max(1, Math.ceil(wideDeg / stepDeg - 1e-9));
    }

    /** Why there is no grid of these cells over a box; nothing if there is. */
    public static Optional<String> refusal(
            double southDeg, double westDeg, double northDeg, double eastDeg, double cellM) {
        if (!(northDeg >= southDeg) || !(eastDeg >= westDeg) || eastDeg - westDeg > 180)
            return Optional.of("a box from " + NumberText.plain(westDeg) + " to " + NumberText.plain(eastDeg)
                    + " degrees east is no region: draw it without crossing the 180th meridian");
        if (!LATITUDE.accepts(southDeg) || !LATITUDE.accepts(northDeg))
            return Optional.of("the region reaches beyond latitude " + LATITUDE.words() + ": " + LATITUDE.advice());
        if (!(cellM >= 1)) return Optional.of("cells of " + NumberText.plain(cellM) + " m: take 1 m and above");
        CellGrid one = new CellGrid((southDeg + northDeg) / 2, (westDeg + eastDeg) / 2, 1, 1, cellM);
        double cells = acrossBox(northDeg - southDeg, one.latitudeStepDeg)
                * acrossBox(eastDeg - westDeg, one.longitudeStepDeg);
        if (cells <= MOST_CELLS) return Optional.empty();
        return Optional.of(String.format(
                Locale.ROOT,
                "the box round the region holds %.1f million cells of %.0f m, at most %.1f million fit: take cells of %.0f m",
                cells / 1e6,
                cellM,
                MOST_CELLS / 1e6,
                Math.ceil(cellM * Math.sqrt(cells / MOST_CELLS) * 1.01)));
    }

    /**
     * The grid of all cells within a radius; the centre of its middle cell is the given position.
     *
     * @shape  (2 radius / cell + 1)² cells; O(1)
     * @unit   radius and cell m
     * @valid  cells from 1 m, at most {@link #MOST_CELLS} of them, centre within 80° of the equator; else IllegalArgumentException
     *     that names the radius and the cell that would fit
     * @error  none
     * @source radii of curvature of the WGS 84 ellipsoid
     */
    public static CellGrid around(Position centre, double radiusM, double cellM) {
        refusal(centre, radiusM, cellM).ifPresent(sentence -> {
            throw new IllegalArgumentException(sentence);
        });
        int side = sideOf(radiusM, cellM);
        return new CellGrid(centre.latitudeDeg(), centre.longitudeDeg(), side, side, cellM);
    }

    public int rows() {
        return rows;
    }

    public int columns() {
        return columns;
    }

    /** Number of cells, rows times columns. */
    public int count() {
        return rows * columns;
    }

    /** Northern outer edge, degrees. */
    public double northDeg() {
        return northDeg - firstRow * latitudeStepDeg;
    }

    /** Southern outer edge, degrees. */
    public double southDeg() {
        return northDeg - (firstRow + rows) * latitudeStepDeg;
    }

    /** Western outer edge, degrees; below −180 when the grid lies over the 180th meridian. */
    public double westDeg() {
        return westDeg + firstColumn * longitudeStepDeg;
    }

    /** Eastern outer edge, degrees; above the western one always. */
    public double eastDeg() {
        return westDeg + (firstColumn + columns) * longitudeStepDeg;
    }

    /** Height of a cell, degrees of latitude. */
    public double latitudeStepDeg() {
        return latitudeStepDeg;
    }

    /** Width of a cell, degrees of longitude. */
    public double longitudeStepDeg() {
        return longitudeStepDeg;
    }

    /** Height of a cell, m, and its width at the middle latitude. */
    public double cellM() {
        return Math.toRadians(latitudeStepDeg) * Ellipsoid.meridionalRadiusM((northDeg() + southDeg()) / 2);
    }

    public int index(int row, int column) {
        if (row < 0 || row >= rows || column < 0 || column >= columns)
            throw new IndexOutOfBoundsException("row " + row + ", column " + column);
        return row * columns + column;
    }

    public int rowOf(int index) {
        return index / columns;
    }

    public int columnOf(int index) {
        return index % columns;
    }

    /** Latitude of the centres of a row, degrees. */
    public double latitudeOf(int row) {
        return northDeg - (firstRow + row + 0.5) * latitudeStepDeg;
    }

    /** Longitude of the centres of a column, degrees, not folded at 180. */
    public double longitudeOf(int column) {
        return westDeg + (firstColumn + column + 0.5) * longitudeStepDeg;
    }

    /** Centre of a cell. */
    public Position positionOf(int row, int column) {
        return new Position(latitudeOf(row), longitudeOf(column));
    }

    /** Centre of a cell by its index. */
    public Position positionOf(int index) {
        return positionOf(rowOf(index), columnOf(index));
    }

    /** Index of the cell that holds the position, or −1 where the grid does not reach. */
    public int indexOf(Position position) {
        double eastward = (position.longitudeDeg() - westDeg) % 360;
        if (eastward < 0) eastward += 360;
        double row = Math.floor((northDeg - position.latitudeDeg()) / latitudeStepDeg) - firstRow;
        double column = Math.floor(eastward / longitudeStepDeg) - firstColumn;
        if (!(row >= 0 && row < rows && column >= 0 && column < columns)) return -1;
        return (int) row * columns + (int) column;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CellGrid grid
                && rows == grid.rows
                && columns == grid.columns
                && firstRow == grid.firstRow
                && firstColumn == grid.firstColumn
                && northDeg == grid.northDeg
                && westDeg == grid.westDeg
                && latitudeStepDeg == grid.latitudeStepDeg
                && longitudeStepDeg == grid.longitudeStepDeg;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(northDeg) * 31 + Double.hashCode(westDeg) + rows;
    }

    /** Why there is no grid of these cells within this radius, and what would fit, to be asked before {@link #around}; nothing if there is. */
    public static Optional<String> refusal(Position centre, double radiusM, double cellM) {
        return refusal(centre, radiusM, cellM, LossGrid.BYTES_PER_CELL, MOST_CELLS);
    }

    /** The same where so many pairs of antenna heights are kept for every cell and files are made of them: as far as memory has room. */
    public static Optional<String> refusal(Position centre, double radiusM, double cellM, int pairs) {
        double bytes = LossGrid.BYTES_PER_CELL * pairs + BYTES_BESIDE;
        long most = Memory.most(MOST_CELLS, bytes);
        return refusal(centre, radiusM, cellM, bytes, most)
                .map(sentence -> sentence + "." + Memory.advice(most, MOST_CELLS, bytes));
    }

    private static Optional<String> refusal(
            Position centre, double radiusM, double cellM, double bytesPerCell, long most) {
        if (!LATITUDE.accepts(centre.latitudeDeg()))
            return Optional.of("the middle of an area is at latitude " + NumberText.plain(centre.latitudeDeg())
                    + ", allowed is " + LATITUDE.words() + ": " + LATITUDE.advice());
        if (!(cellM >= 1) || !(radiusM >= cellM) || Double.isInfinite(radiusM))
            return Optional.of("a radius of " + NumberText.plain(radiusM) + " m holds no cells of "
                    + NumberText.plain(cellM) + " m: take cells of 1 m and above, no larger than the radius");
        double side = 2 * Math.floor(radiusM / cellM) + 1;
        if (side * side <= most) return Optional.empty();
        double largestSide = Math.floor(Math.sqrt(most)) - 1;
        return Optional.of(String.format(
                Locale.ROOT,
                "a radius of %.1f km in cells of %.0f m is %.1f million cells (%.0f MB), at most %.1f million fit:"
                        + " take at most %.1f km, or cells of %.0f m",
                radiusM / 1000,
                cellM,
                side * side / 1e6,
                side * side * bytesPerCell / 1e6,
                most / 1e6,
                Math.floor(largestSide / 2 * cellM / 100) / 10,
                Math.ceil(2 * radiusM / largestSide)));
    }

    private static int sideOf(double radiusM, double cellM) {
        return 2 * (int) Math.floor(radiusM / cellM) + 1;
    }
}
