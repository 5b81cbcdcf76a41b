package handreach.propagation.march;

import java.util.Arrays;

/**
 * The field of all lanes on a column: real and imaginary parts, node by node, the lanes of a node side by side. One node more than
 * there may be stands above the highest, and is empty.
 *
 * @param re real parts
 * @param im imaginary parts
 */
@SuppressWarnings("ArrayRecordComponent")
record LaneField(float[] re, float[] im) {
    static LaneField of(int nodes) {
        return new LaneField(new float[(nodes + 1) * LaneMath.LANES], new float[(nodes + 1) * LaneMath.LANES]);
    }

    /** Empties the nodes from one on up to another, that one too. */
    void empty(int from, int to) {
        Arrays.fill(re, from * LaneMath.LANES, (to + 1) * LaneMath.LANES, 0);
        Arrays.fill(im, from * LaneMath.LANES, (to + 1) * LaneMath.LANES, 0);
    }
}
