package handreach.reach;

import java.util.Arrays;

/**
 * The upper convex hull of points that come from left to right: the string stretched over the ground behind the receiver. Points
 * are kept on a stack whose edge slopes fall from bottom to top, so what a new point hides, and what a receiver sees first, is
 * found by bisection.
 *
 * <p>Distances km, heights m; slopes m/km.
 */
final class Skyline {
    private double[] xKm = new double[64];
    private double[] heightM = new double[64];
    private double[] slope = new double[64];
    private double[] atZeroM = new double[64];
    private int[] sample = new int[64];
    private int size;

    /** Empties the hull and lays its first point. */
    void start(double x, double y, int sampleIndex) {
        size = 1;
        xKm[0] = x;
        heightM[0] = y;
        sample[0] = sampleIndex;
        slope[0] = Double.POSITIVE_INFINITY;
        atZeroM[0] = Double.POSITIVE_INFINITY;
    }

    void clear() {
        size = 0;
    }

    int size() {
        return size;
    }

    double xKm(int k) {
        return xKm[k];
    }

    double heightM(int k) {
        return heightM[k];
    }

    /** Slope of the edge that ends in vertex k, m/km. */
    double slope(int k) {
        return slope[k];
    }

    int sample(int k) {
        return sample[k];
    }

    /**
     * The last vertex that the string from the first point to a point right of all others touches: the one with the steepest
     * line to that point. 0 when it sees the first point.
     */
    int tangent(double x, double y) {
        int low = 0;
        int high = size - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (atZeroM[middle] + slope[middle] * x > y) low = middle;
            else high = middle - 1;
        }
        return low;
    }

    /** The vertex highest above a line of this slope. */
    int highestAbove(double lineSlope) {
        int low = 0;
        int high = size - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (slope[middle] > lineSlope) low = middle;
            else high = middle - 1;
        }
        return low;
    }

    /** Lays a point right of all others. */
    void push(double x, double y, int sampleIndex) {
        if (size == 0) {
            start(x, y, sampleIndex);
            return;
        }
        int keep = size - 1;
        while (keep > 0 && atZeroM[keep] + slope[keep] * x <= y) keep--;
        int k = keep + 1;
        if (k == xKm.length) grow();
        double edge = (y - heightM[keep]) / (x - xKm[keep]);
        xKm[k] = x;
        heightM[k] = y;
        slope[k] = edge;
        atZeroM[k] = y - edge * x;
        sample[k] = sampleIndex;
        size = k + 1;
    }

    private void grow() {
        int more = 2 * xKm.length;
        xKm = Arrays.copyOf(xKm, more);
        heightM = Arrays.copyOf(heightM, more);
        slope = Arrays.copyOf(slope, more);
        atZeroM = Arrays.copyOf(atZeroM, more);
        sample = Arrays.copyOf(sample, more);
    }
}
