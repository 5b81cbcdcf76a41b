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
        double highest = 0;
        double steepTx = Double.NEGATIVE_INFINITY;
        double steepRx = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < n; i++) {
            double above = hM[i] - (txTipM * (d - dKm[i]) + rxTipM * dKm[i]) / d;
            highest = Math.max(highest, above);
            steepTx = Math.max(steepTx, above / dKm[i]);
            steepRx = Math.max(steepRx, above / (d - dKm[i]));
        }
        return under(GroundFit.of(dKm, hM), highest, steepTx, steepRx);
    }

    /**
     * The same from what the search over the ground between finds, for those who find it without looking at every sample.
     *
     * @param fit the line through the ground
     * @param highestM how far the ground rises above the straight line between the antennas, no bulge; lowers from 0 up
     * @param steepTx steepest rise of the ground above that line, seen from its first end, m/km
     * @param steepRx the same from the last
     */
    public static SmoothSurface under(GroundFit fit, double highestM, double steepTx, double steepRx) {
        if (!(highestM > 0)) return fit.lowered(0, 0);
        return fit.lowered(highestM * steepTx / (steepTx + steepRx), highestM * steepRx / (steepTx + steepRx));
    }
}
