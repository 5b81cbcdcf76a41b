package handreach.propagation;

import java.util.ArrayDeque;
import java.util.BitSet;

/** Edges of an outline: ground raised by the earth's bulge, antenna tips at its ends. */
final class EdgeSearch {
    private EdgeSearch() {}

    /** Height of a sample above the straight line between two others, m. */
    static double aboveLineM(double[] dKm, double[] y, int from, int at, int to) {
        double span = dKm[to] - dKm[from];
        return y[at] - (y[from] * (dKm[to] - dKm[at]) + y[to] * (dKm[at] - dKm[from])) / span;
    }

    static double nu(double[] dKm, double[] y, int from, int at, int to, double wavelengthM) {
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

    /**
     * The samples of a hull that stand out: the one with the greatest ν over the chord of its stretch, then the same on either side of
     * it, down to a given ν, so that a rounded top counts once. The first always counts. O(hull × kept).
     */
    static int[] separated(int[] hull, double[] dKm, double[] y, double wavelengthM, double leastNu) {
        int n = hull.length;
        if (n <= 3) return hull;
        BitSet kept = new BitSet(n);
        kept.set(0);
        kept.set(n - 1);
        ArrayDeque<int[]> stretches = new ArrayDeque<>();
        stretches.add(new int[] {0, n - 1});
        while (!stretches.isEmpty()) {
            int[] stretch = stretches.poll();
            int from = stretch[0];
            int to = stretch[1];
            int worst = -1;
            double most = from == 0 && to == n - 1 ? Double.NEGATIVE_INFINITY : leastNu;
            for (int i = from + 1; i < to; i++) {
                double nu = nu(dKm, y, hull[from], hull[i], hull[to], wavelengthM);
                if (nu > most) {
                    most = nu;
                    worst = i;
                }
            }
            if (worst < 0) continue;
            kept.set(worst);
            stretches.add(new int[] {from, worst});
            stretches.add(new int[] {worst, to});
        }
        return kept.stream().map(i -> hull[i]).toArray();
    }
}
