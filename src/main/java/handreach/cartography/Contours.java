package handreach.cartography;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** Lines of equal height over a lattice of heights. */
public final class Contours {
    /** Every fifth line is an index line: common practice of topographic maps, no source. */
    private static final int LINES_TO_AN_INDEX = 5;

    private static final double[] INTERVALS_M = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};
    private static final int MOST_LEVELS = 4000;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final HeightLattice ground;
    private final int columns;
    private final int rows;
    /** Up to two neighbours of each lattice edge on the line now being traced; −1 is none. */
    private final int[] neighbour;

    private Contours(HeightLattice ground) {
        this.ground = ground;
        this.columns = ground.columns();
        this.rows = ground.rows();
        this.neighbour = new int[4 * columns * rows];
    }

    /**
     * The interval that gives about the wanted number of lines between the lowest and the highest ground.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   heights and result m
     * @valid  every relief; level ground gets 1 m
     * @error  none; result is one of 1, 2, 5 times a power of ten, 1 to 1000 m
     * @source common practice, no source
     */
    public static double intervalM(double lowestM, double highestM, int wantedLines) {
        if (wantedLines < 1) throw new IllegalArgumentException("wanted lines " + wantedLines);
        double wish = (highestM - lowestM) / wantedLines;
        for (double interval : INTERVALS_M) if (interval >= wish) return interval;
        return INTERVALS_M[INTERVALS_M.length - 1];
    }

    /**
     * All contours at whole multiples of the interval.
     *
     * @shape  one pass over the lattice for each level; pure
     * @unit   interval m
     * @valid  cells with a void corner carry no line; at most 4000 levels, more: IllegalArgumentException
     * @error  linear between nodes, so on the bilinear surface exact on the lattice lines
     * @source marching squares; a saddle is resolved by the mean of its four corners; common practice, no source
     */
    public static List<Contour> of(HeightLattice ground, double intervalM) {
        if (!(intervalM > 0)) throw new IllegalArgumentException("interval " + intervalM);
        OptionalDouble lowest = ground.lowestM();
        OptionalDouble highest = ground.highestM();
        if (lowest.isEmpty() || highest.isEmpty()) return List.of();
        long first = (long) Math.ceil(lowest.getAsDouble() / intervalM);
        long last = (long) Math.floor(highest.getAsDouble() / intervalM);
        if (last - first >= MOST_LEVELS) throw new IllegalArgumentException((last - first + 1) + " contour levels");
        Contours work = new Contours(ground);
        List<Contour> found = new ArrayList<>();
        for (long k = first; k <= last; k++) {
            double levelM = k * intervalM;
            boolean isIndex = Math.floorMod(k, (long) LINES_TO_AN_INDEX) == 0;
            for (LineString line : work.linesAt(levelM)) found.add(new Contour(levelM, isIndex, line));
        }
        return found;
    }

    private List<LineString> linesAt(double levelM) {
        Arrays.fill(neighbour, -1);
        for (int r = 0; r + 1 < rows; r++) for (int c = 0; c + 1 < columns; c++) linkCell(c, r, levelM);
        List<LineString> lines = new ArrayList<>();
        int edges = neighbour.length / 2;
        for (int e = 0; e < edges; e++) {
            if (neighbour[2 * e] >= 0 && neighbour[2 * e + 1] < 0) add(lines, trace(e, levelM));
        }
        for (int e = 0; e < edges; e++) if (neighbour[2 * e] >= 0) add(lines, trace(e, levelM));
        return lines;
    }

    private void linkCell(int c, int r, double levelM) {
        if (ground.isVoid(c, r) || ground.isVoid(c + 1, r) || ground.isVoid(c, r + 1) || ground.isVoid(c + 1, r + 1))
            return;
        float nw = ground.heightM(c, r);
        float ne = ground.heightM(c + 1, r);
        float sw = ground.heightM(c, r + 1);
        float se = ground.heightM(c + 1, r + 1);
        int high = (nw >= levelM ? 1 : 0) | (ne >= levelM ? 2 : 0) | (se >= levelM ? 4 : 0) | (sw >= levelM ? 8 : 0);
        int north = 2 * (r * columns + c);
        int south = 2 * ((r + 1) * columns + c);
        int west = north + 1;
        int east = 2 * (r * columns + c + 1) + 1;
        switch (high) {
            case 1, 14 -> link(north, west);
            case 2, 13 -> link(north, east);
            case 4, 11 -> link(east, south);
            case 8, 7 -> link(south, west);
            case 3, 12 -> link(west, east);
            case 6, 9 -> link(north, south);
            case 5, 10 -> {
                boolean isMiddleHigh = (nw + ne + sw + se) / 4 >= levelM;
                boolean cutsNorthEast = (high == 5) == isMiddleHigh;
                link(north, cutsNorthEast ? east : west);
                link(south, cutsNorthEast ? west : east);
            }
            default -> {
                // no corner, or all four, above the level: no line through this cell
            }
        }
    }

    private void link(int a, int b) {
        neighbour[neighbour[2 * a] < 0 ? 2 * a : 2 * a + 1] = b;
        neighbour[neighbour[2 * b] < 0 ? 2 * b : 2 * b + 1] = a;
    }

    /** Follows the line from an edge to its end, or round to itself, and takes it off the table. */
    private List<Coordinate> trace(int start, double levelM) {
        List<Coordinate> points = new ArrayList<>();
        int previous = -1;
        int edge = start;
        while (edge >= 0) {
            Coordinate point = crossing(edge, levelM);
            if (points.isEmpty() || !points.get(points.size() - 1).equals2D(point)) points.add(point);
            int a = neighbour[2 * edge];
            int b = neighbour[2 * edge + 1];
            int next = a == previous && !(previous < 0) ? b : a;
            neighbour[2 * edge] = -1;
            neighbour[2 * edge + 1] = -1;
            previous = edge;
            edge = next == start && points.size() > 1 ? close(points) : next;
        }
        return points;
    }

    private static int close(List<Coordinate> points) {
        if (!points.get(0).equals2D(points.get(points.size() - 1)))
            points.add(points.get(0).copy());
        return -1;
    }

    /** Where the level crosses a lattice edge: even edges run east from their node, odd ones south. */
    private Coordinate crossing(int edge, double levelM) {
        int node = edge / 2;
        int c = node % columns;
        int r = node / columns;
        boolean runsEast = edge % 2 == 0;
        double from = ground.heightM(c, r);
        double to = runsEast ? ground.heightM(c + 1, r) : ground.heightM(c, r + 1);
        double t = (levelM - from) / (to - from);
        double x = ground.xPx(runsEast ? c + t : c);
        double y = ground.yPx(runsEast ? r : r + t);
        MapFrame frame = ground.frame();
        double west = frame.westDeg();
        return new Coordinate(west + x * frame.degreesEastPerPx(), frame.latitudeDeg(y));
    }

    private static void add(List<LineString> lines, List<Coordinate> points) {
        if (points.size() < 2) return;
        lines.add(GEOMETRY.createLineString(points.toArray(new Coordinate[0])));
    }
}
