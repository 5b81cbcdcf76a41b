package handreach.relay;

import handreach.budget.Ways;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.propagation.Terminals;
import handreach.reach.AreaEngine;
import handreach.reach.AreaRequest;
import handreach.reach.CellGrid;
import handreach.reach.LossGrid;
import handreach.reach.Progress;
import handreach.reach.SubProgress;
import java.util.ArrayList;
import java.util.List;

/**
 * How well a relay in each cell of a grid would hear and be heard by each demand: one sweep a demand, by reciprocity. Of each sweep
 * only one number a cell is kept.
 */
public final class HopSurvey {
    private final RelayRequest question;
    private final RelayEquipment relay;
    private final CellGrid grid;
    private final AreaEngine engine;
    private final List<float[]> standing;
    private final double[] pessimism;

    private HopSurvey(
            RelayRequest question,
            RelayEquipment relay,
            CellGrid grid,
            AreaEngine engine,
            List<float[]> standing,
            double[] pessimism) {
        this.question = question;
        this.relay = relay;
        this.grid = grid;
        this.engine = engine;
        this.standing = standing;
        this.pessimism = pessimism;
    }

    /** Bytes kept for so many demands over a grid, without the one sweep that is at work. */
    public static long bytesFor(int demands, int cells) {
        return 4L * demands * cells;
    }

    /**
     * Sweeps from every demand.
     *
     * @shape  one number a demand and cell; one area sweep a demand
     * @unit   standings, without unit
     * @valid  demands within 120 km of the farthest cell; unknown ground counts as no hop
     * @error  that of the engine
     * @source reciprocity: the loss of a path is the same both ways
     */
    public static HopSurvey of(
            RelayRequest question, RelayEquipment relay, CellGrid grid, AreaEngine engine, Progress progress) {
        List<float[]> all = new ArrayList<>();
        int count = question.demands().size();
        double[] pessimism = new double[count];
        for (int i = 0; i < count; i++) {
            Party demand = question.demands().get(i);
            Terminals heights = new Terminals(demand.heightM(), relay.mastM());
            SubProgress part = new SubProgress(
                    progress, "sweep from " + demand.name(), i / (double) count, (i + 1) / (double) count);
            Ways ways = question.hops().toRelay(demand);
            float[] least = null;
            for (Swept one : swept(question, relay, i, ways)) {
                pessimism[i] = Math.max(pessimism[i], one.budget().pessimism());
                float[] standing = standings(one.setting(), grid, engine, demand.at(), heights, one.budget(), part);
                if (least == null) least = standing;
                else
                    for (int cell = 0; cell < least.length; cell++) least[cell] = Math.min(least[cell], standing[cell]);
            }
            all.add(least);
        }
        return new HopSurvey(question, relay, grid, engine, List.copyOf(all), pessimism);
    }

    /** One sweep of a demand. */
    private record Swept(RelayRequest.Setting setting, HopBudget budget) {}

    /** One for both ways; where the relay hears and sends on two frequencies, one for each way that must work. */
    private static List<Swept> swept(RelayRequest question, RelayEquipment relay, int demand, Ways ways) {
        RelayRequest.Setting setting = question.hops();
        if (relay.twoWays().isEmpty())
            return List.of(new Swept(
                    setting, HopBudget.toRelay(setting, question.demands().get(demand), relay)));
        RelayEquipment.Split split = relay.twoWays().get();
        List<Swept> all = new ArrayList<>();
        if (ways != Ways.BACK) all.add(swept(split.in(), demand, relay.hearing(), Ways.THERE));
        if (ways != Ways.THERE) all.add(swept(split.out(), demand, relay.sending(), Ways.BACK));
        return all;
    }

    private static Swept swept(RelayEquipment.Side side, int demand, RelayEquipment relay, Ways way) {
        return new Swept(
                side.setting(), HopBudget.toRelay(side.setting(), side.people().get(demand), relay, way));
    }

    /** How well another relay in each cell would hear one in this cell. */
    float[] fromRelay(int cell, Progress progress) {
        HopBudget budget = HopBudget.betweenRelays(question.setting(), relay);
        Terminals heights = new Terminals(relay.mastM(), relay.mastM());
        return standings(question.setting(), grid, engine, grid.positionOf(cell), heights, budget, progress);
    }

    double linkPessimism() {
        return HopBudget.betweenRelays(question.setting(), relay).pessimism();
    }

    private static float[] standings(
            RelayRequest.Setting setting,
            CellGrid grid,
            AreaEngine engine,
            Position from,
            Terminals heights,
            HopBudget budget,
            Progress progress) {
        double radius = Math.min(AreaRequest.LARGEST_RADIUS_M, farthestM(grid, from) + grid.cellM());
        AreaRequest request = new AreaRequest(from, grid, radius, heights, setting.conditions(), setting.model());
        LossGrid losses = engine.losses(request, setting.ground(), progress);
        float[] standing = new float[grid.count()];
        for (int cell = 0; cell < standing.length; cell++)
            standing[cell] = losses.isKnown(cell)
                    ? (float) budget.standing(losses.lossDb(cell), losses.departureDeg(cell), losses.arrivalDeg(cell))
                    : Float.NEGATIVE_INFINITY;
        return standing;
    }

    private static double farthestM(CellGrid grid, Position from) {
        double farthest = 0;
        for (int row : new int[] {0, grid.rows() - 1})
            for (int column : new int[] {0, grid.columns() - 1})
                farthest = Math.max(farthest, GeodesicLine.distanceM(from, grid.positionOf(row, column)));
        return farthest;
    }

    public RelayRequest question() {
        return question;
    }

    public RelayEquipment relay() {
        return relay;
    }

    public CellGrid grid() {
        return grid;
    }

    float[] standings(int demand) {
        return standing.get(demand);
    }

    double pessimism(int demand) {
        return pessimism[demand];
    }
}
