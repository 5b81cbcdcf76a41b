package handreach.reach;

/**
 * Running sums of the straight line laid through bare ground by least squares, so that the fit to any end of a ray costs a few
 * additions.
 *
 * <p>Source: Rec. ITU-R P.526-15, section 4.5.2, v1 and v2.
 */
final class SmoothSums {
    private Ray ray;
    private int taken;
    private double v1;
    private double v2;
    private double fitTxM;
    private double fitRxM;

    void start(Ray onto) {
        ray = onto;
        taken = 0;
        v1 = 0;
        v2 = 0;
    }

    /** Fits the line to the samples up to {@code last} and the ground at the far end. */
    void fit(int last, double xKm, double groundM) {
        double origin = ray.groundM[0];
        while (taken < last) {
            double x0 = ray.xKm[taken];
            double h0 = ray.groundM[taken] - origin;
            taken++;
            double x1 = ray.xKm[taken];
            double h1 = ray.groundM[taken] - origin;
            v1 += (x1 - x0) * (h1 + h0);
            v2 += (x1 - x0) * (h1 * (2 * x1 + x0) + h0 * (x1 + 2 * x0));
        }
        double x0 = ray.xKm[last];
        double h0 = ray.groundM[last] - origin;
        double here = groundM - origin;
        double all1 = v1 + (xKm - x0) * (here + h0);
        double all2 = v2 + (xKm - x0) * (here * (2 * xKm + x0) + h0 * (xKm + 2 * x0));
        fitTxM = origin + (2 * all1 * xKm - all2) / (xKm * xKm);
        fitRxM = origin + (all2 - all1 * xKm) / (xKm * xKm);
    }

    /** Height of the fitted line at the source, m above sea level. */
    double fitTxM() {
        return fitTxM;
    }

    /** Height of the fitted line at the far end, m above sea level. */
    double fitRxM() {
        return fitRxM;
    }
}
