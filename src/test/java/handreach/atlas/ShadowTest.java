package handreach.atlas;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.reach.CellGrid;
import java.util.List;
import org.junit.jupiter.api.Test;

class ShadowTest {
    /** On paper: a dark square of 5 x 5 and, a row apart, a single dark cell that touches it by no corner. */
    @Test
    void theDeepestPlaceIsTheMiddleOfTheSquare() {
        CellGrid cells = CellGrid.over(45, 10, 45.03, 10.05, 300);
        AtlasGrid targets = AtlasGrid.of(cells, at -> true);
        List<Shadow> found = Shadow.pieces(targets, cell -> {
            int row = cells.rowOf(cell);
            int column = cells.columnOf(cell);
            return row >= 2 && row <= 6 && column >= 1 && column <= 5 || row == 8 && column == 8;
        });
        assertEquals(2, found.size());
        assertEquals(25, found.get(0).cells());
        assertEquals(25 * 0.09, found.get(0).areaKm2(), 0.01);
        assertEquals(cells.index(4, 3), found.get(0).deepest());
        assertEquals(3, found.get(0).depth());
        assertEquals(new Shadow(1, targets.areaKm2(cells.index(8, 8)), cells.index(8, 8), 1), found.get(1));
    }
}
