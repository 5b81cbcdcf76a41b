package handreach.propagation;

/**
 * Straight line laid through bare ground by least squares, in running sums: samples are taken in outwards, and the fit to any far end
 * behind them costs a few additions.
 *
 * <p>Distances km, heights m above sea level. Heights are summed from the first sample: the sums of squares of a 200 000-point
 * profile keep their digits. Source: Rec. ITU-R P.526-15 section 4.5.2, v1 and v2.
 */
public final class GroundFit {
    private double firstM;
    private double lastKm;
    private double lastM;
    private double v1;
    private double v2;
    private double farM;
    private double txM;
    private double rxM;

    /** The line through a whole profile. */
    static GroundFit of(double[] dKm, double[] hM) {
        GroundFit fit = new GroundFit();
        int n = dKm.length - 1;
        fit.start(dKm[0], hM[0]);
        for (int i = 1; i < n; i++) fit.take(dKm[i], hM[i]);
        fit.end(dKm[n], hM[n]);
        return fit;
    }

    /** Begins at the first sample. */
    public void start(double atKm, double groundM) {
        firstM = groundM;
        lastKm = atKm;
        lastM = 0;
        v1 = 0;
        v2 = 0;
    }

    /** Takes in the next sample. */
    public void take(double atKm, double groundM) {
        double h = groundM - firstM;
        v1 += (atKm - lastKm) * (h + lastM);
        v2 += (atKm - lastKm) * (h * (2 * atKm + lastKm) + lastM * (atKm + 2 * lastKm));
        lastKm = atKm;
        lastM = h;
    }

    /** Fits the line to the samples taken in and a far end behind them, which is not taken in. */
    public void end(double d, double groundM) {
        double h = groundM - firstM;
        double all1 = v1 + (d - lastKm) * (h + lastM);
        double all2 = v2 + (d - lastKm) * (h * (2 * d + lastKm) + lastM * (d + 2 * lastKm));
        farM = groundM;
        txM = firstM + (2 * all1 * d - all2) / (d * d);
        rxM = firstM + (all2 - all1 * d) / (d * d);
    }

    /** Height of the line at the first sample, never above the ground there: what a reflection is computed from. */
    public double underTxM() {
        return Math.min(txM, firstM);
    }

    /** The same at the far end. */
    public double underRxM() {
        return Math.min(rxM, farM);
    }

    /** The line lowered by these heights at its ends, never above the ground there. */
    SmoothSurface lowered(double byTxM, double byRxM) {
        return new SmoothSurface(txM, rxM, Math.min(txM - byTxM, firstM), Math.min(rxM - byRxM, farM));
    }
}
