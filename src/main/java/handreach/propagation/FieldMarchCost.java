package handreach.propagation;

import java.util.HashSet;
import java.util.Set;

/**
 * What a field march will cost, reckoned before it starts.
 *
 * @param steps range steps along the ground
 * @param nodes nodes of the column
 * @param turns steps taken in turning at the corners
 * @param seconds about how long one warm thread takes on the machine of the fit ({@link FieldMarch#cost})
 * @param bytes working memory
 */
public record FieldMarchCost(long steps, int nodes, long turns, double seconds, long bytes) {
    /** Time for one node and pole of a range step, one node of a step of a turn, of a corner, of the start: fitted, docs/full-wave.md. */
    private static final double POLE_NODE_S = 5.3e-9;

    private static final double TURN_NODE_S = 21e-9;
    private static final double CORNER_NODE_S = 13e-9;
    private static final double START_NODE_S = 0.6e-6;
    /** Time for a pole of a step of a length not met before on this march: its fraction is found anew. */
    private static final double NEW_POLE_S = 6.3e-6;
    /** Doubles kept for each node: field, side, work, turn factors, absorber. */
    private static final long DOUBLES_PER_NODE = 28;

    static FieldMarchCost of(FieldMarchGround ground, FieldMarchGrid grid, double quantumM) {
        long steps = 0;
        long turns = 0;
        Set<Long> lengths = new HashSet<>();
        double carriedM = 0;
        for (int f = 0; f < ground.facets(); f++) {
            int m = grid.stepsFor(ground.facetM(f));
            double restM = ground.facetM(f) + carriedM;
            long quanta = FieldMarchGrid.quanta(restM / m, quantumM);
            lengths.add(quanta);
            carriedM = restM - m * quanta * quantumM;
            steps += m;
            if (f > 0) turns += grid.turnStepsFor(ground.slopeRad(f) - ground.slopeRad(f - 1));
        }
        double perNode = grid.order() * steps * POLE_NODE_S
                + turns * TURN_NODE_S
                + ground.facets() * CORNER_NODE_S
                + START_NODE_S;
        double seconds = perNode * grid.nodes() + grid.order() * lengths.size() * NEW_POLE_S;
        long bytes = 8L * DOUBLES_PER_NODE * grid.nodes() + 16L * (steps + ground.facets()) + 4_000_000;
        return new FieldMarchCost(steps, grid.nodes(), turns, seconds, bytes);
    }
}
