package handreach.reach;

import handreach.propagation.Terminals;
import java.util.ArrayList;
import java.util.List;

/**
 * Area losses off radials: each cell is computed once, at its own distance and on its own ground, behind the ground of the radial
 * nearest to it. The stretched string, the sums and the horizons run along with the radial, so that a cell costs little more than
 * its own last step.
 *
 * <p>Radials lie half a cell apart at the rim (a quarter on small areas), samples half a post: the ground on the way is read at
 * most a quarter of a cell beside the true path. What that changes is measured on a sample of cells against {@link ExactArea}
 * and handed out with the result.
 */
public final class SweepArea implements AreaEngine {
    /** Cells compared with exact paths. */
    private static final int CHECKED = 400;

    private final Workers workers;
    private final boolean measures;

    /** With this many threads, the caller's among them. */
    public SweepArea(int threads) {
        this(threads, true);
    }

    private SweepArea(int threads, boolean measures) {
        this.workers = new Workers(threads);
        this.measures = measures;
    }

    @Override
    public SweepArea withoutMeasuring() {
        return new SweepArea(workers.threads(), false);
    }

    @Override
    public List<LossGrid> losses(AreaRequest request, List<Terminals> heights, AreaGround ground, Progress progress) {
        AreaSetting setting = AreaSetting.ofCells(request, ground);
        Sampling sampling = Sampling.of(setting, request.grid().cellM());
        CellsByRadial cells = CellsByRadial.of(
                request.grid(),
                setting.frame(),
                sampling.radials(),
                workers,
                new SubProgress(progress, "cells to radials", 0, 0.05));
        List<LossGrid> grids = new ArrayList<>();
        for (Terminals pair : heights) grids.add(new LossGrid(request.with(pair), MapEngine.SWEEP));
        double end = measures ? 0.97 : 1;
        workers.run(
                sampling.radials(),
                () -> new SweepWorker(setting, request.model(), sampling, cells, grids),
                SweepWorker::radial,
                new SubProgress(progress, "sweeping radials", 0.05, end));
        if (!measures) return List.copyOf(grids);
        return new SamplingCheck(setting, workers, CHECKED)
                .measured(grids, cells, new SubProgress(progress, "comparing with exact paths", end, 1));
    }
}
