package handreach.propagation;

import java.util.Arrays;

/**
 * The upper convex hull of points that come from left to right: the string stretched over them. Vertices are kept on a stack whose
 * edge slopes fall from bottom to top, so what a new point hides, and what a receiver sees first, is found without looking at
 * points below the string.
 *
 * <p>Any unit along, any unit up; slopes are one over the other. In coordinates flattened for the earth's curvature a ray is a
 * straight line, and the hull the line of sight.
 */
public final class Hull {
    /** A sample of an outline this little below the string touches it, m: rounding of heights. */
    private static final double TOUCHES_M = 1e-9;

    private final double slack;
    private double[] x;
    private double[] z;
    private double[] slope;
    private int[] sample;
    private int size;

    /** An empty hull with room for so many vertices; it grows when they are more. Of points in line the outer two are kept. */
    public Hull(int capacity) {
        this(capacity, 0);
    }

    private Hull(int capacity, double slack) {
        this.slack = slack;
        x = new double[capacity];
        z = new double[capacity];
        slope = new double[capacity];
        sample = new int[capacity];
    }

    /**
     * Samples of a whole outline that its hull touches, both ends included.
     *
     * <p>A sample exactly on the string counts: edges in line each weaken the field.
     *
     * @shape  outline of n samples in, indices out in order; O(n), pure
     * @unit   distances km, outline m
     * @valid  distances increase
     * @error  samples within a nanometre of the string count as on it
     * @source upper hull of points in order, common practice, no source
     */
    public static int[] of(double[] dKm, double[] outlineM) {
        Hull hull = new Hull(dKm.length, TOUCHES_M);
        for (int i = 0; i < dKm.length; i++) hull.push(dKm[i], outlineM[i], i);
        return Arrays.copyOf(hull.sample, hull.size);
    }

    /** Empties the hull and lays its first point. */
    public void start(double atX, double atZ, int sampleIndex) {
        size = 1;
        x[0] = atX;
        z[0] = atZ;
        slope[0] = Double.POSITIVE_INFINITY;
        sample[0] = sampleIndex;
    }

    public void clear() {
        size = 0;
    }

    public int size() {
        return size;
    }

    public double x(int vertex) {
        return x[vertex];
    }

    public double z(int vertex) {
        return z[vertex];
    }

    /** Slope of the edge that ends in a vertex. */
    public double slope(int vertex) {
        return slope[vertex];
    }

    /** Lays a point right of all others and takes away the vertices it hides; says which vertex it is. */
    public int push(double atX, double atZ, int sampleIndex) {
        if (size == 0) {
            start(atX, atZ, sampleIndex);
            return 0;
        }
        int top = size - 1;
        while (top > 0 && z[top] + slope[top] * (atX - x[top]) + slack <= atZ) top--;
        size = top + 1;
        return append(atX, atZ, sampleIndex);
    }

    /** Lays a point that is known to be the next vertex. */
    private int append(double atX, double atZ, int sampleIndex) {
        int last = size;
        if (last == x.length) grow();
        slope[last] = (atZ - z[last - 1]) / (atX - x[last - 1]);
        x[last] = atX;
        z[last] = atZ;
        sample[last] = sampleIndex;
        size = last + 1;
        return last;
    }

    /**
     * Lays the string over the samples from 1 to the last, from the first point of this hull on, as far as it touches one above the
     * straight line to a point over the last sample. Ground below that line is left off, so the hull cannot be pushed on; it runs down
     * to the last sample itself, which a receiver above it cuts off by its {@link #tangent}.
     */
    public void stretch(BlockedGround ground, int last, double farX, double farZ) {
        int peak = ground.farthestAbove(1, last, x[0], z[0], farX, farZ);
        if (peak == 0) return;
        between(ground, x[0], z[0], 0, peak);
        append(ground.x(peak), ground.z(peak), peak);
        between(ground, ground.x(peak), ground.z(peak), peak, last);
    }

    /** Appends the vertices strictly between two others, by halving at the sample farthest above their line. */
    private void between(BlockedGround ground, double ax, double az, int from, int to) {
        int peak = ground.farthestAbove(from + 1, to, ax, az, ground.x(to), ground.z(to));
        if (peak == 0) return;
        between(ground, ax, az, from, peak);
        append(ground.x(peak), ground.z(peak), peak);
        between(ground, ground.x(peak), ground.z(peak), peak, to);
    }

    /**
     * The last vertex that the string from the first point to a point right of all others touches: the one with the steepest
     * line to that point. 0 when it sees the first point.
     */
    public int tangent(double atX, double atZ) {
        int low = 0;
        int high = size - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (z[middle] + slope[middle] * (atX - x[middle]) <= atZ) high = middle - 1;
            else low = middle;
        }
        return low;
    }

    /** The vertex highest above a line of this slope. */
    public int highestAbove(double lineSlope) {
        int low = 0;
        int high = size - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (slope[middle] > lineSlope) low = middle;
            else high = middle - 1;
        }
        return low;
    }

    private void grow() {
        int more = 2 * x.length;
        x = Arrays.copyOf(x, more);
        z = Arrays.copyOf(z, more);
        slope = Arrays.copyOf(slope, more);
        sample = Arrays.copyOf(sample, more);
    }
}
