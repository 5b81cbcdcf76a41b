package handreach.propagation;

import java.util.Arrays;

/** Power at the far antenna's height, re free space, as the march goes along: growing lists of distance and power. */
final class FieldMarchTrack {
    /** Window of the local mean, and its greatest share of the distance. */
    private static final double WINDOW_M = 60;

    private static final double WINDOW_SHARE = 1.0 / 14;

    private double[] distanceM = new double[1024];
    private double[] power = new double[1024];
    private double[] area = new double[1024];
    private int count;

    /** Takes a point, unless it does not lie beyond the last. */
    void add(double xM, double p) {
        if (count > 0 && xM <= distanceM[count - 1] + 1e-6) return;
        if (count == distanceM.length) {
            distanceM = Arrays.copyOf(distanceM, 2 * count);
            power = Arrays.copyOf(power, 2 * count);
            area = Arrays.copyOf(area, 2 * count);
        }
        distanceM[count] = xM;
        power[count] = p;
        if (count > 0) area[count] = area[count - 1] + slice(distanceM[count - 1], xM, power[count - 1], p);
        count++;
    }

    /** ∫ p x dx over a piece where p is linear. */
    private static double slice(double x0, double x1, double p0, double p1) {
        return (x1 - x0) * (p0 * (2 * x0 + x1) + p1 * (x0 + 2 * x1)) / 6;
    }

    double firstM() {
        return distanceM[0];
    }

    /** Power at a distance, linear between the points. */
    double at(double xM) {
        int right = right(xM);
        double share = (xM - distanceM[right - 1]) / (distanceM[right] - distanceM[right - 1]);
        return power[right - 1] + share * (power[right] - power[right - 1]);
    }

    /**
     * Mean power before a distance, weighted with distance. The weight halves the trend between free space (even) and plane
     * earth (falling with the square), so that the mean over a smooth stretch is the value at its end.
     */
    double meanBefore(double xM, double notBeforeM) {
        double from = Math.max(notBeforeM, xM - Math.min(WINDOW_M, WINDOW_SHARE * xM));
        if (!(xM - from > 1e-3)) return at(xM);
        return (areaTo(xM) - areaTo(from)) / ((xM - from) * xM);
    }

    private double areaTo(double xM) {
        int right = right(xM);
        return area[right - 1] + slice(distanceM[right - 1], xM, power[right - 1], at(xM));
    }

    private int right(double xM) {
        int at = Arrays.binarySearch(distanceM, 0, count, xM);
        int right = at >= 0 ? at : -at - 1;
        return Math.max(1, Math.min(count - 1, right));
    }
}
