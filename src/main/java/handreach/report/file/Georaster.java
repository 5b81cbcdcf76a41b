package handreach.report.file;

import handreach.reach.CellGrid;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;

/**
 * One layer of numbers over a grid of cells, as other programs read it: 32-bit numbers with a value that stands for nothing.
 *
 * @param grid cells; the value of a cell stands for its whole area
 * @param layer what the numbers are
 * @param values number of a cell by its index; NaN where there is none
 * @param step numbers are rounded to whole steps, a power of two; 0 leaves them alone. Digits that mean nothing are noise that
 *     does not pack
 */
public record Georaster(CellGrid grid, Layer layer, IntToDoubleFunction values, double step) {
    /** What stands where there is no value. */
    public static final float NO_DATA = -9999;
    /** Step of decibels: rounding takes at most 0.004 dB. */
    public static final double STEP_DB = 1.0 / 128;

    private static final double ONE_APART = 0x1.8p52;
    /** Step of odds: rounding takes at most 0.00013. */
    public static final double STEP_ODDS = 1.0 / 4096;

    public Georaster(CellGrid grid, Layer layer, IntToDoubleFunction values) {
        this(grid, layer, values, 0);
    }

    /**
     * What the numbers are.
     *
     * @param name in a few words
     * @param unit of the numbers; empty for numbers without one
     * @param classes what the numbers 0, 1, 2 … stand for; empty where they are measures
     * @param about where they come from, by name
     */
    public record Layer(String name, String unit, List<Kind> classes, Map<String, String> about) {
        /** What a number stands for, and the colour 0xRRGGBB in which it is shown. */
        public record Kind(String name, int rgb) {}

        public Layer {
            classes = List.copyOf(classes);
            about = Collections.unmodifiableMap(new LinkedHashMap<>(about));
        }

        /** Measures. */
        public static Layer of(String name, String unit, Map<String, String> about) {
            return new Layer(name, unit, List.of(), about);
        }
    }

    /** The value of a cell as written: never NaN, infinite or {@link #NO_DATA} by accident. */
    float written(int cell) {
        double value = values.applyAsDouble(cell);
        if (Double.isNaN(value)) return NO_DATA;
        if (Double.isInfinite(value) || Math.abs(value) > 1e30 || (float) value == NO_DATA)
            throw new IllegalArgumentException(layer.name() + " of cell " + cell + " is " + value);
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
