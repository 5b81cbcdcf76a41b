package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

class ReachOutlineTest {
    private static final CellGrid GRID = CellGrid.around(new Position(46.5, 8.1), 100, 30);

    @Test
    void oneCellIsItsFourCorners() {
        MultiPolygon outline = outline("......./......./......./...#.../......./......./.......");
        assertEquals(1, outline.getNumGeometries());
        assertEquals(5, outline.getNumPoints());
        assertEquals(GRID.latitudeStepDeg() * GRID.longitudeStepDeg(), outline.getArea(), 1e-15);
    }

    @Test
    void aHoleStaysAHole() {
        MultiPolygon outline = outline("......./.#####./.#...#./.#.#.#./.#...#./.#####./.......");
        assertEquals(2, outline.getNumGeometries());
        Polygon ring = (Polygon) outline.getGeometryN(0);
        assertEquals(1, ring.getNumInteriorRing());
        assertEquals(5, ring.getInteriorRingN(0).getNumPoints());
        assertTrue(Orientation.isCCW(ring.getExteriorRing().getCoordinates()));
    }

    @Test
    void cornersAloneJoinNothing() {
        MultiPolygon outline = outline("......./.##..../.##..../...##../...##../......./.......");
        assertEquals(2, outline.getNumGeometries());
        assertTrue(outline.isValid());
    }

    @Test
    void twoHolesThatMeetAtACornerStayValid() {
        MultiPolygon outline = outline("#######/#######/##.####/###.###/#######/#######/#######");
        assertEquals(1, outline.getNumGeometries());
        assertTrue(outline.isValid());
        assertEquals(47 * GRID.latitudeStepDeg() * GRID.longitudeStepDeg(), outline.getArea(), 1e-12);
    }

    @Test
    void nothingGivesNothing() {
        assertEquals(
                0,
                outline("......./......./......./......./......./......./.......")
                        .getNumGeometries());
    }

    @Test
    void contiguousReachIsThePartRoundTheSource() {
        String world = "##...../##...../......./...##../...##../......./......#";
        Polygon round = ReachOutline.contiguous(GRID, cell -> inside(world, cell), new Position(46.5, 8.1))
                .orElseThrow();
        assertEquals(4 * GRID.latitudeStepDeg() * GRID.longitudeStepDeg(), round.getArea(), 1e-14);
        assertTrue(ReachOutline.contiguous(GRID, cell -> false, new Position(46.5, 8.1))
                .isEmpty());
        assertTrue(ReachOutline.contiguous(GRID, cell -> true, new Position(40, 8.1))
                .isEmpty());
    }

    @Test
    void randomSetsKeepTheirCellsAndTheirArea() {
        for (int seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            CellGrid grid = CellGrid.around(new Position(-30, 170), 300 + 100 * random.nextInt(8), 30);
            boolean[] inside = new boolean[grid.count()];
            double density = 0.2 + 0.6 * random.nextDouble();
            int count = 0;
            for (int i = 0; i < inside.length; i++) if (inside[i] = random.nextDouble() < density) count++;
            MultiPolygon outline = ReachOutline.of(grid, i -> inside[i]);
            assertTrue(outline.isValid(), "seed " + seed);
            double cell = grid.latitudeStepDeg() * grid.longitudeStepDeg();
            assertEquals(count, outline.getArea() / cell, 1e-6 * count + 1e-6, "seed " + seed);
            IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(outline);
            for (int i = 0; i < inside.length; i += 3) {
                Coordinate centre = new Coordinate(grid.longitudeOf(grid.columnOf(i)), grid.latitudeOf(grid.rowOf(i)));
                assertEquals(inside[i], locator.locate(centre) == Location.INTERIOR, "seed " + seed);
            }
        }
    }

    private static MultiPolygon outline(String world) {
        assertEquals(7, GRID.rows());
        return ReachOutline.of(GRID, cell -> inside(world, cell));
    }

    private static boolean inside(String world, int cell) {
        return world.split("/")[GRID.rowOf(cell)].charAt(GRID.columnOf(cell)) == '#';
    }
}
