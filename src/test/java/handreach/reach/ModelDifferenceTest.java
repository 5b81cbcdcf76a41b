package handreach.reach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.propagation.FreeSpace;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.units.Frequency;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Ten cells by ten round the middle, of which five are given losses by hand. */
class ModelDifferenceTest {
    private static final Position MIDDLE = new Position(45, 7);
    private static final double CELL_M = 200;
    private static final CellGrid GRID = CellGrid.around(MIDDLE, 1000, CELL_M);

    private static LossGrid grid(LossModel model, MapEngine engine, Map<Integer, Double> excessDb) {
        AreaRequest request = new AreaRequest(
                MIDDLE, GRID, 1000, new Terminals(1.5, 1.5), UsualConditions.at(new Frequency(155)), model);
        LossGrid grid = new LossGrid(request, engine);
        for (int cell = 0; cell < GRID.count(); cell++) {
            if (excessDb.containsKey(cell)) grid.put(cell, freeDb(request, cell) + excessDb.get(cell), 0, 0, false, 0);
            else grid.putUnknown(cell);
        }
        return grid;
    }

    private static double freeDb(AreaRequest request, int cell) {
        double km = GeodesicLine.distanceM(MIDDLE, GRID.positionOf(cell)) / 1000;
        return FreeSpace.lossDb(request.conditions().frequency(), km);
    }

    /** Cells within the radius and far enough from the middle for the two distances to be one. */
    private static int[] cells() {
        return IntStream.range(0, GRID.count())
                .filter(cell -> {
                    double m = GeodesicLine.distanceM(MIDDLE, GRID.positionOf(cell));
                    return m > 300 && m < 900;
                })
                .limit(6)
                .toArray();
    }

    private static ModelDifference difference() {
        int[] at = cells();
        LossGrid march = grid(
                LossModels.FULL_WAVE,
                MapEngine.MARCH,
                Map.of(at[0], 20.0, at[1], 26.5, at[2], 13.5, at[3], 90.0, at[4], 66.0));
        LossGrid closed = grid(
                LossModels.HANDHELD,
                MapEngine.SWEEP,
                Map.of(at[0], 25.9, at[1], 20.0, at[2], 20.0, at[3], 66.0, at[4], 59.0, at[5], 20.0));
        return ModelDifference.of(march, closed);
    }

    @Test
    void aCellIsOfOneKind() {
        int[] at = cells();
        ModelDifference difference = difference();
        assertEquals(ModelDifference.Kind.ALIKE, difference.at(at[0]));
        assertEquals(ModelDifference.Kind.MORE, difference.at(at[1]));
        assertEquals(ModelDifference.Kind.LESS, difference.at(at[2]));
        assertEquals(ModelDifference.Kind.LOST, difference.at(at[3]));
        assertEquals(ModelDifference.Kind.MORE, difference.at(at[4]), "one alone says that it is lost");
        assertEquals(ModelDifference.Kind.UNKNOWN, difference.at(at[5]), "the march says nothing");
        assertEquals(6.5, difference.db(at[1]), 1e-3);
        assertTrue(difference.isCompared(at[0]));
        assertFalse(difference.isCompared(at[3]));
        assertEquals("handheld", difference.other());
    }

    @Test
    void sharesAreOfTheGroundThatBothKnow() {
        ModelDifference difference = difference();
        assertEquals(0.4, difference.share(ModelDifference.Kind.MORE), 1e-12);
        assertEquals(0.2, difference.share(ModelDifference.Kind.LESS), 1e-12);
        assertEquals(0.2, difference.share(ModelDifference.Kind.LOST), 1e-12);
        assertEquals(2 * CELL_M * CELL_M, difference.areaM2(ModelDifference.Kind.MORE), 1e-6);
    }

    @Test
    void mapsOfDifferentQuestionsAreNotCompared() {
        LossGrid march = grid(LossModels.FULL_WAVE, MapEngine.MARCH, Map.of());
        LossGrid other = new LossGrid(march.request().with(new Terminals(3, 1.5)), MapEngine.SWEEP);
        assertThrows(IllegalArgumentException.class, () -> ModelDifference.of(march, other));
    }
}
