package handreach.reach;

/** Compares a sweep with one exact path per cell, on cells spread evenly over the area. */
final class SweepCheck {
    private static final int CELLS = 400;

    private final AreaSetting setting;
    private final Workers workers;

    SweepCheck(AreaSetting setting, Workers workers) {
        this.setting = setting;
        this.workers = workers;
    }

    /** The grid with its difference; without one when no compared cell is known. */
    LossGrid measured(LossGrid grid, CellsByRadial cells, Workers.Stretch stretch) {
        int wanted = Math.min(CELLS, cells.count());
        if (wanted == 0) return grid;
        double[] difference = new double[wanted];
        LossGrid[] exact = {new LossGrid(grid.request(), "exact")};
        workers.run(
                wanted,
                () -> new ExactWorker(setting, exact),
                (worker, i) -> {
                    // The golden section spreads any number of picks evenly over radials and distances.
                    double turn = (i + 0.5) * 0.6180339887498949;
                    int slot = (int) ((turn - Math.floor(turn)) * cells.count());
                    int cell = cells.cell(slot);
                    worker.cell(cell);
                    difference[i] = grid.isKnown(cell) && exact[0].isKnown(cell)
                            ? grid.lossDb(cell) - exact[0].lossDb(cell)
                            : Double.NaN;
                },
                stretch);
        double[] known = java.util.Arrays.stream(difference)
                .filter(d -> !Double.isNaN(d))
                .toArray();
        return known.length == 0 ? grid : grid.with(SamplingDifference.of(known));
    }
}
