package handreach.propagation.march;

/** Arrays that the inner loops of a bundle use again and again. */
final class LaneWork {
    final float[] yRe;
    final float[] yIm;
    /** Second differences on the ground, scaled as those above it: real and imaginary. */
    final float[] groundRe = new float[LaneMath.LANES];

    final float[] groundIm = new float[LaneMath.LANES];
    /** Of each pole what comes down to node 1 and what goes up from node 0: real, then imaginary, a row of lanes each. */
    final float[][] low = new float[2 * LaneMath.POLES][LaneMath.LANES];

    final float[][] start = new float[2 * LaneMath.POLES][LaneMath.LANES];

    LaneWork(int nodes) {
        this.yRe = new float[nodes * LaneMath.LANES];
        this.yIm = new float[nodes * LaneMath.LANES];
    }
}
