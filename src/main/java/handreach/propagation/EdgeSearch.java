package handreach.propagation;

/** Edges of an outline: ground raised by the earth's bulge, antenna tips at its ends. */
public final class EdgeSearch {
    private EdgeSearch() {}

    /** Height of a sample above the straight line between two others, m. */
    public static double aboveLineM(double[] dKm, double[] y, int from, int at, int to) {
        double span = dKm[to] - dKm[from];
        return y[at] - (y[from] * (dKm[to] - dKm[at]) + y[to] * (dKm[at] - dKm[from])) / span;
    }

    public static double nu(double[] dKm, double[] y, int from, int at, int to, double wavelengthM) {
        return KnifeEdge.nu(aboveLineM(dKm, y, from, at, to), dKm[at] - dKm[from], dKm[to] - dKm[at], wavelengthM);
    }

    /** The sample with the greatest ν strictly between two others; −1 when there is none between. */
    static int worst(double[] dKm, double[] y, int from, int to, double wavelengthM) {
        int worst = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from + 1; i < to; i++) {
            double nu = nu(dKm, y, from, i, to, wavelengthM);
            if (nu > most) {
                most = nu;
                worst = i;
            }
        }
        return worst;
    }
}
