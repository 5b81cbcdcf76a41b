package handreach.report.figure;

import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.List;

/**
 * A linear axis: values to px, and round values to write on it.
 *
 * @param low value at the start
 * @param high value at the end, above the low one
 * @param startPx where the low value stands
 * @param endPx where the high value stands, on either side of the start
 */
record Axis(double low, double high, double startPx, double endPx) {
    private static final double[] ROUND = {1, 2, 5, 10};

    Axis {
        if (!(low < high) || Double.isInfinite(high - low))
            throw new IllegalArgumentException("axis from " + low + " to " + high);
    }

    /** An axis whose ends are round and hold both values. */
    static Axis rounded(double low, double high, int wanted, double startPx, double endPx) {
        double top = high > low ? high : low + 1;
        double step = step(low, top, wanted);
        return new Axis(Math.floor(low / step) * step, Math.ceil(top / step) * step, startPx, endPx);
    }

    /** Where a value stands. */
    double px(double value) {
        return startPx + (value - low) / (high - low) * (endPx - startPx);
    }

    /** Round values on the axis, about as many as wanted. */
    List<Double> ticks(int wanted) {
        double step = step(low, high, wanted);
        List<Double> ticks = new ArrayList<>();
        for (long k = (long) Math.ceil(low / step - 1e-9); k * step <= high + 1e-9 * step; k++) ticks.add(k * step);
        return ticks;
    }

    /** A tick as text, with as many decimals as the step needs and a true minus sign. */
    String text(double tick, int wanted) {
        double step = step(low, high, wanted);
        int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
        return Decibels.number(tick, decimals);
    }

    static double step(double low, double high, int wanted) {
        double wish = (high - low) / Math.max(1, wanted);
        double power = Math.pow(10, Math.floor(Math.log10(wish)));
        for (double round : ROUND) if (round * power >= wish * (1 - 1e-9)) return round * power;
        return 10 * power;
    }
}
