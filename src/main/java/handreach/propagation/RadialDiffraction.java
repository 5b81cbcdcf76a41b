package handreach.propagation;

/**
 * The pieces of Bullington diffraction for those who already know the horizons: a radial finds them for every sample with a
 * hull, and need not look at the ground between again. Each gives what {@link Bullington} gives for the profile.
 */
public final class RadialDiffraction {
    private RadialDiffraction() {}

    /**
     * Bullington loss of an obstructed path from the slopes of its two horizon rays.
     *
     * @shape  scalars in, scalar out; O(1), pure
     * @unit   slopes m/km over the raised profile (earth bulge inside), antenna tips m above sea level, distance km, wavelength m
     * @valid  obstructed paths: the slope from the first antenna is not below that of the straight line
     * @error  rounding against {@link Bullington#lossDb}
     * @source Rec. ITU-R P.526-15, section 4.5.1
     */
    public static double obstructedDb(
            double slopeTx, double slopeRx, double txTipM, double rxTipM, double dKm, double wavelengthM) {
        double nu = Bullington.crossingNu(slopeTx, slopeRx, txTipM, rxTipM, dKm, wavelengthM);
        return Bullington.corrected(KnifeEdge.lossDb(nu), dKm);
    }

    /**
     * Bullington loss of a path in sight from the largest ν of its samples.
     *
     * @shape  scalars in, scalar out; O(1), pure
     * @unit   ν dimensionless, distance km; result dB
     * @valid  every ν
     * @error  rounding against {@link Bullington#lossDb}
     * @source Rec. ITU-R P.526-15, section 4.5.1
     */
    public static double inSightDb(double nu, double dKm) {
        return Bullington.corrected(KnifeEdge.lossDb(nu), dKm);
    }

    /**
     * Bullington loss over level ground at height 0 seen at the samples of a radial, with the far antenna beyond the last of them.
     *
     * <p>Over level ground every search has one hump, so the sample at its top is found by halving.
     *
     * @shape  samples 0 to {@code last} in, scalar out; O(log n), pure
     * @unit   distances km, antenna heights over the level ground m, effective earth radius km, wavelength m
     * @valid  heights above 0; the far distance beyond sample {@code last}
     * @error  rounding against {@link Bullington#lossDb} over zeros
     * @source Rec. ITU-R P.526-15, section 4.5.2: the smooth path of the delta
     */
    public static double levelDb(
            double[] dKm, int last, double farKm, double h1M, double h2M, double earthKm, double wavelengthM) {
        if (last < 1) return 0;
        double curve = 500 / earthKm;
        int tx = nearest(dKm, last, Math.sqrt(h1M / curve));
        int rx = nearest(dKm, last, farKm - Math.sqrt(h2M / curve));
        double slopeTx = Double.NEGATIVE_INFINITY;
        double slopeRx = Double.NEGATIVE_INFINITY;
        for (int i = Math.max(1, tx - 1); i <= Math.min(last, tx + 1); i++)
            slopeTx = Math.max(slopeTx, curve * (farKm - dKm[i]) - h1M / dKm[i]);
        for (int i = Math.max(1, rx - 1); i <= Math.min(last, rx + 1); i++)
            slopeRx = Math.max(slopeRx, curve * dKm[i] - h2M / (farKm - dKm[i]));
        if (slopeTx >= (h2M - h1M) / farKm) return obstructedDb(slopeTx, slopeRx, h1M, h2M, farKm, wavelengthM);
        int low = 1;
        int high = last;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (levelNu(dKm[middle], farKm, h1M, h2M, curve, wavelengthM)
                    < levelNu(dKm[middle + 1], farKm, h1M, h2M, curve, wavelengthM)) low = middle + 1;
            else high = middle;
        }
        return inSightDb(levelNu(dKm[low], farKm, h1M, h2M, curve, wavelengthM), farKm);
    }

    private static double levelNu(double x, double farKm, double h1M, double h2M, double curve, double wavelengthM) {
        double rest = farKm - x;
        double above = curve * x * rest - (h1M * rest + h2M * x) / farKm;
        return above * Math.sqrt(0.002 * farKm / (wavelengthM * x * rest));
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
