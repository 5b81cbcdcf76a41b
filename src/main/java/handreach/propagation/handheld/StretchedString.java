package handreach.propagation.handheld;

import handreach.propagation.BlockedGround;
import handreach.propagation.Hull;

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
final class StretchedString {
    /** With fewer samples than this the worst clearance may well lie between two of them. */
    private static final int COARSE = 34;

    private final double[] x;
    private final double[] z;
    private final BlockedGround blocks;
    private final StretchedStringSums kept = new StretchedStringSums();
    private final StretchedStringSums ground = new StretchedStringSums();
    private final StretchedStringSums edge = new StretchedStringSums();

    // Vertex 0 of the hull is the near antenna. Sums at a vertex are those of the string that ends there.
    private final Hull hull;
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
    private int summed;
    private int nearPlace;
    private int farPlace;

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
        blocks = new BlockedGround(x, z);
        hull = new Hull(capacity);
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
        hull.start(0, nearTip, 0);
        summed = 1;
        tangent = 0;
        nearPlace = 0;
        farPlace = 0;
    }

    /**
     * Walk on to the next ground sample; afterwards the path ends there.
     *
     * @param distanceM from the near antenna, larger than the last, m
     * @param groundM ground above sea level, m
     */
    public void add(double distanceM, double groundM) {
        if (count > 1) {
            blocks.take(count - 1);
            summed = Math.min(summed, hull.push(x[count - 1], z[count - 1], count - 1));
        }
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
        farPlace = last - 1;
        hull.stretch(blocks, last, x[last], z[last] + farHeightM);
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
        for (int b = 0; b * BlockedGround.BLOCK < last; b++) {
            double top = Double.NEGATIVE_INFINITY;
            int to = Math.min(last, (b + 1) * BlockedGround.BLOCK);
            for (int i = Math.max(1, b * BlockedGround.BLOCK); i < to; i++) {
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
            blocks.top(b, top);
        }
        count = last + 1;
        x[last] = d;
        z[last] = end - curvature * d * d;
        ground.hats(stepM, last, sum0, sum1, sum2, sum3, end);
        ground.square = stepM / 3 * (square + end * (end + before));
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

    /** Brings the sums over the hull up to a vertex. */
    private void sumUpTo(int vertex) {
        for (int v = summed; v <= vertex; v++) {
            int u = v - 1;
            double from = hull.x(u);
            double theta = u == 0 ? 0 : hull.slope(u) - hull.slope(v);
            double pair = theta * (from * bend1[u] - bend2[u]);
            bend0[v] = bend0[u] + theta;
            bend1[v] = bend1[u] + theta * from;
            bend2[v] = bend2[u] + theta * from * from;
            pair0[v] = pair0[u] + pair;
            pair1[v] = pair1[u] + pair * from;
            edge.clear();
            edge.run(from, hull.z(u), hull.x(v), hull.z(v));
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
        tangent = hull.tangent(d, farTip);
        sumUpTo(tangent);
        measureBends(tangent, d);
        measureClearance(tangent, d);
    }

    private void measureBends(int v, double d) {
        double at = hull.x(v);
        double theta = v == 0 ? 0 : hull.slope(v) - (farTip - hull.z(v)) / (d - at);
        double pair = theta * (at * bend1[v] - bend2[v]);
        totalBend = bend0[v] + theta;
        double first = bend1[v] + theta * at;
        double second = bend2[v] + theta * at * at;
        lift = Math.max(0, first - second / d);
        split = Math.max(0, pair0[v] + pair - (pair1[v] + pair * at) / d);
    }

    private void measureClearance(int v, double d) {
        edge.clear();
        edge.run(hull.x(v), hull.z(v), d, farTip);
        // The ground is straight between samples and the flattening x²/2a is taken off as a whole.
        double c = curvature * d * d * d;
        double over0 = string0[v] + edge.order0 - ground.order0 + c / 3;
        double over1 = (string1[v] + edge.order1 - ground.order1) / d + c / 4;
        double over2 = (string2[v] + edge.order2 - ground.order2) / (d * d) + c / 5;
        double over3 = (string3[v] + edge.order3 - ground.order3) / (d * d * d) + c / 6;
        nearClearance = Math.max(0, over0 - 3 * over1 + 3 * over2 - over3) / d;
        farClearance = Math.max(0, over3) / d;
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

    /** Height of the string over the ground so far from the near antenna, over the far end of a shorter path, m. */
    double gapFromNearM(double distanceM) {
        double at = Math.min(distanceM, lengthM());
        int v = 0;
        while (v < tangent && hull.x(v + 1) < at) v++;
        nearPlace = sampleBefore(at, nearPlace);
        return gapM(v, at, nearPlace);
    }

    /** Height of the string over the ground so far before the far antenna, over the near end of a shorter path, m. */
    double gapFromFarM(double distanceM) {
        double at = Math.max(0, lengthM() - distanceM);
        int v = tangent;
        while (v > 0 && hull.x(v) > at) v--;
        farPlace = sampleBefore(at, farPlace);
        return gapM(v, at, farPlace);
    }

    /** The last sample not beyond a place, and never the end; looked for from where it was the last time. */
    private int sampleBefore(double at, int lookedAtLast) {
        int i = lookedAtLast;
        int beforeEnd = count - 2;
        while (x[i] > at) i--;
        while (i < beforeEnd && x[i + 1] <= at) i++;
        return i;
    }

    /** Height of the string's straight run behind a vertex over the straight ground behind a sample. */
    private double gapM(int vertex, double at, int sample) {
        double fromX = hull.x(vertex);
        double fromZ = hull.z(vertex);
        double slope = vertex < tangent ? hull.slope(vertex + 1) : (farTip - fromZ) / (lengthM() - fromX);
        double behind = at - x[sample];
        double ahead = x[sample + 1] - at;
        double ground = (z[sample] * ahead + z[sample + 1] * behind) / (ahead + behind) + curvature * ahead * behind;
        return Math.max(0, fromZ + slope * (at - fromX) - ground);
    }

    /** Slope of the string where it leaves the near antenna, against the level there. */
    double nearSlope() {
        return tangent == 0 ? chord : hull.slope(1);
    }

    /** Slope of the string where it leaves the far antenna, against the level there. */
    double farSlope() {
        double d = lengthM();
        double inward = (farTip - hull.z(tangent)) / (d - hull.x(tangent));
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
     * <p>ν² = 2 c² d/(λ x (d − x)), see {@link BlockedGround#worstUnderRay}.
     */
    double clearanceNu(double wavelengthM, double lowestNu) {
        double scale = 2 * lengthM() / wavelengthM;
        double worst = blocks.worstUnderRay(count - 1, nearTip, chord, lengthM(), -lowestNu * lowestNu / scale);
        if (count < COARSE) worst = worstBetween(worst);
        return worst >= 0 ? 0 : -Math.sqrt(-worst * scale);
    }

    /** The worst c|c|/(x (d − x)) between samples: on a straight run c = α + βx the extremum lies at αd/(βd + 2α). */
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
