package handreach.propagation;

/**
 * Ground samples in order, in blocks that remember their highest point, so that a search may pass over those that lie deep. Heights
 * are flattened for the earth's curvature, where rays are straight lines whatever the far end is.
 *
 * <p>Reads the arrays it was given, which their owner fills; metres up, and along whatever unit he takes.
 */
public final class BlockedGround {
    /** Samples of a block. */
    public static final int BLOCK = 32;

    private final double[] x;
    private final double[] z;
    private final double[] top;

    /** Over these samples; their blocks' tops are still to be given. */
    public BlockedGround(double[] x, double[] z) {
        this.x = x;
        this.z = z;
        this.top = new double[x.length / BLOCK + 1];
    }

    double x(int sample) {
        return x[sample];
    }

    double z(int sample) {
        return z[sample];
    }

    /** The highest of a whole block. */
    public void top(int block, double highest) {
        top[block] = highest;
    }

    /** Takes the next sample into its block; they come in order from 1 on. */
    public void take(int sample) {
        int block = sample / BLOCK;
        if (sample == 1 || sample % BLOCK == 0 || z[sample] > top[block]) top[block] = z[sample];
    }

    /** The sample farthest above the line between two points, from one sample to before another; 0 when none rises above it. */
    int farthestAbove(int from, int to, double ax, double az, double bx, double bz) {
        double slant = (bz - az) / (bx - ax);
        double foot = az - slant * ax;
        double most = 0;
        int found = 0;
        for (int start = from; start < to; ) {
            int end = Math.min(to, (start / BLOCK + 1) * BLOCK);
            if (top[start / BLOCK] - foot - Math.min(slant * x[start], slant * x[end - 1]) > most) {
                for (int i = start; i < end; i++) {
                    double above = z[i] - foot - slant * x[i];
                    if (above > most) {
                        most = above;
                        found = i;
                    }
                }
            }
            start = end;
        }
        return found;
    }

    /**
     * What the samples from 1 to before another make of a ray that leaves a tip over sample 0: the largest c|c|/(x (d − x)), where c
     * is the ground above the ray, or the given value when none is larger.
     *
     * <p>With ν = c √(2 d/(λ x (d − x))) that orders as ν does and needs no root. Blocks whose top cannot beat the largest so far are
     * passed over; from the middle outwards, since over even ground the largest lies there.
     *
     * @shape  n samples in, scalar out; O(n) at worst, pure
     * @unit   tip m in flattened heights, slope m per unit along, d in the unit along; result m² over that unit squared
     * @valid  d beyond the last sample looked at
     * @error  exact at the samples
     * @source order of ν: {@link KnifeEdge#nu}; passing over blocks ours
     */
    public double worstUnderRay(int to, double tip, double slope, double d, double least) {
        double worst = least;
        if (to <= 1) return worst;
        int lastBlock = (to - 1) / BLOCK;
        int middle = lastBlock >>> 1;
        for (int step = 0; step <= lastBlock + 1; step++) {
            if (middle - step >= 0) worst = worstOf(middle - step, to, tip, slope, d, worst);
            if (middle + 1 + step <= lastBlock) worst = worstOf(middle + 1 + step, to, tip, slope, d, worst);
        }
        return worst;
    }

    private double worstOf(int block, int to, double tip, double slope, double d, double worstSoFar) {
        int start = Math.max(1, block * BLOCK);
        int end = Math.min(to, (block + 1) * BLOCK);
        double above = top[block] - tip - Math.min(slope * x[start], slope * x[end - 1]);
        if (above < 0) {
            double at = Math.max(x[start], Math.min(0.5 * d, x[end - 1]));
            if (-above * above <= worstSoFar * at * (d - at)) return worstSoFar;
        }
        double worst = worstSoFar;
        for (int i = start; i < end; i++) {
            double c = z[i] - tip - slope * x[i];
            double reach = x[i] * (d - x[i]);
            if (c * Math.abs(c) > worst * reach) worst = c * Math.abs(c) / reach;
        }
        return worst;
    }
}
