package handreach.terrain;

/**
 * Finds the height at one position with all care: seams, voids, overlaps, projected tiles. For use by one thread.
 *
 * <p>Tiles are asked from the finest on. Of a tile, only the posts with weight matter; those it does not have itself come from
 * tiles of the same lattice. If no tile can answer so, a post missing beyond the edge of a lattice is taken from the ground of
 * another one, which closes the narrow gap between tiles of different resolution.
 */
final class GroundProbe {
    /** Nearer to a post row than this, in cells, counts as on it: far below a millimetre of height. */
    private static final double ON_POST = 1e-6;

    private final TileIndex index;
    private final TileCache cache;
    private final double[] xy = new double[2];
    private Tile tile;
    private boolean isFilled;
    private Lattice lattice;
    private int row;
    private int column;
    private double south;
    private double east;

    GroundProbe(TileIndex index, TileCache cache) {
        this.index = index;
        this.cache = cache;
    }

    /** Whether the position lies between the outermost posts of a tile. */
    static boolean covers(Tile tile, double latitudeDeg, double longitudeDeg) {
        if (tile.lattice.frame.isDegrees()) return coversPlane(tile, longitudeDeg, latitudeDeg);
        double[] plane = new double[2];
        tile.lattice.frame.toPlane(latitudeDeg, longitudeDeg, plane);
        return coversPlane(tile, plane[0], plane[1]);
    }

    private static boolean coversPlane(Tile tile, double x, double y) {
        double r = tile.lattice.row(y) - tile.row0;
        double c = tile.lattice.column(x) - tile.column0;
        if (tile.lattice.turn > 0 && c < -1) c += tile.lattice.turn;
        else if (tile.lattice.turn > 0 && c > tile.columns) c -= tile.lattice.turn;
        return r >= -ON_POST && r <= tile.rows - 1 + ON_POST && c >= -ON_POST && c <= tile.columns - 1 + ON_POST;
    }

    /** Height, m; NaN where there is none. */
    double heightM(double latitudeDeg, double longitudeDeg) {
        Tile[] tiles = index.at(latitudeDeg, longitudeDeg);
        lattice = null;
        for (Tile candidate : tiles) {
            double h = from(candidate, tiles, latitudeDeg, longitudeDeg, false);
            if (!Double.isNaN(h)) return h;
        }
        for (Tile candidate : tiles) {
            double h = from(candidate, tiles, latitudeDeg, longitudeDeg, true);
            if (!Double.isNaN(h)) return h;
        }
        return Double.NaN;
    }

    /** The tile that gave the last height. */
    Tile tile() {
        return tile;
    }

    boolean isFilled() {
        return isFilled;
    }

    /** First exactly where the position lies; if that leans on a missing post, on the row or column it lies next to. */
    private double from(Tile candidate, Tile[] tiles, double latitudeDeg, double longitudeDeg, boolean mayLeave) {
        locate(candidate.lattice, latitudeDeg, longitudeDeg);
        double h = between(candidate, tiles, row, column, south, east, mayLeave);
        if (!Double.isNaN(h)) return h;
        boolean isOnRow = south < ON_POST || south > 1 - ON_POST;
        boolean isOnColumn = east < ON_POST || east > 1 - ON_POST;
        if (!isOnRow && !isOnColumn) return Double.NaN;
        return between(
                candidate,
                tiles,
                isOnRow && south > 0.5 ? row + 1 : row,
                isOnColumn && east > 0.5 ? column + 1 : column,
                isOnRow ? 0 : south,
                isOnColumn ? 0 : east,
                mayLeave);
    }

    private double between(
            Tile candidate, Tile[] tiles, int row, int column, double south, double east, boolean mayLeave) {
        int down = south > 0 ? 1 : 0;
        int right = east > 0 ? 1 : 0;
        if (!touches(candidate, row - candidate.row0, candidate.inside(column), down, right)) return Double.NaN;
        tile = holderOfCell(candidate, tiles, row, column);
        isFilled = false;
        double nw = corner(tile, tiles, row, column, mayLeave);
        if (Double.isNaN(nw)) return nw;
        double ne = right > 0 ? corner(tile, tiles, row, column + 1, mayLeave) : nw;
        double sw = down > 0 ? corner(tile, tiles, row + 1, column, mayLeave) : nw;
        double se = down == 0 ? ne : right == 0 ? sw : corner(tile, tiles, row + 1, column + 1, mayLeave);
        return Lattice.bilinear(nw, ne, sw, se, east, south);
    }

    /**
     * The first tile of the lattice that has the whole cell to the south-east of the post, else the candidate. Tiles may disagree on a
     * shared edge; so the answer on it is always that of the tile beyond.
     */
    private static Tile holderOfCell(Tile candidate, Tile[] tiles, int row, int column) {
        if (holds(candidate, row, column)) return candidate;
        for (Tile other : tiles) if (other.lattice == candidate.lattice && holds(other, row, column)) return other;
        return candidate;
    }

    private static boolean holds(Tile tile, int row, int column) {
        int r = row - tile.row0;
        int c = tile.inside(column);
        return tile.hasPost(r, c) && tile.hasPost(r + 1, c + 1);
    }

    private static boolean touches(Tile tile, int row, int column, int lastRow, int lastColumn) {
        return tile.hasPost(row, column)
                || tile.hasPost(row + lastRow, column)
                || tile.hasPost(row, column + lastColumn)
                || tile.hasPost(row + lastRow, column + lastColumn);
    }

    private void locate(Lattice wanted, double latitudeDeg, double longitudeDeg) {
        if (wanted == lattice) return;
        lattice = wanted;
        xy[0] = longitudeDeg;
        xy[1] = latitudeDeg;
        if (!wanted.frame.isDegrees()) wanted.frame.toPlane(latitudeDeg, longitudeDeg, xy);
        double y = wanted.row(xy[1]);
        double x = wanted.column(xy[0]);
        double wholeY = Math.floor(y);
        double wholeX = Math.floor(x);
        south = y - wholeY;
        east = x - wholeX;
        row = (int) wholeY;
        column = (int) wholeX;
    }

    private double corner(Tile candidate, Tile[] tiles, int latticeRow, int latticeColumn, boolean mayLeave) {
        double h = post(candidate, latticeRow, latticeColumn);
        if (!Double.isNaN(h)) return h;
        for (Tile other : tiles) {
            if (other == candidate || other.lattice != candidate.lattice) continue;
            h = post(other, latticeRow, latticeColumn);
            if (!Double.isNaN(h)) return h;
        }
        return mayLeave ? beyond(candidate, tiles, latticeRow, latticeColumn) : Double.NaN;
    }

    private double post(Tile holder, int latticeRow, int latticeColumn) {
        int r = latticeRow - holder.row0;
        int c = holder.inside(latticeColumn);
        if (!holder.hasPost(r, c)) return Double.NaN;
        Posts posts = cache.posts(holder);
        isFilled |= posts.isFilled(r, c);
        return posts.at(r, c);
    }

    /** The ground of another lattice where a post of this one would stand. */
    private double beyond(Tile candidate, Tile[] tiles, int latticeRow, int latticeColumn) {
        Lattice own = candidate.lattice;
        var place = own.frame.toPosition(own.x(latticeColumn), own.y(latticeRow));
        GroundProbe other = null;
        for (Tile neighbour : tiles) {
            if (neighbour.lattice == own || !covers(neighbour, place.latitudeDeg(), place.longitudeDeg())) continue;
            if (other == null) other = new GroundProbe(index, cache);
            double h = other.from(neighbour, tiles, place.latitudeDeg(), place.longitudeDeg(), false);
            if (Double.isNaN(h)) continue;
            isFilled |= other.isFilled;
            return h;
        }
        return Double.NaN;
    }
}
