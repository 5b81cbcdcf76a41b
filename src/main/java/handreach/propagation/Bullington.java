package handreach.propagation;

/** Diffraction over a whole profile as if by one edge where the two horizons cross. */
public final class Bullington {
    private Bullington() {}

    /**
     * Loss of the equivalent edge, completed by the term for what lies between the horizons: for those who already know its ν, on a
     * path in sight the largest of the samples.
     *
     * @shape  scalars in, scalar out; O(1), pure
     * @unit   ν dimensionless, distance km; result dB
     * @valid  every ν
     * @error  +3.4 ± 5.0 dB against repeated Fresnel integrals over 2 to 4 clean edges (120 seeded paths)
     * @source Rec. ITU-R P.526-15, section 4.5.1, equations (45) to (54); reproduced to 1e-8 dB
     */
    public static double lossDb(double nu, double dKm) {
        return corrected(KnifeEdge.lossDb(nu), dKm);
    }

    /** The loss of the equivalent edge, completed by the term for what lies between the horizons. */
    static double corrected(double edgeDb, double dKm) {
        return edgeDb + (1 - Math.exp(-edgeDb / 6)) * (10 + 0.02 * dKm);
    }

    /** ν of the equivalent edge, or of the worst sample on a path in sight. */
    static double nu(double[] dKm, double[] groundM, double txTipM, double rxTipM, double earthKm, double wavelengthM) {
        int n = dKm.length - 1;
        double d = dKm[n];
        double curve = 500 / earthKm;
        double slopeTx = Double.NEGATIVE_INFINITY;
        double slopeRx = Double.NEGATIVE_INFINITY;
        double worstNu = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < n; i++) {
            double x = dKm[i];
            double rest = d - x;
            double raised = groundM[i] + curve * x * rest;
            slopeTx = Math.max(slopeTx, (raised - txTipM) / x);
            slopeRx = Math.max(slopeRx, (raised - rxTipM) / rest);
            worstNu = Math.max(worstNu, sampleNu(raised, x, d, txTipM, rxTipM, wavelengthM));
        }
        if (slopeTx < (rxTipM - txTipM) / d || n < 2) return worstNu;
        return crossingNu(slopeTx, slopeRx, txTipM, rxTipM, d, wavelengthM);
    }

    /** ν of a point of the raised profile between the two antennas. */
    private static double sampleNu(
            double raisedM, double x, double d, double txTipM, double rxTipM, double wavelengthM) {
        double rest = d - x;
        double above = raisedM - (txTipM * rest + rxTipM * x) / d;
        return KnifeEdge.nu(above, x, rest, d, wavelengthM);
    }

    /**
     * ν of the point where the two horizon rays of an obstructed path cross.
     *
     * @shape  scalars in, scalar out; O(1), pure
     * @unit   slopes m/km over the raised profile (earth bulge inside), antenna tips m above sea level, distance km, wavelength m
     * @valid  obstructed paths: the slope from the first antenna is not below that of the straight line
     * @error  +3.4 ± 5.0 dB against repeated Fresnel integrals over 2 to 4 clean edges (120 seeded paths)
     * @source Rec. ITU-R P.526-15, section 4.5.1, equations (45) to (54); reproduced to 1e-8 dB
     */
    public static double crossingNu(
            double slopeTx, double slopeRx, double txTipM, double rxTipM, double d, double wavelengthM) {
        double at = (rxTipM - txTipM + slopeRx * d) / (slopeTx + slopeRx);
        // Grazing within rounding: both rays lie on the line and cross anywhere.
        if (!(at > 0 && at < d)) return 0;
        return sampleNu(txTipM + slopeTx * at, at, d, txTipM, rxTipM, wavelengthM);
    }

    /**
     * ν over level ground at height 0 seen at samples, with the far antenna beyond the last of them.
     *
     * <p>Over level ground every search has one hump, so the sample at its top is found by halving.
     *
     * @shape  samples 1 to {@code last} in, scalar out; O(log n), pure
     * @unit   distances km, antenna heights over the level ground m, effective earth radius km, wavelength m
     * @valid  heights above 0; the far distance beyond sample {@code last}; without a sample between, ν is minus infinity
     * @error  rounding against looking at every sample
     * @source Rec. ITU-R P.526-15, section 4.5.2: the smooth path of the delta
     */
    static double levelNu(
            double[] dKm, int last, double d, double h1M, double h2M, double earthKm, double wavelengthM) {
        if (last < 1) return Double.NEGATIVE_INFINITY;
        double curve = 500 / earthKm;
        int tx = nearest(dKm, last, Math.sqrt(h1M / curve));
        int rx = nearest(dKm, last, d - Math.sqrt(h2M / curve));
        double slopeTx = Double.NEGATIVE_INFINITY;
        double slopeRx = Double.NEGATIVE_INFINITY;
        for (int i = Math.max(1, tx - 1); i <= Math.min(last, tx + 1); i++)
            slopeTx = Math.max(slopeTx, (curve * dKm[i] * (d - dKm[i]) - h1M) / dKm[i]);
        for (int i = Math.max(1, rx - 1); i <= Math.min(last, rx + 1); i++)
            slopeRx = Math.max(slopeRx, (curve * dKm[i] * (d - dKm[i]) - h2M) / (d - dKm[i]));
        if (slopeTx >= (h2M - h1M) / d) return crossingNu(slopeTx, slopeRx, h1M, h2M, d, wavelengthM);
        int low = 1;
        int high = last;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (bulgeNu(dKm[middle], d, h1M, h2M, curve, wavelengthM)
                    < bulgeNu(dKm[middle + 1], d, h1M, h2M, curve, wavelengthM)) low = middle + 1;
            else high = middle;
        }
        return bulgeNu(dKm[low], d, h1M, h2M, curve, wavelengthM);
    }

    private static double bulgeNu(double x, double d, double h1M, double h2M, double curve, double wavelengthM) {
        return sampleNu(curve * x * (d - x), x, d, h1M, h2M, wavelengthM);
    }

    /** Index, 1 to last, of the sample at or next below a distance. */
    private static int nearest(double[] dKm, int last, double atKm) {
        int low = 1;
        int high = last;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (dKm[middle] <= atKm) low = middle;
            else high = middle - 1;
        }
        return low;
    }
}
