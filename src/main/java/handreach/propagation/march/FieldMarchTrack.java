package handreach.propagation.march;

import java.util.Arrays;

/** Power at the far antenna's height, re free space, as the march goes along: growing lists of distance and power. */
final class FieldMarchTrack {
    /** Window of the local mean, and its greatest share of the distance. */
    private static final double WINDOW_M = 60;

    private static final double WINDOW_SHARE = 1.0 / 14;

    private double[] distanceM = new double[1024];
    /**
     * Power times distance. Power is even where the ground is clear and falls with the square of distance near the ground, so
     * that this product bends least between two points; and its mean over a smooth stretch is close to the value at the end.
     */
    private double[] weighted = new double[1024];

    private int count;

    /** Takes a point, unless it does not lie beyond the last. */
    void add(double xM, double power) {
        if (count > 0 && xM <= distanceM[count - 1] + 1e-6) return;
        if (count == distanceM.length) {
            distanceM = Arrays.copyOf(distanceM, 2 * count);
            weighted = Arrays.copyOf(weighted, 2 * count);
        }
        distanceM[count] = xM;
        weighted[count] = power * xM;
        count++;
    }

    double firstM() {
        return distanceM[0];
    }

    /** Power at a distance. */
    double at(double xM) {
        return weightedAt(right(xM), xM) / xM;
    }

    /** Mean power before a distance, weighted with distance. */
    double meanBefore(double xM, double notBeforeM) {
        double from = Math.max(notBeforeM, xM - windowM(xM));
        if (!(xM - from > 1e-3)) return at(xM);
        // piece by piece: differences of a running sum would drown a deep shadow in rounding
        double sum = 0;
        double left = from;
        for (int right = right(from); left < xM; right++) {
            double to = right < count - 1 ? Math.min(xM, distanceM[right]) : xM;
            sum += 0.5 * (to - left) * (weightedAt(right, left) + weightedAt(right, to));
            left = to;
        }
        return sum / ((xM - from) * xM);
    }

    /** The whole window from 480 m on; nearer by, where the field falls fast over any ground, a fourteenth of the way at least. */
    private static double windowM(double xM) {
        return Math.min(WINDOW_M, Math.max(WINDOW_SHARE * xM, xM / 4 - WINDOW_M));
    }

    private double weightedAt(int right, double xM) {
        double share = (xM - distanceM[right - 1]) / (distanceM[right] - distanceM[right - 1]);
        return Math.max(1e-30, weighted[right - 1] + share * (weighted[right] - weighted[right - 1]));
    }

    private int right(double xM) {
        int at = Arrays.binarySearch(distanceM, 0, count, xM);
        int right = at >= 0 ? at : -at - 1;
        return Math.max(1, Math.min(count - 1, right));
    }
}
