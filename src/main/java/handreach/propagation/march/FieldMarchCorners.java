package handreach.propagation.march;

import java.util.Arrays;

/**
 * Corners of the facets among samples that stand much closer than the ground bends: one in each stretch, where the faces from corner to
 * corner lie nearest to all samples. A mean over the stretch would blunt the crests, and with them the loss behind them.
 *
 * <p>Stretches go by the distances alone, so that neighbouring radials have as many corners, each radial where its own ground bends.
 */
final class FieldMarchCorners {
    private final double[] x;
    private final double[] z;
    /** Of the cheapest way to end a face at a sample: squares of what it leaves off, and the corner before. */
    private final double[] offM2;

    private final int[] before;

    private FieldMarchCorners(double[] x, double[] z) {
        this.x = x;
        this.z = z;
        this.offM2 = new double[x.length];
        this.before = new int[x.length];
    }

    /**
     * Chooses the corners.
     *
     * @shape  distances and heights in, indices of the corners out, the first and last sample among them; O(samples × samples in a
     *     stretch), pure
     * @unit   m
     * @valid  distances that increase; a stretch of twice the shortest face at least
     * @error  the least sum of squared distances, upright, between samples and faces that one corner a stretch allows
     * @source R. Bellman, On the approximation of curves by line segments using dynamic programming, Commun. ACM 4 (1961) 284 (from
     *     memory)
     * @param firstM no corner nearer to the first sample
     * @param everyM length of a stretch
     * @param shortestM no face shorter
     */
    static int[] of(double[] x, double[] z, double firstM, double everyM, double shortestM) {
        return new FieldMarchCorners(x, z).chosen(stretches(x, firstM, everyM, shortestM), shortestM);
    }

    /** Where each stretch begins, and where the last ends. */
    private static int[] stretches(double[] x, double firstM, double everyM, double shortestM) {
        int last = x.length - 1;
        int[] start = new int[x.length + 1];
        int count = 0;
        int at = 1;
        while (at < last && x[at] - x[0] < firstM) at++;
        int end = at;
        while (end < last && x[last] - x[end] >= shortestM) end++;
        while (at < end) {
            start[count++] = at;
            double untilM = x[at] + everyM - 1e-6;
            while (at < end && x[at] < untilM) at++;
        }
        start[count++] = end;
        return Arrays.copyOf(start, count);
    }

    private int[] chosen(int[] start, double shortestM) {
        int last = x.length - 1;
        Arrays.fill(offM2, Double.POSITIVE_INFINITY);
        offM2[0] = 0;
        int from = 0;
        int to = 1;
        for (int stretch = 0; stretch < start.length - 1; stretch++) {
            for (int corner = from; corner < to; corner++) reach(corner, start[stretch], start[stretch + 1], shortestM);
            from = start[stretch];
            to = start[stretch + 1];
        }
        for (int corner = from; corner < to; corner++) reach(corner, last, last + 1, shortestM);
        int[] corners = new int[start.length + 1];
        int at = last;
        for (int i = corners.length - 1; i >= 0; i--) {
            corners[i] = at;
            at = before[at];
        }
        return corners;
    }

    /** Ends faces from a corner at samples from one up to another, where none did better. */
    private void reach(int corner, int first, int end, double shortestM) {
        double toCornerM2 = offM2[corner];
        if (!(toCornerM2 < Double.POSITIVE_INFINITY)) return;
        double x0 = x[corner];
        double z0 = z[corner];
        double leastX = corner > 0 ? x0 + shortestM - 1e-6 : x0;
        double xx = 0;
        double xz = 0;
        double zz = 0;
        for (int i = corner + 1; i < end; i++) {
            double dx = x[i] - x0;
            double dz = z[i] - z0;
            if (i >= first && x[i] >= leastX) {
                double slope = dz / dx;
                // squares of what the samples passed are off this face, from their sums
                double off = toCornerM2 + Math.max(0, zz - slope * (2 * xz - slope * xx));
                if (off < offM2[i]) {
                    offM2[i] = off;
                    before[i] = corner;
                }
            }
            xx += dx * dx;
            xz += dx * dz;
            zz += dz * dz;
        }
    }
}
