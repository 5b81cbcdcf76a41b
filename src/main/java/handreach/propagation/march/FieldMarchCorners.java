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
     *     stretch, squared), pure
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
        int from = 0;
        int to = 1;
        for (int stretch = 0; stretch < start.length - 1; stretch++) {
            for (int i = start[stretch]; i < start[stretch + 1]; i++) reach(i, from, to, shortestM);
            from = start[stretch];
            to = start[stretch + 1];
        }
        reach(last, from, to, shortestM);
        int[] corners = new int[start.length + 1];
        int at = last;
        for (int i = corners.length - 1; i >= 0; i--) {
            corners[i] = at;
            at = before[at];
        }
        return corners;
    }

    /** Finds the best corner, of those given, before a sample. */
    private void reach(int sample, int from, int to, double shortestM) {
        offM2[sample] = Double.POSITIVE_INFINITY;
        for (int corner = from; corner < to; corner++) {
            boolean isShort = corner > 0 && x[sample] - x[corner] < shortestM - 1e-6;
            if (isShort || !(offM2[corner] < offM2[sample])) continue;
            double off = offM2[corner] + offM2(corner, sample);
            if (off < offM2[sample]) {
                offM2[sample] = off;
                before[sample] = corner;
            }
        }
    }

    /** Sum of the squares by which samples between two corners are off the face between them, m². */
    private double offM2(int from, int to) {
        double slope = (z[to] - z[from]) / (x[to] - x[from]);
        double sum = 0;
        for (int i = from + 1; i < to; i++) {
            double off = z[i] - z[from] - slope * (x[i] - x[from]);
            sum += off * off;
        }
        return sum;
    }
}
