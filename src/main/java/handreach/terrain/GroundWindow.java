package handreach.terrain;

import handreach.geodesy.Position;
import java.util.Arrays;
import java.util.BitSet;

/**
 * The finest posts around a place, copied into one array, for work that asks for the same ground millions of times.
 *
 * <p>Gives the same heights as the folder it was cut from, bit for bit. What the window does not hold (projected tiles, voids, the
 * ground of coarser tiles, positions outside) is asked of the folder; if the finest tile there is projected, or the window would
 * not fit into its bound of memory, everything is.
 */
public final class GroundWindow implements Elevation {
    private static final int MOST_POSTS = 64 << 20;
    private static final double METRES_PER_DEGREE = 111_000;

    private final TileFolder folder;
    private final Lattice lattice;
    private final int row0;
    private final int column0;
    private final Posts posts;

    private GroundWindow(TileFolder folder, Lattice lattice, int row0, int column0, Posts posts) {
        this.folder = folder;
        this.lattice = lattice;
        this.row0 = row0;
        this.column0 = column0;
        this.posts = posts;
    }

    /**
     * The window that holds a disc.
     *
     * @shape folder and disc in, window out; reads the tiles it touches; at most 64 Mi posts (256 MiB)
     * @unit metres
     * @valid every place; where no window can be cut it hands every question on to the folder
     * @error none against the folder
     * @source no formula
     */
    public static GroundWindow over(TileFolder folder, Position centre, double radiusM) {
        if (!(radiusM >= 0) || Double.isInfinite(radiusM))
            throw new IllegalArgumentException("radius " + radiusM + " m");
        double highDeg = radiusM / METRES_PER_DEGREE + 0.01;
        double latMost = Math.min(89.9, Math.abs(centre.latitudeDeg()) + highDeg);
        double wideDeg = highDeg / Math.cos(Math.toRadians(latMost));
        double west = centre.longitudeDeg() - wideDeg;
        double east = centre.longitudeDeg() + wideDeg;
        if (west < -180 || east > 180) return handingOn(folder);
        TileBounds bounds = new TileBounds(
                Math.max(-90, centre.latitudeDeg() - highDeg),
                west,
                Math.min(90, centre.latitudeDeg() + highDeg),
                east);
        Tile[] tiles = folder.index().within(bounds);
        if (tiles.length == 0 || !tiles[0].lattice.frame.isDegrees()) return handingOn(folder);
        Lattice lattice = tiles[0].lattice;
        int lastOwn = 0;
        for (int i = 0; i < tiles.length; i++) if (tiles[i].lattice == lattice) lastOwn = i;
        for (int i = 0; i < lastOwn; i++) if (tiles[i].lattice != lattice) return handingOn(folder);
        return cut(folder, lattice, Arrays.copyOf(tiles, lastOwn + 1), bounds);
    }

    private static GroundWindow handingOn(TileFolder folder) {
        return new GroundWindow(folder, null, 0, 0, null);
    }

    private static GroundWindow cut(TileFolder folder, Lattice lattice, Tile[] tiles, TileBounds bounds) {
        int top = Integer.MAX_VALUE;
        int left = Integer.MAX_VALUE;
        int bottom = Integer.MIN_VALUE;
        int right = Integer.MIN_VALUE;
        for (Tile tile : tiles) {
            top = Math.min(top, tile.row0);
            left = Math.min(left, tile.column0);
            bottom = Math.max(bottom, tile.row0 + tile.rows - 1);
            right = Math.max(right, tile.column0 + tile.columns - 1);
        }
        top = Math.max(top, (int) Math.floor(lattice.row(bounds.northDeg())));
        bottom = Math.min(bottom, (int) Math.ceil(lattice.row(bounds.southDeg())));
        left = Math.max(left, (int) Math.floor(lattice.column(bounds.westDeg())));
        right = Math.min(right, (int) Math.ceil(lattice.column(bounds.eastDeg())));
        long rows = bottom - (long) top + 1;
        long columns = right - (long) left + 1;
        if (rows < 2 || columns < 2 || rows * columns > MOST_POSTS) return handingOn(folder);
        Posts posts = joined(folder.cache(), tiles, top, left, (int) rows, (int) columns);
        return new GroundWindow(folder, lattice, top, left, posts);
    }

    private static Posts joined(TileCache cache, Tile[] tiles, int top, int left, int rows, int columns) {
        boolean isWhole = true;
        for (Tile tile : tiles) isWhole &= !(cache.posts(tile) instanceof FloatPosts);
        if (isWhole) {
            if (tiles.length == 1 && cache.posts(tiles[0]) instanceof ShortPosts own)
                return ShortPosts.asTheyAre(rows, columns, part(tiles[0], own, top, left, rows, columns));
            short[] h = new short[rows * columns];
            Arrays.fill(h, ShortPosts.VOID);
            BitSet differing = new BitSet();
            for (Tile tile : tiles)
                if (cache.posts(tile) instanceof ShortPosts own)
                    eachShared(tile, top, left, rows, columns, (mine, theirs) -> {
                        short value = own.raw(theirs);
                        if (h[mine] == ShortPosts.VOID) h[mine] = value;
                        else if (value != ShortPosts.VOID && value != h[mine]) differing.set(mine);
                    });
            differing.stream().forEach(k -> h[k] = ShortPosts.VOID);
            return ShortPosts.asTheyAre(rows, columns, h);
        }
        float[] h = new float[rows * columns];
        Arrays.fill(h, Float.NaN);
        BitSet differing = new BitSet();
        for (Tile tile : tiles) {
            Posts own = cache.posts(tile);
            eachShared(tile, top, left, rows, columns, (mine, theirs) -> {
                float value = (float) own.at(theirs / tile.columns, theirs % tile.columns);
                if (Float.isNaN(h[mine])) h[mine] = value;
                else if (!Float.isNaN(value) && value != h[mine]) differing.set(mine);
            });
        }
        differing.stream().forEach(k -> h[k] = Float.NaN);
        return FloatPosts.asTheyAre(rows, columns, h);
    }

    /** The posts of a window that lies within one tile. */
    private static short[] part(Tile tile, ShortPosts own, int top, int left, int rows, int columns) {
        short[] h = new short[rows * columns];
        for (int row = 0; row < rows; row++)
            own.copy((top + row - tile.row0) * tile.columns + left - tile.column0, columns, h, row * columns);
        return h;
    }

    private interface Pair {
        void take(int mine, int theirs);
    }

    private static void eachShared(Tile tile, int top, int left, int rows, int columns, Pair pair) {
        int firstRow = Math.max(top, tile.row0);
        int lastRow = Math.min(top + rows, tile.row0 + tile.rows);
        int firstColumn = Math.max(left, tile.column0);
        int lastColumn = Math.min(left + columns, tile.column0 + tile.columns);
        for (int row = firstRow; row < lastRow; row++)
            for (int column = firstColumn; column < lastColumn; column++)
                pair.take(
                        (row - top) * columns + column - left,
                        (row - tile.row0) * tile.columns + column - tile.column0);
    }

    /** Whether it holds posts of its own rather than handing every question on. */
    boolean isLoaded() {
        return posts != null;
    }

    @Override
    public void heights(double[] latitudeDeg, double[] longitudeDeg, int count, double[] heightM, boolean[] isVoid) {
        if (posts == null) {
            folder.heights(latitudeDeg, longitudeDeg, count, heightM, isVoid);
            return;
        }
        GroundProbe probe = null;
        int i = 0;
        while (i < count) {
            i = posts.run(lattice, row0, column0, latitudeDeg, longitudeDeg, i, count, heightM, isVoid);
            if (i == count) return;
            if (probe == null) probe = new GroundProbe(folder.index(), folder.cache());
            double h = probe.heightM(latitudeDeg[i], longitudeDeg[i]);
            isVoid[i] = Double.isNaN(h);
            heightM[i] = isVoid[i] ? 0 : h;
            i++;
        }
    }

    @Override
    public double postSpacingM(double latitudeDeg, double longitudeDeg, double defaultM) {
        return folder.postSpacingM(latitudeDeg, longitudeDeg, defaultM);
    }

    @Override
    public int countFilled(double[] latitudeDeg, double[] longitudeDeg, int count) {
        return folder.countFilled(latitudeDeg, longitudeDeg, count);
    }
}
