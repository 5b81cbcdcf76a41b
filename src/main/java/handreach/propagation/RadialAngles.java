package handreach.propagation;

import handreach.profile.Profile;

/**
 * Departure and arrival angles from one position to an antenna over every sample of a radial, in one pass.
 *
 * <p>The horizon of the position is a running maximum; the horizon of each far antenna is the tangent to the upper hull of the
 * ground before it, found by bisection, in coordinates flattened for earth curvature. Same angles as {@link PathGeometry} of the
 * profile cut at that sample.
 */
public final class RadialAngles {
    private final double[] departureDeg;
    private final double[] arrivalDeg;
    private final boolean[] lineOfSight;

    private RadialAngles(int n) {
        departureDeg = new double[n];
        arrivalDeg = new double[n];
        lineOfSight = new boolean[n];
    }

    /**
     * Angles along a whole radial over bare ground.
     *
     * @shape  n samples in, n angles out; O(n log n), pure
     * @unit   heights of the antennas above ground as {@link Terminals}; angles degrees over the horizontal
     * @valid  n from 2; index 0 is the position itself and holds no angle (read as 0, in sight)
     * @error  1e-9 degrees against one {@link PathGeometry} per sample
     * @source as {@link PathGeometry}; upper hull: Andrew (1979)
     */
    public static RadialAngles of(Profile profile, Terminals terminals, Atmosphere atmosphere) {
        int n = profile.count();
        RadialAngles result = new RadialAngles(n);
        result.lineOfSight[0] = true;
        double earthKm = atmosphere.effectiveRadiusKm();
        double txTipM = profile.heightM(0) + terminals.txHeightM();
        double[] x = profile.distancesKm();
        double[] y = new double[n];
        int[] hull = new int[n];
        int size = 0;
        double steepest = Double.NEGATIVE_INFINITY;
        for (int j = 1; j < n; j++) {
            double fall = 500 * x[j] * x[j] / earthKm;
            double rxTipM = profile.heightM(j) + terminals.rxHeightM();
            double direct = PathGeometry.Angles.slope(rxTipM - txTipM, x[j], earthKm);
            boolean inSight = steepest <= direct;
            double arrival = inSight
                    ? PathGeometry.Angles.slope(txTipM - rxTipM, x[j], earthKm)
                    : tangent(x, y, hull, size, x[j], rxTipM - fall) / 1000 - x[j] / earthKm;
            result.lineOfSight[j] = inSight;
            result.departureDeg[j] = PathGeometry.Angles.deg(inSight ? direct : steepest);
            result.arrivalDeg[j] = PathGeometry.Angles.deg(arrival);
            y[j] = profile.heightM(j) - fall;
            size = push(x, y, hull, size, j);
            steepest = Math.max(steepest, PathGeometry.Angles.slope(profile.heightM(j) - txTipM, x[j], earthKm));
        }
        return result;
    }

    private static int push(double[] x, double[] y, int[] hull, int size, int j) {
        while (size >= 2 && !turnsDown(x, y, hull[size - 2], hull[size - 1], j)) size--;
        hull[size] = j;
        return size + 1;
    }

    private static boolean turnsDown(double[] x, double[] y, int a, int b, int c) {
        return (y[b] - y[a]) * (x[c] - x[b]) > (y[c] - y[b]) * (x[b] - x[a]);
    }

    /** Steepest backward slope (m/km) from a point at or beyond the hull's end to the hull; slopes rise, then fall, along it. */
    private static double tangent(double[] x, double[] y, int[] hull, int size, double atKm, double tipM) {
        int low = 0;
        int high = size - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (back(x, y, hull[middle], atKm, tipM) < back(x, y, hull[middle + 1], atKm, tipM)) low = middle + 1;
            else high = middle;
        }
        return back(x, y, hull[low], atKm, tipM);
    }

    private static double back(double[] x, double[] y, int i, double atKm, double tipM) {
        return (y[i] - tipM) / (atKm - x[i]);
    }

    public double departureDeg(int sample) {
        return departureDeg[sample];
    }

    public double arrivalDeg(int sample) {
        return arrivalDeg[sample];
    }

    public boolean lineOfSight(int sample) {
        return lineOfSight[sample];
    }
}
