package handreach.propagation;

/** Several knife edges one after the other, each lit by the one before. */
final class EpsteinPeterson {
    /** Below this ν over its neighbours' line a sample of sampled ground is no edge of its own (ours). */
    static final double LEAST_SEPARATE_NU = 0.5;

    private static final double CORRECTED_ABOVE_DB = 15;

    private EpsteinPeterson() {}

    /**
     * Samples of an outline that count as edges: those under a stretched string.
     *
     * @shape  outline of n samples in, indices out with both ends; O(n × edges), pure
     * @unit   distances km, outline m (ground raised by the earth's bulge, antenna tips at the ends), wavelength m
     * @valid  on a profile of up to 32 samples every hull point; on a finer one only those that stand out by ν = 0.5
     * @error  a rounded top counts as one sharp edge
     * @source choice of edges: upper hull, common practice, no source; the threshold is ours
     */
    public static int[] edges(double[] dKm, double[] y, double wavelengthM) {
        int[] hull = Hull.of(dKm, y);
        return dKm.length <= Deygout.OUTLINE_SAMPLES
                ? hull
                : EdgeSearch.separated(hull, dKm, y, wavelengthM, LEAST_SEPARATE_NU);
    }

    /**
     * Sum of J over the edges, each between its neighbours, with the spreading correction where both losses exceed 15 dB.
     *
     * @shape  outline and indices in, scalar out; O(edges), pure
     * @unit   as {@link #edges}; result dB
     * @valid  path blocked; edges far apart
     * @error  −1.0 ± 3.7 dB against repeated Fresnel integrals (120 seeded paths of 2 to 4 edges)
     * @source Epstein and Peterson (1953); spreading: Rec. ITU-R P.526-15 section 4.3 (from memory)
     */
    public static double lossDb(double[] dKm, double[] y, int[] edges, double wavelengthM) {
        double sum = 0;
        double before = 0;
        for (int i = 1; i < edges.length - 1; i++) {
            double loss = KnifeEdge.lossDb(EdgeSearch.nu(dKm, y, edges[i - 1], edges[i], edges[i + 1], wavelengthM));
            sum += loss;
            if (before > CORRECTED_ABOVE_DB && loss > CORRECTED_ABOVE_DB) {
                double a = dKm[edges[i - 1]] - dKm[edges[i - 2]];
                double b = dKm[edges[i]] - dKm[edges[i - 1]];
                double c = dKm[edges[i + 1]] - dKm[edges[i]];
                sum += spreadingDb(a, b, c);
            }
            before = loss;
        }
        return sum;
    }

    /** 10 log[(a+b)(b+c)/(b(a+b+c))], distances in any one unit. */
    static double spreadingDb(double a, double b, double c) {
        return 10 * Math.log10((a + b) * (b + c) / (b * (a + b + c)));
    }
}
