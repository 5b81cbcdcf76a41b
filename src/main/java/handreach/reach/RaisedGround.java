package handreach.reach;

/**
 * How far the ground rises above the straight line between the antennas, without earth bulge: what lowers the smooth surface
 * under an obstructed path. The highest point and the steepest from the receiver come from a hull of the ground as it is, the
 * steepest from the source is a running maximum.
 *
 * <p>Source: Rec. ITU-R P.526-15, section 4.5.2, equations (63) and (64).
 */
final class RaisedGround {
    private final Skyline hull = new Skyline();
    private Ray ray;
    private int taken;
    private double sourceTipM;
    private double steepestFromSource;

    private double loweredTxM;
    private double loweredRxM;

    void start(Ray onto, double tipM) {
        ray = onto;
        taken = 0;
        sourceTipM = tipM;
        steepestFromSource = Double.NEGATIVE_INFINITY;
        hull.clear();
    }

    /** By how much the fitted line is lowered at the two ends of the path to the standpoint. */
    void lower(Standpoint at) {
        while (taken < at.last()) {
            taken++;
            double x = ray.xKm[taken];
            double h = ray.groundM[taken];
            hull.push(x, h, taken);
            steepestFromSource = Math.max(steepestFromSource, (h - sourceTipM) / x);
        }
        loweredTxM = 0;
        loweredRxM = 0;
        if (hull.size() == 0) return;
        double d = at.xKm();
        double rise = (at.tipM() - sourceTipM) / d;
        int top = hull.highestAbove(rise);
        double highest = hull.heightM(top) - sourceTipM - rise * hull.xKm(top);
        if (!(highest > 0)) return;
        double fromSource = steepestFromSource - rise;
        int seen = hull.tangent(d, at.tipM());
        double fromReceiver = (hull.heightM(seen) - at.tipM()) / (d - hull.xKm(seen)) + rise;
        loweredTxM = highest * fromSource / (fromSource + fromReceiver);
        loweredRxM = highest * fromReceiver / (fromSource + fromReceiver);
    }

    double loweredTxM() {
        return loweredTxM;
    }

    double loweredRxM() {
        return loweredRxM;
    }
}
