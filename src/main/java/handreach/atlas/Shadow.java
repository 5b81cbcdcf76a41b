package handreach.atlas;

import handreach.reach.CellGrid;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Ground on which nobody of all positions is heard, in pieces.
 *
 * @param cells number of targets in it
 * @param areaKm2 ground that they stand for, km²
 * @param deepest the target farthest from all that is heard
 * @param depth steps from the deepest target to the nearest that is heard or lies outside, over sides and corners
 */
public record Shadow(int cells, double areaKm2, int deepest, int depth) {
    /**
     * All pieces, the largest first.
     *
     * @shape  targets in, pieces out; O(targets)
     * @unit   as the record
     * @valid  targets of the region for which {@code isDark} holds; those that touch by a side or a corner are one piece
     * @error  one cell along the edges
     * @source definition, docs/atlas.md
     */
    public static List<Shadow> pieces(AtlasGrid targets, IntPredicate isDark) {
        CellGrid cells = targets.cells();
        int[] depth = depths(cells, isDark);
        boolean[] seen = new boolean[cells.count()];
        List<Shadow> found = new ArrayList<>();
        for (int cell = 0; cell < seen.length; cell++)
            if (isDark.test(cell) && !seen[cell]) found.add(piece(targets, isDark, depth, seen, cell));
        found.sort(Comparator.comparingDouble((Shadow s) -> -s.areaKm2()).thenComparingInt(Shadow::deepest));
        return found;
    }

    private static Shadow piece(AtlasGrid targets, IntPredicate isDark, int[] depth, boolean[] seen, int start) {
        ArrayDeque<Integer> front = new ArrayDeque<>(List.of(start));
        seen[start] = true;
        int count = 0;
        int deepest = start;
        double km2 = 0;
        while (!front.isEmpty()) {
            int at = front.poll();
            count++;
            km2 += targets.areaKm2(at);
            if (depth[at] > depth[deepest]) deepest = at;
            for (int next : around(targets.cells(), at)) {
                if (seen[next] || !isDark.test(next)) continue;
                seen[next] = true;
                front.add(next);
            }
        }
        return new Shadow(count, km2, deepest, depth[deepest]);
    }

    /** Steps from each dark target to the nearest that is not. */
    private static int[] depths(CellGrid cells, IntPredicate isDark) {
        int[] depth = new int[cells.count()];
        Arrays.fill(depth, -1);
        ArrayDeque<Integer> front = new ArrayDeque<>();
        for (int cell = 0; cell < depth.length; cell++)
            if (!isDark.test(cell)) {
                depth[cell] = 0;
                front.add(cell);
            } else if (around(cells, cell).size() < 8) {
                depth[cell] = 1;
                front.addLast(cell);
            }
        List<Integer> ordered = new ArrayList<>(front);
        ordered.sort(Comparator.comparingInt(cell -> depth[cell]));
        front = new ArrayDeque<>(ordered);
        while (!front.isEmpty()) {
            int at = front.poll();
            for (int next : around(cells, at)) {
                if (depth[next] >= 0) continue;
                depth[next] = depth[at] + 1;
                front.add(next);
            }
        }
        return depth;
    }

    private static List<Integer> around(CellGrid cells, int cell) {
        List<Integer> found = new ArrayList<>(8);
        int row = cells.rowOf(cell);
        int column = cells.columnOf(cell);
        for (int r = Math.max(0, row - 1); r <= Math.min(cells.rows() - 1, row + 1); r++)
            for (int c = Math.max(0, column - 1); c <= Math.min(cells.columns() - 1, column + 1); c++)
                if (r != row || c != column) found.add(cells.index(r, c));
        return found;
    }
}
