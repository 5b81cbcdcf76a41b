package handreach.atlas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.reach.CellGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class AtlasGridTest {
    private static final CellGrid CELLS = CellGrid.over(45, 10, 45.2, 10.1, 300);

    @Test
    void theCurveVisitsEverySquareOnceAndStepsToANeighbour() {
        int side = 16;
        int[] at = new int[side * side];
        for (int x = 0; x < side; x++)
            for (int y = 0; y < side; y++) at[(int) HilbertCurve.index(side, x, y)] += x * side + y + 1;
        for (int i = 1; i < at.length; i++) {
            int step = Math.abs((at[i] - 1) / side - (at[i - 1] - 1) / side)
                    + Math.abs((at[i] - 1) % side - (at[i - 1] - 1) % side);
            assertEquals(1, step, "step " + i);
        }
    }

    @Test
    void everyAskedCellLiesInOneBlock() {
        AtlasGrid grid = AtlasGrid.of(CELLS, at -> at.latitudeDeg() + at.longitudeDeg() < 55.15);
        List<Integer> found = new ArrayList<>();
        for (AtlasBlock block : grid.blocks()) {
            assertEquals(found.size() > 0, block.number() > 0);
            found.addAll(grid.cellsOf(block));
        }
        found.sort(null);
        assertEquals(
                IntStream.range(0, CELLS.count()).filter(grid::isAsked).boxed().toList(), found);
        assertTrue(found.size() == grid.count() && grid.count() < CELLS.count(), "a part of the box");
    }

    /** By hand: 0.2 degrees of latitude at 45.1 is 0.2 x 111.13 km high; the cosine makes 0.1 degrees 7.87 km wide. */
    @Test
    void cellsCoverTheBoxAndAddUpToItsGround() {
        AtlasGrid grid = AtlasGrid.of(CELLS, at -> true);
        double km2 =
                IntStream.range(0, CELLS.count()).mapToDouble(grid::areaKm2).sum();
        assertEquals(CELLS.rows() * 0.3 * CELLS.columns() * 0.3, km2, 0.01);
        assertTrue(CELLS.northDeg() >= 45.2 && CELLS.southDeg() <= 45, "north to south");
        assertTrue(CELLS.westDeg() <= 10 && CELLS.eastDeg() >= 10.1, "west to east");
        assertEquals(75, CELLS.rows());
        assertEquals(27, CELLS.columns());
    }

    @Test
    void aPartHasTheSameCentresToTheLastDigit() {
        CellGrid part = CELLS.part(3, 5, 7, 11);
        for (int row = 0; row < 7; row++)
            for (int column = 0; column < 11; column++) {
                Position there = CELLS.positionOf(row + 3, column + 5);
                assertEquals(there, part.positionOf(row, column));
                assertEquals(part.index(row, column), part.indexOf(there));
            }
        assertEquals(-1, part.indexOf(CELLS.positionOf(2, 5)));
        assertEquals(CELLS.part(4, 6, 2, 2), part.part(1, 1, 2, 2));
    }
}
