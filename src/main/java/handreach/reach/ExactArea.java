package handreach.reach;

import handreach.propagation.Terminals;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Area losses by one path per cell: the same cut through the ground, the same model and the same result as a single path to the
 * cell's centre. What is printed, exported or decided on comes from here as long as the radius allows.
 *
 * <p>The time grows with the cube of the radius.
 */
final class ExactArea implements AreaEngine {
    private final Workers workers;
    private final IntPredicate wanted;

    /** With this many threads, the caller's among them. */
    public ExactArea(int threads) {
        this(threads, cell -> true);
    }

    /** The same to some cells alone, by their index; the others are left outside. */
    ExactArea(int threads, IntPredicate wanted) {
        this.workers = new Workers(threads);
        this.wanted = wanted;
    }

    @Override
    public List<LossGrid> losses(AreaRequest request, List<Terminals> heights, AreaGround ground, Progress progress) {
        AreaSetting setting = AreaSetting.ofCells(request, ground);
        CellGrid grid = request.grid();
        LossGrid[] out = new LossGrid[heights.size()];
        for (int k = 0; k < out.length; k++) out[k] = new LossGrid(request.with(heights.get(k)), MapEngine.EXACT);
        workers.run(
                grid.rows(),
                () -> new ExactWorker(setting, request.model(), heights.toArray(new Terminals[0]), grid, out, progress),
                (worker, row) -> {
                    for (int c = 0; c < grid.columns(); c++)
                        if (wanted.test(grid.index(row, c))) worker.cell(grid.index(row, c));
                },
                new SubProgress(progress, "one path per cell", 0, 1));
        return new ArrayList<>(List.of(out));
    }
}
