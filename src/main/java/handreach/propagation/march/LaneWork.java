package handreach.propagation.march;

/** Arrays that the inner loops of a bundle use again and again. */
final class LaneWork {
    final float[] yaRe;
    final float[] yaIm;
    final float[] ybRe;
    final float[] ybIm;
    /** Of two poles, on nodes 0 and 1: real and imaginary parts, a row of lanes each. */
    final float[][] low = new float[8][LaneMath.LANES];
    /** Starts of the two series that mend the first row: real and imaginary. */
    final float[][] alpha = new float[4][LaneMath.LANES];

    LaneWork(int nodes) {
        int size = nodes * LaneMath.LANES;
        this.yaRe = new float[size];
        this.yaIm = new float[size];
        this.ybRe = new float[size];
        this.ybIm = new float[size];
    }
}
