package handreach.propagation.handheld;

import handreach.propagation.EdgeSearch;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.BitSet;

/** The edges that a string stretched over an outline touches. */
public final class StretchedEdges {
    private StretchedEdges() {}

    /**
     * Samples on the upper hull of the outline, both ends included, in order; O(n).
     *
     * <p>A sample exactly on the string counts: edges in line each weaken the field.
     */
    public static int[] hull(double[] dKm, double[] y) {
        int[] stack = new int[dKm.length];
        int size = 0;
        for (int i = 0; i < dKm.length; i++) {
            while (size >= 2 && EdgeSearch.aboveLineM(dKm, y, stack[size - 2], stack[size - 1], i) < -1e-9) size--;
            stack[size++] = i;
        }
        return Arrays.copyOf(stack, size);
    }

    /**
     * The samples of a hull that stand out: the one with the greatest ν over the chord of its stretch, then the same on either side of
     * it, down to a given ν, so that a rounded top counts once. The first always counts. O(hull × kept).
     */
    public static int[] separated(int[] hull, double[] dKm, double[] y, double wavelengthM, double leastNu) {
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
                double nu = EdgeSearch.nu(dKm, y, hull[from], hull[i], hull[to], wavelengthM);
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
