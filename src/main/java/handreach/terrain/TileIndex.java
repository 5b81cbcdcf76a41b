package handreach.terrain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Which tiles reach into which square degree, finest first. */
final class TileIndex {
    private static final Tile[] NONE = {};

    private final Tile[][] cells = new Tile[180 * 360][];

    /** The tiles in order of preference. */
    TileIndex(List<Tile> ranked) {
        Map<Integer, List<Tile>> found = new HashMap<>();
        for (Tile tile : ranked)
            for (int cell : cellsOf(tile.summary.bounds(), marginDeg(tile)))
                found.computeIfAbsent(cell, c -> new ArrayList<>()).add(tile);
        Arrays.fill(cells, NONE);
        found.forEach((cell, tiles) -> cells[cell] = tiles.toArray(NONE));
    }

    Tile[] at(double latitudeDeg, double longitudeDeg) {
        if (!(Math.abs(latitudeDeg) <= 90) || !(Math.abs(longitudeDeg) <= 180)) return NONE;
        return cells[cell((int) Math.floor(latitudeDeg), (int) Math.floor(longitudeDeg))];
    }

    /** All tiles that reach into a rectangle, finest first. */
    Tile[] within(TileBounds bounds) {
        return cellsOf(bounds, 0).stream()
                .flatMap(cell -> Arrays.stream(cells[cell]))
                .distinct()
                .sorted((a, b) -> Integer.compare(a.rank(), b.rank()))
                .toArray(Tile[]::new);
    }

    /** One cell of the tile, and a little more for the curvature of projected edges. */
    static double marginDeg(Tile tile) {
        return tile.lattice.frame.isDegrees()
                ? 1.01 / Math.min(tile.lattice.perX, tile.lattice.perY)
                : 2 * tile.summary.spacing().smallerM() / 20_000;
    }

    private static List<Integer> cellsOf(TileBounds bounds, double marginDeg) {
        List<Integer> cells = new ArrayList<>();
        int south = (int) Math.floor(Math.max(-90, bounds.southDeg() - marginDeg));
        int north = (int) Math.floor(Math.min(89.9, bounds.northDeg() + marginDeg));
        double eastDeg = bounds.eastDeg() >= bounds.westDeg() ? bounds.eastDeg() : bounds.eastDeg() + 360;
        int west = (int) Math.floor(bounds.westDeg() - marginDeg);
        int east = (int) Math.min(west + 359, Math.floor(eastDeg + marginDeg));
        for (int lat = south; lat <= north; lat++) for (int lon = west; lon <= east; lon++) cells.add(cell(lat, lon));
        return cells;
    }

    private static int cell(int latitude, int longitude) {
        return Math.min(179, latitude + 90) * 360 + Math.floorMod(longitude + 180, 360);
    }
}
