package handreach.relay;

import handreach.geodesy.Position;
import handreach.reach.CellGrid;
import handreach.terrain.Elevation;
import java.util.BitSet;
import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** Which cells of a grid a relay may stand in, how high and steep they are, and how long it takes to walk there. */
public final class AllowedGround {
    private final CellGrid grid;
    private final double[] heightM;
    private final BitSet known;
    private final BitSet allowed;
    private final double[] minutes;
    private final double separationM;

    private AllowedGround(
            CellGrid grid, double[] heightM, BitSet known, BitSet allowed, double[] minutes, double separationM) {
        this.grid = grid;
        this.heightM = heightM;
        this.known = known;
        this.allowed = allowed;
        this.minutes = minutes;
        this.separationM = separationM;
    }

    /**
     * Looks at every cell's centre.
     *
     * @shape  a grid in, one answer a cell; O(n log n) with a walk, O(n) without
     * @unit   radius m
     * @valid  cells without height and beyond the radius are never allowed
     * @error  slope over two cells, so it misses what is smaller than a cell; distance to a track in a flat plane, below 0.5 % of
     *     it within 50 km
     * @source slope by central differences; walk: {@link HikingTime}
     */
    public static AllowedGround of(
            CellGrid grid, Position middle, double radiusM, Elevation elevation, RelayConstraints constraints) {
        double[] heightM = new double[grid.count()];
        BitSet known = heights(grid, elevation, heightM);
        Plane plane = new Plane(grid, middle);
        BitSet allowed = (BitSet) known.clone();
        keep(allowed, cell -> Math.hypot(plane.xM(cell), plane.yM(cell)) <= radiusM);
        constraints.inside().map(Polygon::new).ifPresent(area -> keep(allowed, cell -> area.holds(grid, cell)));
        constraints.outside().map(Polygon::new).ifPresent(area -> keep(allowed, cell -> !area.holds(grid, cell)));
        if (constraints.maxSlopeDeg().isPresent()) {
            double steepest = Math.tan(Math.toRadians(constraints.maxSlopeDeg().getAsDouble()));
            keep(allowed, cell -> slope(grid, heightM, known, cell) <= steepest);
        }
        BitSet onPath = new BitSet();
        if (constraints.nearTrack().isPresent()) {
            RelayConstraints.NearTrack track = constraints.nearTrack().get();
            IndexedFacetDistance lines = new IndexedFacetDistance(plane.lines(track.lines()));
            GeometryFactory points = new GeometryFactory();
            double near = grid.cellM();
            for (int cell = known.nextSetBit(0); cell >= 0; cell = known.nextSetBit(cell + 1)) {
                double distance = lines.distance(points.createPoint(new Coordinate(plane.xM(cell), plane.yM(cell))));
                if (distance <= near) onPath.set(cell);
                if (distance > track.maxDistanceM()) allowed.clear(cell);
            }
        }
        double[] minutes = null;
        if (constraints.walk().isPresent()) {
            RelayConstraints.Walk walk = constraints.walk().get();
            int start = grid.indexOf(walk.start());
            if (start < 0) throw new IllegalArgumentException("the walk starts outside the grid");
            double[] times = HikingTime.minutes(heightM, known, onPath, grid.columns(), grid.cellM(), start);
            keep(allowed, cell -> times[cell] <= walk.maxMinutes() && times[cell] < Double.POSITIVE_INFINITY);
            minutes = times;
        }
        return new AllowedGround(grid, heightM, known, allowed, minutes, constraints.minSeparationM());
    }

    private interface Choice {
        boolean holds(int cell);
    }

    private static void keep(BitSet cells, Choice choice) {
        for (int cell = cells.nextSetBit(0); cell >= 0; cell = cells.nextSetBit(cell + 1))
            if (!choice.holds(cell)) cells.clear(cell);
    }

    private static BitSet heights(CellGrid grid, Elevation elevation, double[] heightM) {
        BitSet known = new BitSet(grid.count());
        int n = grid.columns();
        double[] latitude = new double[n];
        double[] longitude = new double[n];
        double[] row = new double[n];
        boolean[] isVoid = new boolean[n];
        for (int r = 0; r < grid.rows(); r++) {
            for (int c = 0; c < n; c++) {
                Position at = grid.positionOf(r, c);
                latitude[c] = at.latitudeDeg();
                longitude[c] = at.longitudeDeg();
            }
            elevation.heights(latitude, longitude, n, row, isVoid);
            for (int c = 0; c < n; c++) {
                if (isVoid[c]) continue;
                heightM[grid.index(r, c)] = row[c];
                known.set(grid.index(r, c));
            }
        }
        return known;
    }

    /** Rise over run; one-sided at the edge of what is known. */
    private static double slope(CellGrid grid, double[] heightM, BitSet known, int cell) {
        int row = grid.rowOf(cell);
        int column = grid.columnOf(cell);
        double widthM = grid.cellM()
                * Math.cos(Math.toRadians(grid.latitudeOf(row)))
                / Math.cos(Math.toRadians((grid.northDeg() + grid.southDeg()) / 2));
        double north = gradient(
                heightM,
                known,
                cell,
                row > 0 ? cell - grid.columns() : cell,
                row < grid.rows() - 1 ? cell + grid.columns() : cell,
                grid.cellM());
        double east = gradient(
                heightM,
                known,
                cell,
                column > 0 ? cell - 1 : cell,
                column < grid.columns() - 1 ? cell + 1 : cell,
                widthM);
        return Math.hypot(north, east);
    }

    private static double gradient(double[] heightM, BitSet known, int cell, int before, int after, double stepM) {
        int one = known.get(before) ? before : cell;
        int other = known.get(after) ? after : cell;
        int steps = (one == cell ? 0 : 1) + (other == cell ? 0 : 1);
        return steps == 0 ? 0 : (heightM[other] - heightM[one]) / (steps * stepM);
    }

    public CellGrid grid() {
        return grid;
    }

    public boolean isAllowed(int cell) {
        return allowed.get(cell);
    }

    public int allowedCount() {
        return allowed.cardinality();
    }

    /** Cells on known ground within a radius, allowed or not. */
    public int knownWithin(Position middle, double radiusM) {
        Plane plane = new Plane(grid, middle);
        BitSet within = (BitSet) known.clone();
        keep(within, cell -> Math.hypot(plane.xM(cell), plane.yM(cell)) <= radiusM);
        return within.cardinality();
    }

    /** Ground of a cell above sea level, m; empty in a void. */
    public OptionalDouble heightM(int cell) {
        return known.get(cell) ? OptionalDouble.of(heightM[cell]) : OptionalDouble.empty();
    }

    /** Steepness at a cell, degrees. */
    public double slopeDeg(int cell) {
        return Math.toDegrees(Math.atan(slope(grid, heightM, known, cell)));
    }

    /** One way on foot, minutes; empty where no start was named or nobody gets there. */
    public OptionalDouble minutes(int cell) {
        if (minutes == null || minutes[cell] == Double.POSITIVE_INFINITY) return OptionalDouble.empty();
        return OptionalDouble.of(minutes[cell]);
    }

    double separationM() {
        return separationM;
    }

    /** The allowed cells that lie at least so far from all of these. */
    BitSet awayFrom(List<Integer> cells, double distanceM) {
        BitSet left = (BitSet) allowed.clone();
        for (int other : cells) {
            Plane plane = new Plane(grid, grid.positionOf(other));
            keep(left, cell -> Math.hypot(plane.xM(cell), plane.yM(cell)) >= distanceM);
            left.clear(other);
        }
        return left;
    }

    /** A flat plane in metres round a place, good enough within an area. */
    private static final class Plane {
        private final CellGrid grid;
        private final Position middle;
        private final double metresPerDegree;

        Plane(CellGrid grid, Position middle) {
            this.grid = grid;
            this.middle = middle;
            this.metresPerDegree = grid.cellM() / grid.latitudeStepDeg();
        }

        double yM(int cell) {
            return (grid.latitudeOf(grid.rowOf(cell)) - middle.latitudeDeg()) * metresPerDegree;
        }

        double xM(int cell) {
            return x(grid.longitudeOf(grid.columnOf(cell)), grid.latitudeOf(grid.rowOf(cell)));
        }

        private double x(double longitudeDeg, double latitudeDeg) {
            double east = Math.IEEEremainder(longitudeDeg - middle.longitudeDeg(), 360);
            double widthPerDegree = grid.cellM()
                    / grid.longitudeStepDeg()
                    / Math.cos(Math.toRadians((grid.northDeg() + grid.southDeg()) / 2));
            return east * widthPerDegree * Math.cos(Math.toRadians(latitudeDeg));
        }

        Geometry lines(List<List<Position>> tracks) {
            GeometryFactory factory = new GeometryFactory();
            return factory.createMultiLineString(tracks.stream()
                    .filter(line -> !line.isEmpty())
                    .map(line -> line(factory, line))
                    .toArray(LineString[]::new));
        }

        private LineString line(GeometryFactory factory, List<Position> line) {
            Coordinate[] points = new Coordinate[Math.max(2, line.size())];
            for (int i = 0; i < points.length; i++) {
                Position at = line.get(Math.min(i, line.size() - 1));
                points[i] = new Coordinate(
                        x(at.longitudeDeg(), at.latitudeDeg()),
                        (at.latitudeDeg() - middle.latitudeDeg()) * metresPerDegree);
            }
            return factory.createLineString(points);
        }
    }

    /** A polygon, quick to ask. */
    private static final class Polygon {
        private final IndexedPointInAreaLocator inside;

        Polygon(Geometry area) {
            this.inside = new IndexedPointInAreaLocator(area);
        }

        boolean holds(CellGrid grid, int cell) {
            Position at = grid.positionOf(cell);
            return inside.locate(new Coordinate(at.longitudeDeg(), at.latitudeDeg())) != Location.EXTERIOR;
        }
    }
}
