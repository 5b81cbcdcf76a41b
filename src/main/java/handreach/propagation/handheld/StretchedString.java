package handreach.propagation.handheld;

/**
 * The string stretched from the near antenna over the ground to an antenna above the last sample walked.
 *
 * <p>A radial is walked outward once, sample by sample; after each sample every question about the path that ends there is
 * answered without looking back: the upper hull of ground and near antenna is kept as a stack, in coordinates flattened for
 * earth curvature (z = height − x²/2a, in which a ray is a straight line), and so are running sums over the ground and over the
 * bends of the hull. A query looks up the tangent from the far antenna by halving, so it costs O(log n) beyond the horizon; sums
 * over the hull are made when first asked for. Only the clearance of a path in sight looks at the samples, in blocks.
 *
 * <p>One object per thread; reuse it ({@link #start} forgets the last radial). Nothing is allocated after construction.
 */
public final class StretchedString {
    /** Samples that share one highest point, so that a search may pass over those that lie deep. */
    private static final int BLOCK = 32;

    /** With fewer samples than this the worst clearance may well lie between two of them. */
    private static final int COARSE = 34;

    private final double[] x;
    private final double[] z;
    private final double[] highest;
    private final StretchedStringSums kept = new StretchedStringSums();
    private final StretchedStringSums ground = new StretchedStringSums();
    private final StretchedStringSums edge = new StretchedStringSums();

    // The hull, vertex by vertex; vertex 0 is the near antenna. Sums at a vertex are those of the string that ends
    // there.
    private final double[] hullX;
    private final double[] hullZ;
    private final double[] slope;
    private final double[] bend0;
    private final double[] bend1;
    private final double[] bend2;
    private final double[] pair0;
    private final double[] pair1;
    private final double[] string0;
    private final double[] string1;
    private final double[] string2;
    private final double[] string3;
    private double curvature;
    private double baseM;
    private double nearTip;
    private int count;
    private int hullCount;
    private int summed;

    // The path asked about last.
    private int tangent;
    private double farTip;
    private double chord;
    private double totalBend;
    private double lift;
    private double split;
    private double nearClearance;
    private double farClearance;

    /** Room for so many ground samples a radial. */
    public StretchedString(int capacity) {
        if (capacity < 2) throw new IllegalArgumentException("a path has at least 2 samples, not " + capacity);
        x = new double[capacity];
        z = new double[capacity];
        highest = new double[capacity / BLOCK + 1];
        hullX = new double[capacity];
        hullZ = new double[capacity];
        slope = new double[capacity];
        bend0 = new double[capacity];
        bend1 = new double[capacity];
        bend2 = new double[capacity];
        pair0 = new double[capacity];
        pair1 = new double[capacity];
        string0 = new double[capacity];
        string1 = new double[capacity];
        string2 = new double[capacity];
        string3 = new double[capacity];
    }

    public int capacity() {
        return x.length;
    }

    /**
     * Begin a radial at the near antenna.
     *
     * @param effectiveRadiusM effective earth radius, m
     * @param groundM ground under the near antenna, m above sea level
     * @param antennaHeightM height of the near antenna above that ground, m
     */
    public void start(double effectiveRadiusM, double groundM, double antennaHeightM) {
        if (!(effectiveRadiusM > 0) || !(antennaHeightM > 0))
            throw new IllegalArgumentException("radius " + effectiveRadiusM + ", antenna height " + antennaHeightM);
        curvature = 0.5 / effectiveRadiusM;
        baseM = groundM;
        nearTip = antennaHeightM;
        x[0] = 0;
        z[0] = 0;
        kept.clear();
        ground.clear();
        count = 1;
        hullX[0] = 0;
        hullZ[0] = nearTip;
        hullCount = 1;
        summed = 1;
        tangent = 0;
    }

    /**
     * Walk on to the next ground sample; afterwards the path ends there.
     *
     * @param distanceM from the near antenna, larger than the last, m
     * @param groundM ground above sea level, m
     */
    public void add(double distanceM, double groundM) {
        if (count > 1) push(count - 1);
        kept.take(ground);
        count++;
        placeEnd(distanceM, groundM);
    }

    /**
     * Take the end of the path elsewhere, as if the sample added last had been this one: receivers that stand between the samples
     * of a radial are asked about one after the other, and the radial then goes on.
     *
     * @param distanceM from the near antenna, larger than the sample before, m
     * @param groundM ground above sea level, m
     */
    public void moveEnd(double distanceM, double groundM) {
        if (count < 2) throw new IllegalStateException("no ground walked yet");
        ground.take(kept);
        placeEnd(distanceM, groundM);
    }

    /**
     * Lay the string over a whole path of equal steps at once, for a far antenna of this height or a higher one over its last
     * sample. Ground below the straight line to that antenna is left off the hull, where no such string touches it, so the path
     * cannot be walked on.
     *
     * @param stepM between neighbouring samples, m
     * @param groundM ground above sea level, m, samples 0 to {@code last} are read
     */
    void lay(double effectiveRadiusM, double nearHeightM, double farHeightM, double stepM, double[] groundM, int last) {
        if (last < 1 || !(stepM > 0) || !(farHeightM > 0))
            throw new IllegalArgumentException(last + " steps of " + stepM + " m to a height of " + farHeightM + " m");
        start(effectiveRadiusM, groundM[0], nearHeightM);
        level(stepM, groundM, last);
        double d = x[last];
        int peak = farthestAbove(1, last, 0, nearTip, d, z[last] + farHeightM);
        if (peak == 0) return;
        hullBetween(0, nearTip, 0, peak);
        append(peak);
        // Down to the ground of the last sample, below any antenna there: more than the string needs, and cut off by
        // its tangent.
        hullBetween(x[peak], z[peak], peak, last);
    }

    /** Flattens the ground of a path of equal steps, and sums it; apart from the string, so that either compiles soon. */
    private void level(double stepM, double[] groundM, int last) {
        double d = last * stepM;
        double end = groundM[last] - baseM;
        double sum0 = 0;
        double sum1 = 0;
        double sum2 = 0;
        double sum3 = 0;
        double square = 0;
        double before = 0;
        for (int b = 0; b * BLOCK < last; b++) {
            double top = Double.NEGATIVE_INFINITY;
            int to = Math.min(last, (b + 1) * BLOCK);
            for (int i = Math.max(1, b * BLOCK); i < to; i++) {
                double level = groundM[i] - baseM;
                double number = i;
                double at = number * stepM;
                double flat = level - curvature * at * at;
                x[i] = at;
                z[i] = flat;
                top = Math.max(top, flat);
                double weighted = level * number;
                sum0 += level;
                sum1 += weighted;
                weighted *= number;
                sum2 += weighted;
                sum3 += weighted * number;
                square += level * (2 * level + before);
                before = level;
            }
            highest[b] = top;
        }
        count = last + 1;
        x[last] = d;
        z[last] = end - curvature * d * d;
        ground.hats(stepM, last, sum0, sum1, sum2, sum3, end);
        ground.square = stepM / 3 * (square + end * (end + before));
    }

    /** Appends the hull's vertices strictly between two of its points, by halving at the point farthest above their line. */
    private void hullBetween(double ax, double az, int from, int to) {
        int peak = farthestAbove(from + 1, to, ax, az, x[to], z[to]);
        if (peak == 0) return;
        hullBetween(ax, az, from, peak);
        append(peak);
        hullBetween(x[peak], z[peak], peak, to);
    }

    private void append(int i) {
        int top = hullCount - 1;
        slope[hullCount] = (z[i] - hullZ[top]) / (x[i] - hullX[top]);
        hullX[hullCount] = x[i];
        hullZ[hullCount++] = z[i];
    }

    /** The sample farthest above the line between two points, 0 when none rises above it; blocks that lie below are passed over. */
    private int farthestAbove(int from, int to, double ax, double az, double bx, double bz) {
        double slant = (bz - az) / (bx - ax);
        double foot = az - slant * ax;
        double most = 0;
        int found = 0;
        for (int start = from; start < to; ) {
            int end = Math.min(to, (start / BLOCK + 1) * BLOCK);
            if (highest[start / BLOCK] - foot - Math.min(slant * x[start], slant * x[end - 1]) > most) {
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

    private void placeEnd(double distanceM, double groundM) {
        int i = count - 1;
        double before = x[i - 1];
        if (!(distanceM > before))
            throw new IllegalArgumentException("distances must increase, not " + before + ", " + distanceM);
        double level = groundM - baseM;
        x[i] = distanceM;
        z[i] = level - curvature * distanceM * distanceM;
        ground.run(before, z[i - 1] + curvature * before * before, distanceM, level);
    }

    /** Takes a sample into its block and the hull; in one method, which is compiled in full sooner than three. */
    private void push(int i) {
        double xi = x[i];
        double zi = z[i];
        int block = i / BLOCK;
        if (i == 1 || i % BLOCK == 0 || zi > highest[block]) highest[block] = zi;
        int top = hullCount - 1;
        while (top > 0 && hullZ[top] + slope[top] * (xi - hullX[top]) <= zi) top--;
        int last = top + 1;
        slope[last] = (zi - hullZ[top]) / (xi - hullX[top]);
        hullX[last] = xi;
        hullZ[last] = zi;
        hullCount = last + 1;
        if (summed > last) summed = last;
    }

    /** Whether a point beyond stands on or above the hull's edge that ends at this vertex, drawn on. */
    private boolean isAbove(int vertex, double px, double pz) {
        return hullZ[vertex] + slope[vertex] * (px - hullX[vertex]) <= pz;
    }

    /** Brings the sums over the hull up to a vertex. */
    private void sumUpTo(int vertex) {
        for (int v = summed; v <= vertex; v++) {
            int u = v - 1;
            double from = hullX[u];
            double theta = u == 0 ? 0 : slope[u] - slope[v];
            double pair = theta * (from * bend1[u] - bend2[u]);
            bend0[v] = bend0[u] + theta;
            bend1[v] = bend1[u] + theta * from;
            bend2[v] = bend2[u] + theta * from * from;
            pair0[v] = pair0[u] + pair;
            pair1[v] = pair1[u] + pair * from;
            edge.clear();
            edge.run(from, hullZ[u], hullX[v], hullZ[v]);
            string0[v] = string0[u] + edge.order0;
            string1[v] = string1[u] + edge.order1;
            string2[v] = string2[u] + edge.order2;
            string3[v] = string3[u] + edge.order3;
        }
        summed = Math.max(summed, vertex + 1);
    }

    /** Stretch the string to an antenna of this height above the last sample; the measures below are then of this path. */
    void stretchTo(double antennaHeightM) {
        int last = count - 1;
        if (last < 1) throw new IllegalStateException("no ground walked yet");
        double d = x[last];
        farTip = z[last] + antennaHeightM;
        chord = (farTip - nearTip) / d;
        int low = 0;
        int high = hullCount - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (isAbove(middle, d, farTip)) high = middle - 1;
            else low = middle;
        }
        tangent = low;
        sumUpTo(low);
        measureBends(low, d);
        measureClearance(low, d);
    }

    private void measureBends(int v, double d) {
        double at = hullX[v];
        double theta = v == 0 ? 0 : slope[v] - (farTip - hullZ[v]) / (d - at);
        double pair = theta * (at * bend1[v] - bend2[v]);
        totalBend = bend0[v] + theta;
        double first = bend1[v] + theta * at;
        double second = bend2[v] + theta * at * at;
        lift = Math.max(0, first - second / d);
        split = Math.max(0, pair0[v] + pair - (pair1[v] + pair * at) / d);
    }

    private void measureClearance(int v, double d) {
        edge.clear();
        edge.run(hullX[v], hullZ[v], d, farTip);
        // The ground is straight between samples and the flattening x²/2a is taken off as a whole.
        double c = curvature * d * d * d;
        double over0 = string0[v] + edge.order0 - ground.order0 + c / 3;
        double over1 = (string1[v] + edge.order1 - ground.order1) / d + c / 4;
        double over2 = (string2[v] + edge.order2 - ground.order2) / (d * d) + c / 5;
        double over3 = (string3[v] + edge.order3 - ground.order3) / (d * d * d) + c / 6;
        nearClearance = Math.max(0, over0 - 3 * over1 + 3 * over2 - over3) / d;
        farClearance = Math.max(0, over3) / d;
    }

    /** Number of ground samples walked, the one under the near antenna included. */
    public int count() {
        return count;
    }

    double lengthM() {
        return x[count - 1];
    }

    /** Whether the far antenna sees the near one. */
    boolean inSight() {
        return tangent == 0;
    }

    /** Sum of the bends θ of the string, rad. */
    double totalBend() {
        return totalBend;
    }

    /** Σ θ x (d − x)/d over the bends, m: how high they lift the string, each at its own place. */
    double liftM() {
        return lift;
    }

    /** Σ θ θ′ a b c/d over the pairs of bends (a, b, c the three spans), times the total bend over the lift, m; 0 for one edge. */
    double splitM() {
        return lift > 0 ? totalBend * split / lift : 0;
    }

    /** Mean height of the string over the ground weighted by (1 − x/d)³, times a quarter, m. */
    double nearClearanceM() {
        return nearClearance;
    }

    /** Mean height of the string over the ground weighted by (x/d)³, times a quarter, m. */
    double farClearanceM() {
        return farClearance;
    }

    /** Slope of the string where it leaves the near antenna, against the level there. */
    double nearSlope() {
        return tangent == 0 ? chord : slope[1];
    }

    /** Slope of the string where it leaves the far antenna, against the level there. */
    double farSlope() {
        double d = lengthM();
        double inward = (farTip - hullZ[tangent]) / (d - hullX[tangent]);
        return -inward - 2 * curvature * d;
    }

    /** Root mean square of the ground about the straight line that fits it best (true heights, not flattened), m. */
    double roughnessM() {
        double d = lengthM();
        double mean = ground.order0 / d;
        double tilt = ground.order1 / d - 0.5 * mean * d;
        double variance = ground.square / d - mean * mean - 12 * tilt * tilt / (d * d);
        return variance > 0 ? Math.sqrt(variance) : 0;
    }

    /**
     * Greatest diffraction parameter of the ground below a clear ray, not above 0 and not below the lowest asked for.
     *
     * <p>ν² = 2 c² d/(λ x (d − x)): signed c|c|/(x (d − x)) orders alike, so one root is taken at the end. Blocks whose highest
     * point cannot beat the worst so far are passed over; from the middle outwards, since over even ground the worst lies there.
     */
    double clearanceNu(double wavelengthM, double lowestNu) {
        double scale = 2 * lengthM() / wavelengthM;
        double worst = -lowestNu * lowestNu / scale;
        int lastBlock = (count - 2) / BLOCK;
        int middle = lastBlock / 2;
        for (int step = 0; count > 2 && step <= lastBlock + 1; step++) {
            if (middle - step >= 0) worst = worstOf(middle - step, worst);
            if (middle + 1 + step <= lastBlock) worst = worstOf(middle + 1 + step, worst);
        }
        if (count < COARSE) worst = worstBetween(worst);
        return worst >= 0 ? 0 : -Math.sqrt(-worst * scale);
    }

    /** The worse of a signed c|c|/(x (d − x)) and those of one block of samples. */
    private double worstOf(int block, double worstSoFar) {
        double d = lengthM();
        int from = Math.max(1, block * BLOCK);
        int to = Math.min(count - 1, (block + 1) * BLOCK);
        double above = highest[block] - nearTip - Math.min(chord * x[from], chord * x[to - 1]);
        if (above < 0) {
            double at = Math.max(x[from], Math.min(0.5 * d, x[to - 1]));
            if (-above * above <= worstSoFar * at * (d - at)) return worstSoFar;
        }
        double worst = worstSoFar;
        for (int i = from; i < to; i++) {
            double c = z[i] - nearTip - chord * x[i];
            double reach = x[i] * (d - x[i]);
            if (c * Math.abs(c) > worst * reach) worst = c * Math.abs(c) / reach;
        }
        return worst;
    }

    /** The same between samples: on a straight run c = α + βx the extremum lies at αd/(βd + 2α). */
    private double worstBetween(double worstSoFar) {
        double d = lengthM();
        double worst = worstSoFar;
        for (int i = 1; i < count; i++) {
            double c0 = z[i - 1] - nearTip - chord * x[i - 1];
            double c1 = z[i] - nearTip - chord * x[i];
            double beta = (c1 - c0) / (x[i] - x[i - 1]);
            double alpha = c0 - beta * x[i - 1];
            double at = alpha * d / (beta * d + 2 * alpha);
            if (!(at > x[i - 1] && at < x[i])) continue;
            double c = alpha + beta * at;
            worst = Math.max(worst, c * Math.abs(c) / (at * (d - at)));
        }
        return worst;
    }
}
