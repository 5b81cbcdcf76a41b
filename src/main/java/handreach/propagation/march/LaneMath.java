package handreach.propagation.march;

/**
 * The inner loops of a march of {@link #LANES} radials in lockstep, in numbers of 32 bits. Arrays are laid node by node, the lanes of a
 * node side by side; what differs from lane to lane stands in arrays of {@link #LANES}.
 */
interface LaneMath {
    int LANES = 16;

    /**
     * ψ += Σ c A⁻¹ b over two poles, with the settled pivots from the first node on. The values of both poles on the two lowest nodes are
     * left in {@code low}, from which {@link #mend} takes its starts.
     *
     * @param low a row of lanes each: first pole on nodes 0 and 1, real and imaginary, then the second pole
     */
    void solve(int n, LanePole a, LanePole b, float[] sideRe, float[] sideIm, float[] re, float[] im, LaneWork work);

    /** ψᵢ += α gⁱ of two poles on the lowest nodes: the true first row in place of the settled one. */
    void mend(int nodes, LanePole a, LanePole b, float[] re, float[] im, LaneWork work);

    /** ψ times exp(jkηθ), given the cosine and sine of the phase between two nodes. */
    void phase(int n, float[] cosine, float[] sine, float[] re, float[] im);

    /** Inverse pivots of both terms of a turn from node 1 on. */
    void pivots(int n, LaneTerm a, LaneTerm b);

    /** One step of a term of a turn; node 0 of {@code y} is given. */
    void turn(int n, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work);

    /** ψ times a factor for each node from one on. */
    void fade(int from, int n, float[] factor, float[] re, float[] im);
}
