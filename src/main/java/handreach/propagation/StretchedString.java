package handreach.propagation;

/**
 * The string stretched from the near antenna over the ground to an antenna above the last sample walked.
 *
 * <p>A radial is walked outward once, sample by sample; after each sample every question about the path that ends there is
 * answered without looking back: the upper hull of ground and near antenna is kept as a stack, in coordinates flattened for
 * earth curvature (z = height − x²/2a, in which a ray is a straight line), and so are running sums over the ground and over the
 * bends of the hull. A query looks up the tangent from the far antenna by halving, so it costs O(log n).
 *
 * <p>One object per thread; reuse it ({@link #start} forgets the last radial). Nothing is allocated after construction.
 */
public final class StretchedString {
    /** Samples that share one highest point, so that a search may pass over those that lie deep. */
    private static final int BLOCK = 32;

    private final double[] x;
    private final double[] z;
    private final double[] area;
    private final double[] moment;
    private final int[] hull;
    private final double[] bend;
    private final double[] bendAt;
    private final double[] bendAtSquare;
    private final double[] highest;
    private double curvature;
    private double nearTipM;
    private int count;
    private int hullCount;

    // The path asked about last.
    private int tangent;
    private double farTipZ;
    private double totalBend;
    private double bendMeanM;
    private double bendSpreadM;

    /** Room for so many ground samples a radial. */
    public StretchedString(int capacity) {
        if (capacity < 2) throw new IllegalArgumentException("a path has at least 2 samples, not " + capacity);
        x = new double[capacity];
        z = new double[capacity];
        area = new double[capacity];
        moment = new double[capacity];
        hull = new int[capacity];
        bend = new double[capacity];
        bendAt = new double[capacity];
        bendAtSquare = new double[capacity];
        highest = new double[capacity / BLOCK + 1];
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
        nearTipM = groundM + antennaHeightM;
        x[0] = 0;
        z[0] = groundM;
        area[0] = 0;
        moment[0] = 0;
        count = 1;
        hull[0] = 0;
        bend[0] = bendAt[0] = bendAtSquare[0] = 0;
        hullCount = 1;
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
        placeEnd(distanceM, groundM);
    }

    private void placeEnd(double distanceM, double groundM) {
        int i = count - 1;
        double before = x[i - 1];
        double step = distanceM - before;
        if (!(step > 0))
            throw new IllegalArgumentException("distances must increase, not " + before + ", " + distanceM);
        x[i] = distanceM;
        z[i] = groundM - curvature * distanceM * distanceM;
        area[i] = area[i - 1] + 0.5 * step * (z[i] + z[i - 1]);
        moment[i] = moment[i - 1] + step * (z[i] * (2 * distanceM + before) + z[i - 1] * (distanceM + 2 * before)) / 6;
    }

    private void push(int i) {
        double xi = x[i];
        double zi = z[i];
        int block = i / BLOCK;
        highest[block] = i == 1 || i % BLOCK == 0 ? zi : Math.max(highest[block], zi);
        int top = hullCount - 1;
        while (top > 0 && isAbove(top, xi, zi)) top--;
        if (top > 0) {
            double theta = slope(top) - (zi - hullZ(top)) / (xi - hullX(top));
            double at = hullX(top);
            bend[top] = bend[top - 1] + theta;
            bendAt[top] = bendAt[top - 1] + theta * at;
            bendAtSquare[top] = bendAtSquare[top - 1] + theta * at * at;
        }
        hull[top + 1] = i;
        hullCount = top + 2;
    }

    /** Whether a point beyond stands on or above the hull's edge that ends at this vertex, drawn on. */
    private boolean isAbove(int vertex, double px, double pz) {
        double x0 = hullX(vertex - 1);
        double z0 = hullZ(vertex - 1);
        return (hullZ(vertex) - z0) * (px - x0) <= (pz - z0) * (hullX(vertex) - x0);
    }

    private double hullX(int vertex) {
        return x[hull[vertex]];
    }

    private double hullZ(int vertex) {
        return vertex == 0 ? nearTipM : z[hull[vertex]];
    }

    private double slope(int vertex) {
        return (hullZ(vertex) - hullZ(vertex - 1)) / (hullX(vertex) - hullX(vertex - 1));
    }

    /** Stretch the string to an antenna of this height above the last sample; the measures below are then of this path. */
    void stretchTo(double antennaHeightM) {
        int last = count - 1;
        if (last < 1) throw new IllegalStateException("no ground walked yet");
        farTipZ = z[last] + antennaHeightM;
        double d = x[last];
        int low = 0;
        int high = hullCount - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (isAbove(middle, d, farTipZ)) high = middle - 1;
            else low = middle;
        }
        tangent = low;
        if (low == 0) {
            totalBend = 0;
            bendMeanM = 0.5 * d;
            bendSpreadM = 0;
            return;
        }
        double at = hullX(low);
        double theta = slope(low) - (farTipZ - hullZ(low)) / (d - at);
        totalBend = bend[low - 1] + theta;
        double mean = (bendAt[low - 1] + theta * at) / totalBend;
        double variance = (bendAtSquare[low - 1] + theta * at * at) / totalBend - mean * mean;
        bendMeanM = totalBend > 0 ? mean : at;
        bendSpreadM = variance > 0 ? Math.sqrt(variance) : 0;
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

    /** Sum of the bends of the string, rad. */
    double totalBend() {
        return totalBend;
    }

    /** Where the bends balance, m from the near antenna: the crossing of the two horizon lines. */
    double bendMeanM() {
        return bendMeanM;
    }

    /** Standard deviation of where the bends lie, m. */
    double bendSpreadM() {
        return bendSpreadM;
    }

    /** Distance of the near antenna's horizon, m; of the far antenna when in sight. */
    double nearHorizonM() {
        return inSight() ? lengthM() : hullX(1);
    }

    /** Distance from the far antenna to its horizon, m. */
    double farHorizonM() {
        return lengthM() - hullX(tangent);
    }

    /** Slope of the near antenna's horizon above the line between the antennas. */
    double nearRise() {
        return inSight() ? 0 : slope(1) - chordSlope();
    }

    /** Slope of the far antenna's horizon above the line between the antennas. */
    double farRise() {
        return inSight() ? 0 : chordSlope() - (farTipZ - hullZ(tangent)) / (lengthM() - hullX(tangent));
    }

    private double chordSlope() {
        return (farTipZ - nearTipM) / lengthM();
    }

    /** Largest height of the string above the line between the antennas, m. */
    double largestRiseM() {
        if (inSight()) return 0;
        double chord = chordSlope();
        int low = 1;
        int high = tangent;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (slope(middle) > chord) low = middle;
            else high = middle - 1;
        }
        return hullZ(low) - nearTipM - chord * hullX(low);
    }

    /** Near end of the straight line through the ground by least squares, flattened height, m. */
    double fitNearM() {
        double d = lengthM();
        return (4 * area[count - 1] * d - 6 * moment[count - 1]) / (d * d);
    }

    /** Far end of the straight line through the ground by least squares, flattened height, m. */
    double fitFarM() {
        double d = lengthM();
        return (6 * moment[count - 1] - 2 * area[count - 1] * d) / (d * d);
    }

    double nearGroundM() {
        return z[0];
    }

    double farGroundM() {
        return z[count - 1];
    }

    /**
     * Greatest diffraction parameter of the ground below a clear ray, not above 0; −2 when nothing comes near.
     *
     * <p>ν² = 2 c² d/(λ x (d − x)): signed c|c|/(x (d − x)) orders alike, so one root is taken at the end. Blocks whose highest
     * point cannot beat the worst so far are passed over; from the middle outwards, since over even ground the worst lies there.
     */
    double clearanceNu(double wavelengthM) {
        double scale = 2 * lengthM() / wavelengthM;
        double worst = -4 / scale;
        int lastBlock = (count - 2) / BLOCK;
        int middle = lastBlock / 2;
        for (int step = 0; count > 2 && step <= lastBlock + 1; step++) {
            if (middle - step >= 0) worst = worstOf(middle - step, worst);
            if (middle + 1 + step <= lastBlock) worst = worstOf(middle + 1 + step, worst);
        }
        return worst >= 0 ? 0 : -Math.sqrt(-worst * scale);
    }

    /** The worse of a signed c|c|/(x (d − x)) and those of one block of samples. */
    private double worstOf(int block, double worstSoFar) {
        double d = lengthM();
        double chord = chordSlope();
        int from = Math.max(1, block * BLOCK);
        int to = Math.min(count - 1, (block + 1) * BLOCK);
        double above = highest[block] - nearTipM - Math.min(chord * x[from], chord * x[to - 1]);
        if (above < 0) {
            double at = Math.max(x[from], Math.min(0.5 * d, x[to - 1]));
            if (-above * above <= worstSoFar * at * (d - at)) return worstSoFar;
        }
        double worst = worstSoFar;
        for (int i = from; i < to; i++) {
            double c = z[i] - nearTipM - chord * x[i];
            double reach = x[i] * (d - x[i]);
            if (c * Math.abs(c) > worst * reach) worst = c * Math.abs(c) / reach;
        }
        return worst;
    }
}
