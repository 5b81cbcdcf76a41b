package handreach.propagation;

/**
 * What a field march will cost, reckoned before it starts.
 *
 * @param steps range steps along the ground
 * @param nodes nodes of the column
 * @param turns steps taken in turning at the corners
 * @param seconds about how long one warm thread takes; from the counts and one figure per node, so good to a factor of 2
 * @param bytes working memory
 */
public record FieldMarchCost(long steps, int nodes, long turns, double seconds, long bytes) {
    /** Time for one node of one range step, and of one step of a turn: measured, see docs/full-wave.md. */
    private static final double STEP_NODE_S = 22e-9;

    private static final double TURN_NODE_S = 16e-9;
    private static final double CORNER_NODE_S = 18e-9;
    /** Doubles kept for each node: field, side, work, turn factors, absorber. */
    private static final long DOUBLES_PER_NODE = 28;

    static FieldMarchCost of(FieldMarchGround ground, FieldMarchGrid grid) {
        long steps = 0;
        long turns = 0;
        for (int f = 0; f < ground.facets(); f++) {
            steps += grid.stepsFor(ground.facetM(f));
            if (f > 0) turns += grid.turnStepsFor(ground.slopeRad(f) - ground.slopeRad(f - 1));
        }
        double perNode = steps * STEP_NODE_S + turns * TURN_NODE_S + ground.facets() * CORNER_NODE_S;
        long bytes = 8L * DOUBLES_PER_NODE * grid.nodes() + 16L * (steps + ground.facets()) + 4_000_000;
        return new FieldMarchCost(steps, grid.nodes(), turns, perNode * grid.nodes(), bytes);
    }
}
