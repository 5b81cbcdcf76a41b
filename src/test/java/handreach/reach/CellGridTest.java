package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CellGridTest {
    @Test
    void theMiddleCellIsCentredOnThePosition() {
        CellGrid grid = CellGrid.around(new Position(46.5, 8.1), 10_000, 30);
        assertEquals(667, grid.rows());
        assertEquals(667, grid.columns());
        Position middle = grid.positionOf(333, 333);
        assertEquals(46.5, middle.latitudeDeg(), 1e-12);
        assertEquals(8.1, middle.longitudeDeg(), 1e-12);
        assertEquals(30, grid.cellM(), 1e-6);
    }

    @Test
    void aCellIsAsLongAndWideAsAsked() {
        // law: neighbours in the middle of the grid lie one cell apart by the geodesic, at any latitude
        for (double latitude : new double[] {-60, -5, 0, 46.5, 70}) {
            CellGrid grid = CellGrid.around(new Position(latitude, 8), 3000, 30);
            Position middle = grid.positionOf(100, 100);
            assertEquals(30, GeodesicLine.distanceM(middle, grid.positionOf(99, 100)), 0.001);
            assertEquals(30, GeodesicLine.distanceM(middle, grid.positionOf(100, 101)), 0.001);
        }
    }

    @Test
    void everyCellFindsItselfAgain() {
        Random random = new Random(3);
        for (double longitude : new double[] {-180, -179.99, 0, 8.1, 179.99}) {
            CellGrid grid = CellGrid.around(new Position(-41, longitude), 5000, 50);
            for (int i = 0; i < 500; i++) {
                int cell = random.nextInt(grid.count());
                assertEquals(cell, grid.indexOf(grid.positionOf(cell)));
                assertEquals(cell, grid.index(grid.rowOf(cell), grid.columnOf(cell)));
            }
        }
    }

    @Test
    void outsideThereIsNoCell() {
        CellGrid grid = CellGrid.around(new Position(46.5, 8.1), 1000, 30);
        assertEquals(-1, grid.indexOf(new Position(46.52, 8.1)));
        assertEquals(-1, grid.indexOf(new Position(46.5, 8.2)));
        assertEquals(-1, grid.indexOf(new Position(46.5, -171.9)));
    }

    @Test
    void theEdgesEncloseTheCells() {
        CellGrid grid = CellGrid.around(new Position(46.5, 8.1), 1000, 30);
        assertEquals(grid.northDeg() - grid.latitudeStepDeg() / 2, grid.latitudeOf(0), 1e-12);
        assertEquals(grid.southDeg() + grid.latitudeStepDeg() / 2, grid.latitudeOf(grid.rows() - 1), 1e-12);
        assertEquals(grid.westDeg() + grid.longitudeStepDeg() / 2, grid.longitudeOf(0), 1e-12);
        assertEquals(grid.eastDeg() - grid.longitudeStepDeg() / 2, grid.longitudeOf(grid.columns() - 1), 1e-12);
    }

    @Test
    void tooLargeARadiusIsRefusedWithTheOneThatFits() {
        Position at = new Position(46.5, 8.1);
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> CellGrid.around(at, 80_000, 30));
        assertEquals(
                "a radius of 80.0 km in cells of 30 m is 28.4 million cells (370 MB), at most 16.1 million fit:"
                        + " take at most 60.1 km, or cells of 40 m",
                refused.getMessage());
        assertEquals(4007L * 4007, (long) CellGrid.around(at, 60_100, 30).count());
        CellGrid.around(at, 80_000, 40);
    }

    @Test
    void nonsenseIsRefused() {
        Position at = new Position(46.5, 8.1);
        assertThrows(IllegalArgumentException.class, () -> CellGrid.around(at, 1000, 0));
        assertThrows(IllegalArgumentException.class, () -> CellGrid.around(at, 10, 30));
        assertThrows(IllegalArgumentException.class, () -> CellGrid.around(at, Double.NaN, 30));
        assertThrows(IllegalArgumentException.class, () -> CellGrid.around(new Position(85, 8), 1000, 30));
    }
}
