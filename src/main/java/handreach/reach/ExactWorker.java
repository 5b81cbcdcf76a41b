package handreach.reach;

import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.radial.MarchedWalker;
import handreach.propagation.radial.Radial;
import handreach.propagation.radial.RadialMarch;
import handreach.propagation.radial.RadialWalker;
import java.util.List;

/** One thread's share of exact work: one path per cell, cut and computed as a single path is. */
final class ExactWorker {
    private final AreaSetting setting;
    private final RaySampler sampler;
    private final CellsByRadial.RowReader reader;
    private final CellGrid grid;
    private final CellSink[] out;
    private final RadialWalker[] walker;
    private final boolean isMarched;
    private final List<Terminals> heights;
    private final Progress progress;
    private final Radial radial = new Radial();
    private int row = -1;

    ExactWorker(
            AreaSetting setting, LossModel model, Terminals[] pairs, CellGrid grid, CellSink[] out, Progress progress) {
        this.setting = setting;
        this.out = out;
        this.grid = grid;
        this.sampler = setting.sampler();
        this.reader = new CellsByRadial.RowReader(grid, setting.frame());
        this.walker = new RadialWalker[out.length];
        this.heights = List.of(pairs);
        this.progress = progress;
        this.isMarched = model.equals(LossModels.FULL_WAVE);
        for (int k = 0; k < out.length; k++)
            walker[k] = isMarched
                    ? new MarchedWalker(pairs[k], setting.conditions())
                    : RadialWalker.of(model, pairs[k], setting.conditions());
    }

    /** Loss to one cell into each grid; false when the cell lies outside the radius. */
    boolean cell(int cell) {
        if (grid.rowOf(cell) != row) {
            row = grid.rowOf(cell);
            reader.row(row);
        }
        if (!reader.isWithin(grid.columnOf(cell))) return false;
        double distanceM = reader.distanceM();
        double sine = 0;
        double cosine = 1;
        if (distanceM >= 0.5) {
            sine = reader.east() * setting.frame().radiusM() / distanceM;
            cosine = reader.north() * setting.frame().radiusM() / distanceM;
        }
        distanceM = Math.max(CellsByRadial.NEAREST_M, distanceM);
        sampler.aim(sine, cosine);
        setting.cut(sampler, distanceM, radial);
        int last = radial.count() - 1;
        if (isMarched) RadialMarch.endAtSteepGround(radial, setting.conditions());
        if (radial.known() <= last) {
            for (CellSink losses : out) losses.putUnknown(cell);
            return true;
        }
        int cover = radial.cover()[last];
        List<CoveredMarch> marches = isMarched
                ? RadialMarch.along(radial, heights, setting.conditions(), share -> !progress.isCancelled())
                : List.of();
        for (int k = 0; k < out.length; k++) {
            RadialWalker walk = walker[k];
            if (walk instanceof MarchedWalker marched) marched.over(marches.get(k));
            walk.path(radial);
            out[k].put(cell, walk.lossDb(), walk.departureDeg(), walk.arrivalDeg(), walk.isInSight(), cover);
        }
        return true;
    }
}
