package handreach.propagation.radial;

import handreach.propagation.GroundFit;
import handreach.propagation.Hull;
import handreach.propagation.SmoothSurface;

/**
 * How far the ground rises above the straight line between the antennas, without earth bulge: what lowers the smooth surface
 * under an obstructed path. The highest point and the steepest from the receiver come from a hull of the ground as it is, the
 * steepest from the source is a running maximum.
 */
final class RaisedGround {
    private final Hull hull = new Hull(64);
    private double sourceTipM;
    private double steepestFromSource;
    private int taken;

    void start(double tipM) {
        sourceTipM = tipM;
        steepestFromSource = Double.NEGATIVE_INFINITY;
        hull.clear();
        taken = 0;
    }

    /** Takes in the next sample behind the source. */
    void take(double atKm, double groundM) {
        hull.push(atKm, groundM, ++taken);
        steepestFromSource = Math.max(steepestFromSource, (groundM - sourceTipM) / atKm);
    }

    /** The fitted line lowered under the path to a receiver behind the samples taken in. */
    SmoothSurface lowered(GroundFit fit, double d, double tipM) {
        if (hull.size() == 0) return SmoothSurface.under(fit, 0, 0, 0);
        double rise = (tipM - sourceTipM) / d;
        int top = hull.highestAbove(rise);
        double highest = hull.z(top) - sourceTipM - rise * hull.x(top);
        int seen = hull.tangent(d, tipM);
        double fromReceiver = (hull.z(seen) - tipM) / (d - hull.x(seen)) + rise;
        return SmoothSurface.under(fit, highest, steepestFromSource - rise, fromReceiver);
    }
}
