package handreach.propagation.march;

import java.util.HashSet;
import java.util.Set;

/**
 * What a field march will cost, reckoned before it starts.
 *
 * @param steps range steps along the ground
 * @param nodes nodes of the column where they stand closest
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

    static FieldMarchCost of(FieldMarchGround ground, FieldMarchGrid grid, FieldMarchWave wave, FieldMarchCover cover) {
        FieldMarchPace pace = FieldMarchPace.of(ground, grid, wave.wavelengthM(), cover);
        double[] topM = grid.tops(ground);
        double quantumM = wave.quantumM();
        long steps = 0;
        long turns = 0;
        int finest = 0;
        double seconds = 0;
        Set<Long> lengths = new HashSet<>();
        double carriedM = 0;
        for (int f = 0; f < ground.facets(); f++) {
            FieldMarchPace.Steps range = pace.steps(f, ground.facetM(f));
            int m = range.number();
            double restM = ground.facetM(f) + carriedM;
            long quanta = FieldMarchGrid.quanta(restM / m, quantumM);
            carriedM = restM - m * quanta * quantumM;
            int halvings = pace.halvings(f);
            int order = range.order();
            // a step is kept for its length, order and spacing
            if (lengths.add((quanta * FieldMarchColumn.ORDERS + order) * (FieldMarchPace.MOST_HALVINGS + 1) + halvings))
                seconds += order * NEW_POLE_S;
            finest = Math.max(finest, halvings);
            int nodes = (int) Math.ceil(topM[f] / grid.halved(halvings).spacingM());
            int turned = f > 0 ? pace.turnSteps(f) : 0;
            double perNode = (double) order * m * POLE_NODE_S + turned * TURN_NODE_S + CORNER_NODE_S;
            seconds += nodes * (f == 0 ? perNode + START_NODE_S : perNode);
            steps += m;
            turns += turned;
        }
        int nodes = grid.halved(finest).nodes();
        // columns of every spacing, each half the size of the next, and the factors of the steps kept
        long bytes = 8L * DOUBLES_PER_NODE * nodes * (finest > 0 ? 2 : 1) + 16L * (steps + ground.facets()) + 4_000_000;
        return new FieldMarchCost(steps, nodes, turns, seconds, bytes);
    }
}
