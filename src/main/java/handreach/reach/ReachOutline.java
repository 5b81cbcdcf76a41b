package handreach.reach;

import handreach.geodesy.Position;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

/**
 * The outline of a set of cells, as polygons that follow the cell edges. Cells belong together when they share a side; two that
 * meet at a corner only do not. Holes are kept. Coordinates are longitude, latitude in degrees; shells run counter-clockwise.
 */
public final class ReachOutline {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** East, north, west, south: a step along a cell edge with the region on the left. */
    private static final int[] STEP_COLUMN = {1, 0, -1, 0};

    private static final int[] STEP_ROW = {0, -1, 0, 1};

    private final CellGrid grid;
    private final boolean[] inside;
    private final int[] part;
    private final int parts;

    private ReachOutline(CellGrid grid, boolean[] inside) {
        this.grid = grid;
        this.inside = inside;
        this.part = new int[inside.length];
        this.parts = label();
    }

    /**
     * All parts of the set, in the order of their northernmost, then westernmost cell.
     *
     * @shape  one polygon per part; O(cells)
     * @unit   coordinates degrees, longitude first
     * @valid  any set, the empty one gives no polygon
     * @error  none against the cells; the cells stand for their centres
     * @source boundary tracing, common practice, no source
     */
    public static MultiPolygon of(CellGrid grid, IntPredicate isInside) {
        ReachOutline outline = new ReachOutline(grid, fill(grid, isInside));
        return FACTORY.createMultiPolygon(outline.polygons(0).toArray(new Polygon[0]));
    }

    /**
     * The part that holds a position; empty when the position's own cell is not in the set.
     *
     * @shape  at most one polygon; O(cells)
     * @unit   coordinates degrees, longitude first
     * @valid  any set, any position
     * @error  none against the cells
     * @source as {@link #of}
     */
    public static Optional<Polygon> contiguous(CellGrid grid, IntPredicate isInside, Position position) {
        int cell = grid.indexOf(position);
        if (cell < 0) return Optional.empty();
        ReachOutline outline = new ReachOutline(grid, fill(grid, isInside));
        if (!outline.inside[cell]) return Optional.empty();
        return Optional.of(outline.polygons(outline.part[cell]).get(0));
    }

    private static boolean[] fill(CellGrid grid, IntPredicate isInside) {
        boolean[] inside = new boolean[grid.count()];
        for (int i = 0; i < inside.length; i++) inside[i] = isInside.test(i);
        return inside;
    }

    /** Numbers the parts from 1 by flooding over shared sides. */
    private int label() {
        int[] stack = new int[64];
        int found = 0;
        for (int seed = 0; seed < inside.length; seed++) {
            if (!inside[seed] || part[seed] != 0) continue;
            found++;
            int top = 0;
            stack[top++] = seed;
            part[seed] = found;
            while (top > 0) {
                int cell = stack[--top];
                int row = grid.rowOf(cell);
                int column = grid.columnOf(cell);
                for (int k = 0; k < 4; k++) {
                    int r = row + STEP_ROW[k];
                    int c = column + STEP_COLUMN[k];
                    if (!isIn(r, c)) continue;
                    int next = r * grid.columns() + c;
                    if (part[next] != 0) continue;
                    part[next] = found;
                    if (top == stack.length) stack = Arrays.copyOf(stack, 2 * top);
                    stack[top++] = next;
                }
            }
        }
        return found;
    }

    private boolean isIn(int row, int column) {
        return row >= 0
                && row < grid.rows()
                && column >= 0
                && column < grid.columns()
                && inside[row * grid.columns() + column];
    }

    /** Polygons of one part, or of all when the part is 0. */
    private List<Polygon> polygons(int wanted) {
        List<List<LinearRing>> holes = new ArrayList<>();
        LinearRing[] shells = new LinearRing[parts + 1];
        for (int i = 0; i <= parts; i++) holes.add(new ArrayList<>());
        boolean[] southSeen = new boolean[inside.length];
        boolean[] northSeen = new boolean[inside.length];
        for (int cell = 0; cell < inside.length; cell++) {
            if (!inside[cell] || wanted != 0 && part[cell] != wanted) continue;
            int row = grid.rowOf(cell);
            int column = grid.columnOf(cell);
            if (!isIn(row - 1, column) && !northSeen[cell]) {
                keep(trace(row, column + 1, 2, northSeen, southSeen), part[cell], shells, holes);
            }
            if (!isIn(row + 1, column) && !southSeen[cell])
                keep(trace(row + 1, column, 0, northSeen, southSeen), part[cell], shells, holes);
        }
        List<Polygon> found = new ArrayList<>();
        for (int i = 1; i <= parts; i++)
            if (shells[i] != null)
                found.add(FACTORY.createPolygon(shells[i], holes.get(i).toArray(new LinearRing[0])));
        return found;
    }

    /**
     * Keeps a walk as rings. A walk that passes a corner twice is taken apart there: a ring may touch another at a point, never
     * itself.
     */
    private void keep(List<Integer> walk, int part, LinearRing[] shells, List<List<LinearRing>> holes) {
        List<Integer> open = new ArrayList<>();
        Map<Integer, Integer> placeOf = new HashMap<>();
        for (int corner : walk) {
            Integer before = placeOf.get(corner);
            if (before != null) {
                List<Integer> loop = open.subList(before, open.size());
                keepRing(loop, part, shells, holes);
                for (int passed : loop) placeOf.remove(passed);
                loop.clear();
            }
            placeOf.put(corner, open.size());
            open.add(corner);
        }
        keepRing(open, part, shells, holes);
    }

    private void keepRing(List<Integer> corners, int part, LinearRing[] shells, List<List<LinearRing>> holes) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) ring[i] = corner(corners.get(i % corners.size()));
        LinearRing found = FACTORY.createLinearRing(ring);
        if (Orientation.isCCW(ring)) shells[part] = found;
        else holes.get(part).add(found);
    }

    /**
     * Walks one ring with the region on the left, from a corner in a direction, marking the northern and southern edges passed.
     * Where four edges meet it turns left, so that corners alone join nothing.
     */
    private List<Integer> trace(int startRow, int startColumn, int startWay, boolean[] northSeen, boolean[] southSeen) {
        List<Integer> corners = new ArrayList<>();
        int row = startRow;
        int column = startColumn;
        int way = startWay;
        int before = -1;
        do {
            if (way != before) corners.add(row * (grid.columns() + 1) + column);
            if (way == 2) northSeen[row * grid.columns() + column - 1] = true;
            if (way == 0) southSeen[(row - 1) * grid.columns() + column] = true;
            row += STEP_ROW[way];
            column += STEP_COLUMN[way];
            before = way;
            way = nextWay(row, column, way);
        } while (row != startRow || column != startColumn || way != startWay);
        if (before == startWay) corners.remove(0);
        return corners;
    }

    private int nextWay(int row, int column, int way) {
        for (int turn = 1; turn >= -1; turn--) {
            int next = way + turn & 3;
            if (isEdge(row, column, next)) return next;
        }
        throw new IllegalStateException("an outline ended at row " + row + ", column " + column);
    }

    /** Whether a cell of the set lies to the left and none to the right of the edge that leaves the corner this way. */
    private boolean isEdge(int row, int column, int way) {
        return switch (way) {
            case 0 -> isIn(row - 1, column) && !isIn(row, column);
            case 1 -> isIn(row - 1, column - 1) && !isIn(row - 1, column);
            case 2 -> isIn(row, column - 1) && !isIn(row - 1, column - 1);
            default -> isIn(row, column) && !isIn(row, column - 1);
        };
    }

    private Coordinate corner(int corner) {
        int row = corner / (grid.columns() + 1);
        int column = corner % (grid.columns() + 1);
        return new Coordinate(
                grid.westDeg() + column * grid.longitudeStepDeg(), grid.northDeg() - row * grid.latitudeStepDeg());
    }
}
