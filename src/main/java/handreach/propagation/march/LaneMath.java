package handreach.propagation.march;

/**
 * The inner loops of a march of {@link #LANES} radials in lockstep, in numbers of 32 bits. Arrays are laid node by node, the lanes of a
 * node side by side; what differs from lane to lane stands in arrays of {@link #LANES}. The node above the highest is empty.
 */
interface LaneMath {
    int LANES = 16;

    /** Poles that go along together: as many recurrences as hide each other's waiting. */
    int POLES = 2;

    /**
     * The part of a range step that comes down, of {@link #POLES} poles: z = gz + b from the top, b the second differences of ψ times a
     * scale, and the base with Σ hz of the node above into the outcome. The values on node 1 are left in {@code work}.
     */
    void down(
            int n,
            float scale,
            LanePole[] poles,
            int first,
            LaneField of,
            LaneField base,
            LaneField out,
            LaneWork work);

    /** The part that goes up: y = gy + b from the starts that stand in {@code work}, and Σ wy added to the outcome. */
    void up(int n, float scale, LanePole[] poles, int first, LaneField of, LaneField out, LaneWork work);

    /** ψ times exp(jkηθ), given the cosine and sine of the phase between two nodes. */
    void phase(int n, float[] cosine, float[] sine, float[] re, float[] im);

    /** Inverse pivots of both terms of a turn from node 1 on. */
    void pivots(int n, LaneTerm a, LaneTerm b);

    /** Inverse pivots of the only term of a turn, and its first step, which goes along with them. */
    void firstTurn(int n, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work);

    /** One step of a term of a turn whose pivots are known; node 0 of {@code y} is given. */
    void turn(int n, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work);

    /** ψ times a factor for each node from one on. */
    void fade(int from, int n, float[] factor, float[] re, float[] im);
}
