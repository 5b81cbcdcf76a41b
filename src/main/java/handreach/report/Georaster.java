package handreach.report;

import handreach.reach.CellGrid;
import java.util.function.IntToDoubleFunction;

/**
 * One layer of numbers over a grid of cells, as other programs read it: 32-bit numbers with a value that stands for nothing.
 *
 * @param grid cells; the value of a cell stands for its whole area
 * @param layer what the numbers are, with their unit, in a few words
 * @param values number of a cell by its index; NaN where there is none
 */
public record Georaster(CellGrid grid, String layer, IntToDoubleFunction values) {
    /** What stands where there is no value. */
    public static final float NO_DATA = -9999;

    /** The value of a cell as written: never NaN, infinite or {@link #NO_DATA} by accident. */
    float written(int cell) {
        double value = values.applyAsDouble(cell);
        if (Double.isNaN(value)) return NO_DATA;
        if (Double.isInfinite(value) || Math.abs(value) > 1e30 || (float) value == NO_DATA)
            throw new IllegalArgumentException(layer + " of cell " + cell + " is " + value);
        return (float) value;
    }

    /** The values of cells next to one another, as written. */
    void written(int firstCell, int count, float[] out, int at) {
        for (int i = 0; i < count; i++) out[at + i] = written(firstCell + i);
    }
}
