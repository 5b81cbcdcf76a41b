package handreach.propagation.march;

import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.function.DoublePredicate;

/**
 * Neighbouring radials marched in lockstep, one a lane of {@link LaneMath}: facets of the same number and distances, on each of them the
 * same number of steps, the same order, nodes and steps of a turn, which are the finest that any lane asks for. Lengths of facets,
 * angles and so all coefficients are each lane's own.
 */
final class FieldMarchBundle {
    private static final int LANES = LaneMath.LANES;

    private final FieldMarch[] lane;
    private final FieldMarchGrid grid;
    private final FieldMarchWave wave;
    private final LaneMath math;
    private final FieldMarchPace[] pace;
    private final int facets;
    private final double[] topM;
    private final double quantumM;
    private final LaneColumn[] columns = new LaneColumn[FieldMarchPace.MOST_HALVINGS + 1];
    private final double[] startM;
    private final double[] lengthM;
    /** What the steps of a lane, whole quanta, lag behind its way, m. */
    private final double[] carriedM;

    private final long[] quanta;
    private final double[] angleRad = new double[LANES];
    private final double[] stepsOfARadian = new double[LANES];
    private LaneColumn column;
    private int halvings;

    /**
     * @param marches one for each lane; the last serves the lanes that are left
     */
    FieldMarchBundle(FieldMarch[] marches, FieldMarchWave wave, LaneMath math) {
        this.lane = marches;
        this.wave = wave;
        this.math = math;
        this.facets = marches[0].ground().facets();
        FieldMarchGrid highest = marches[0].grid();
        for (FieldMarch march : marches) {
            if (march.ground().facets() != facets) throw new IllegalArgumentException("radials of different facets");
            if (march.grid().topM() > highest.topM()) highest = march.grid();
        }
        this.grid = highest;
        this.pace = new FieldMarchPace[marches.length];
        for (int i = 0; i < marches.length; i++)
            pace[i] = FieldMarchPace.of(marches[i].ground(), grid, wave.wavelengthM(), marches[i].cover());
        this.quantumM = wave.quantumM();
        this.startM = new double[marches.length];
        this.lengthM = new double[marches.length];
        this.carriedM = new double[marches.length];
        this.quanta = new long[marches.length];
        this.topM = grid.tops(Arrays.stream(marches).map(FieldMarch::ground).toList(), wave.wavelengthM());
    }

    // The loops stand in methods of their own: woven into one, which is entered in the midst of each of them, they take
    // the compiler
    // seconds.

    void run(DoublePredicate goOn) {
        begin();
        double told = 0;
        for (int f = 0; f < facets; f++) {
            if (f > 0) turnTo(f);
            column.end(topM[f]);
            along(f);
            double share = (f + 1.0) / facets;
            if (share - told >= 0.005 || share == 1) {
                told = share;
                if (!goOn.test(share)) throw new CancellationException("the march was stopped");
            }
        }
    }

    private void begin() {
        halvings = halvings(0);
        column = columnOf(halvings);
        column.nodes(nodes(0));
        column.end(topM[0]);
        for (int i = 0; i < lane.length; i++) startM[i] = lane[i].begin(column, i);
        for (int i = lane.length; i < LANES; i++) column.copy(lane.length - 1, i);
    }

    /** Makes ready what stands on a facet in each lane, for half a step of its own; says whether there is anything. */
    private boolean layers(int facet) {
        boolean isCovered = false;
        FieldMarchLayer[] layers = new FieldMarchLayer[LANES];
        double[] halfM = new double[LANES];
        for (int i = 0; i < LANES; i++) {
            int of = of(i);
            layers[i] = i == of ? lane[i].layer(facet) : layers[of];
            halfM[i] = 0.5 * quanta[of] * quantumM;
            isCovered |= layers[i].isThere();
        }
        if (isCovered) column.layers(layers, halfM);
        return isCovered;
    }

    private void turnTo(int f) {
        int next = halvings(f);
        if (next != halvings) column = handedOn(column, halvings, next);
        column.end(Math.max(topM[f - 1], topM[f]));
        halvings = next;
        column.nodes(nodes(f));
        for (int i = 0; i < LANES; i++) {
            FieldMarchGround ground = lane[of(i)].ground();
            angleRad[i] = ground.slopeRad(f) - ground.slopeRad(f - 1);
            stepsOfARadian[i] = pace[of(i)].turnStepsOfARadian(f);
        }
        column.turn(angleRad, stepsOfARadian);
    }

    private void along(int f) {
        FieldMarchPace.Steps steps = steps(f);
        int m = steps.number();
        double meanM = ready(m, steps.order());
        lookAll(f, 0);
        boolean isCovered = layers(f);
        for (int s = 1; s <= m; s++) {
            if (isCovered) column.pass();
            column.advance(steps.order(), meanM);
            if (isCovered) column.pass();
            lookAll(f, (double) s / m);
        }
    }

    /** Steps over a facet, and the way that each lane goes on it. */
    private FieldMarchPace.Steps steps(int f) {
        double longestM = 0;
        for (int i = 0; i < lane.length; i++) {
            lengthM[i] = lane[i].ground().facetM(f) - fromM(i, f);
            longestM = Math.max(longestM, lengthM[i]);
        }
        return FieldMarchPace.steps(pace, f, longestM);
    }

    /** Makes ready every lane's steps of a facet; their middle length. */
    private double ready(int m, int order) {
        double meanM = 0;
        for (int i = 0; i < LANES; i++) {
            int of = of(i);
            if (i == of) {
                double restM = lengthM[i] + carriedM[i];
                quanta[i] = FieldMarchGrid.fewQuanta(restM / m, quantumM);
                carriedM[i] = restM - m * quanta[i] * quantumM;
            }
            column.step(i, quanta[of], order);
            meanM += quanta[of] * quantumM / LANES;
        }
        return meanM;
    }

    private void lookAll(int f, double share) {
        for (int i = 0; i < lane.length; i++) look(column, i, f, fromM(i, f) + lengthM[i] * share);
    }

    /** Where a lane's way on a facet begins, m. */
    private double fromM(int i, int f) {
        return f == 0 ? startM[i] : 0;
    }

    private void look(LaneColumn column, int at, int facet, double alongM) {
        lane[at].look(heightM -> column.power(at, heightM), facet, alongM);
    }

    private int of(int at) {
        return Math.min(at, lane.length - 1);
    }

    private int halvings(int facet) {
        int most = 0;
        for (FieldMarchPace of : pace) most = Math.max(most, of.halvingsTogether(facet));
        return most;
    }

    private LaneNodes nodes(int facet) {
        if (halvings > 0) return LaneNodes.LEVEL;
        for (FieldMarchPace of : pace) if (of.isWide(facet)) return LaneNodes.WIDE;
        return LaneNodes.LEVEL;
    }

    private LaneColumn columnOf(int halvings) {
        if (columns[halvings] == null)
            columns[halvings] = new LaneColumn(grid.halved(halvings), wave, math, halvings == 0 ? 1 : 2);
        return columns[halvings];
    }

    private LaneColumn handedOn(LaneColumn from, int halved, int halvings) {
        LaneColumn to = from;
        for (int h = halved; h < halvings; h++) {
            LaneColumn finer = columnOf(h + 1);
            finer.takeBetween(to);
            to = finer;
        }
        for (int h = halved; h > halvings; h--) {
            LaneColumn coarser = columnOf(h - 1);
            coarser.takeEverySecond(to);
            to = coarser;
        }
        return to;
    }
}
