package handreach.reach;

import handreach.propagation.LossModel;
import handreach.propagation.radial.Radial;
import handreach.propagation.radial.RadialWalker;
import java.util.List;

/** One thread's share of a sweep: takes radials and fills the cells that lie on them. */
final class SweepWorker {
    private final Sampling sampling;
    private final CellsByRadial cells;
    private final List<LossGrid> grids;
    private final RaySampler samplerOfRays;
    private final RaySampler samplerOfCells;
    private final Radial radial = new Radial();
    private final RadialWalker[] walker;

    SweepWorker(AreaSetting setting, LossModel model, Sampling sampling, CellsByRadial cells, List<LossGrid> grids) {
        this.sampling = sampling;
        this.cells = cells;
        this.grids = grids;
        this.samplerOfRays = setting.sampler();
        this.samplerOfCells = setting.sampler();
        this.walker = new RadialWalker[grids.size()];
        for (int k = 0; k < walker.length; k++)
            walker[k] = RadialWalker.of(model, grids.get(k).request().terminals(), setting.conditions());
    }

    void radial(int number) {
        int first = cells.first(number);
        int end = cells.end(number);
        if (first == end) return;
        cells.sort(number);
        double azimuth = 2 * Math.PI * number / sampling.radials();
        int samples = (int) Math.ceil(cells.distanceM(end - 1) / sampling.stepM()) + 1;
        samplerOfRays.aim(Math.sin(azimuth), Math.cos(azimuth));
        samplerOfRays.fill(Math.max(2, samples), sampling.stepM(), radial);
        samplerOfCells.cells(grids.get(0).grid(), cells, first, end);
        for (int k = 0; k < walker.length; k++) fill(walker[k], grids.get(k), first, end);
    }

    private void fill(RadialWalker walk, LossGrid grid, int first, int end) {
        if (radial.known() > 0) walk.start(radial);
        double firstVoidKm =
                radial.known() < radial.count() ? radial.distancesKm()[radial.known()] : Double.POSITIVE_INFINITY;
        for (int slot = first; slot < end; slot++) {
            int cell = cells.cell(slot);
            double distanceKm = Math.max(CellsByRadial.NEAREST_M, cells.distanceM(slot)) / 1000;
            if (samplerOfCells.isVoid(slot - first) || firstVoidKm < distanceKm) {
                grid.putUnknown(cell);
                continue;
            }
            int cover = samplerOfCells.coverOrdinal(slot - first);
            walk.advanceTo(distanceKm - sampling.stepM() / 2000);
            walk.stand(distanceKm, samplerOfCells.heightM(slot - first), cover);
            grid.put(cell, walk.lossDb(), walk.departureDeg(), walk.arrivalDeg(), walk.isInSight(), cover);
        }
    }
}
