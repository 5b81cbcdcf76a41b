package handreach.report.file;

import handreach.reach.CellGrid;
import java.util.function.IntToDoubleFunction;

/**
 * One layer of numbers over a grid of cells, as other programs read it: 32-bit numbers with a value that stands for nothing.
 *
 * @param grid cells; the value of a cell stands for its whole area
 * @param layer what the numbers are, with their unit, in a few words
 * @param values number of a cell by its index; NaN where there is none
 * @param step numbers are rounded to whole steps, a power of two; 0 leaves them alone. Digits that mean nothing are noise that
 *     does not pack
 */
public record Georaster(CellGrid grid, String layer, IntToDoubleFunction values, double step) {
    /** What stands where there is no value. */
    public static final float NO_DATA = -9999;
    /** Step of decibels: rounding takes at most 0.004 dB. */
    public static final double STEP_DB = 1.0 / 128;

    private static final double ONE_APART = 0x1.8p52;
    /** Step of odds: rounding takes at most 0.00013. */
    public static final double STEP_ODDS = 1.0 / 4096;

    public Georaster(CellGrid grid, String layer, IntToDoubleFunction values) {
        this(grid, layer, values, 0);
    }

    /** The value of a cell as written: never NaN, infinite or {@link #NO_DATA} by accident. */
    float written(int cell) {
        double value = values.applyAsDouble(cell);
        if (Double.isNaN(value)) return NO_DATA;
        if (Double.isInfinite(value) || Math.abs(value) > 1e30 || (float) value == NO_DATA)
            throw new IllegalArgumentException(layer + " of cell " + cell + " is " + value);
        return (float) (step == 0 ? value : whole(value / step) * step);
    }

    /** As {@link Math#rint}, which is a call until code is compiled in full: next to 1.5 · 2⁵² doubles lie one apart. */
    private static double whole(double steps) {
        return Math.abs(steps) < 0x1p51 ? steps + ONE_APART - ONE_APART : Math.rint(steps);
    }

    /** The values of cells next to one another, as written. */
    void written(int firstCell, int count, float[] out, int at) {
        for (int i = 0; i < count; i++) out[at + i] = written(firstCell + i);
    }
}
