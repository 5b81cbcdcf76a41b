package handreach.propagation;

/**
 * Straight line laid through the bare ground by least squares, lowered under an obstructed path: what the antennas see as ground.
 *
 * @param fitTxM height of the fitted line at the first terminal, m above sea level
 * @param fitRxM the same at the last
 * @param txM surface height under the first terminal for diffraction, never above the ground there
 * @param rxM the same under the last
 */
public record SmoothSurface(double fitTxM, double fitRxM, double txM, double rxM) {
    /**
     * Smooth-earth heights of Rec. ITU-R P.526-15 section 4.5.2 (equations (61) to (66)), the same as Rec. ITU-R P.1812-6 Attachment 1
     * section 5.6.
     *
     * @param txTipM height of the first antenna above sea level
     * @param rxTipM height of the last antenna above sea level
     */
    public static SmoothSurface of(double[] dKm, double[] hM, double txTipM, double rxTipM) {
        int n = dKm.length - 1;
        double d = dKm[n];
        // Heights from the first sample: the sums of squares of a 200 000-point profile keep their digits.
        double origin = hM[0];
        double v1 = 0;
        double v2 = 0;
        for (int i = 1; i <= n; i++) {
            double step = dKm[i] - dKm[i - 1];
            double here = hM[i] - origin;
            double before = hM[i - 1] - origin;
            v1 += step * (here + before);
            v2 += step * (here * (2 * dKm[i] + dKm[i - 1]) + before * (dKm[i] + 2 * dKm[i - 1]));
        }
        double fitTx = origin + (2 * v1 * d - v2) / (d * d);
        double fitRx = origin + (v2 - v1 * d) / (d * d);
        double highest = 0;
        double steepTx = Double.NEGATIVE_INFINITY;
        double steepRx = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < n; i++) {
            double above = hM[i] - (txTipM * (d - dKm[i]) + rxTipM * dKm[i]) / d;
            highest = Math.max(highest, above);
            steepTx = Math.max(steepTx, above / dKm[i]);
            steepRx = Math.max(steepRx, above / (d - dKm[i]));
        }
        double tx = fitTx;
        double rx = fitRx;
        if (highest > 0) {
            tx -= highest * steepTx / (steepTx + steepRx);
            rx -= highest * steepRx / (steepTx + steepRx);
        }
        return new SmoothSurface(fitTx, fitRx, Math.min(tx, hM[0]), Math.min(rx, hM[n]));
    }
}
