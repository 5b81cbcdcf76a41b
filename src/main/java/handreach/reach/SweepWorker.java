package handreach.reach;

import java.util.List;

/** One thread's share of a sweep: takes radials and fills the cells that lie on them. */
final class SweepWorker {
    private final Sampling sampling;
    private final CellsByRadial cells;
    private final List<LossGrid> grids;
    private final RaySampler samplerOfRays;
    private final RaySampler samplerOfCells;
    private final Ray ray = new Ray();
    private final Standpoint[] standpoint;
    private final RadialModel[] model;

    SweepWorker(AreaSetting setting, String modelName, Sampling sampling, CellsByRadial cells, List<LossGrid> grids) {
        this.sampling = sampling;
        this.cells = cells;
        this.grids = grids;
        this.samplerOfRays = setting.sampler();
        this.samplerOfCells = setting.sampler();
        this.standpoint = new Standpoint[grids.size()];
        this.model = new RadialModel[grids.size()];
        for (int k = 0; k < standpoint.length; k++) {
            standpoint[k] = new Standpoint(grids.get(k).request().terminals(), setting.earthKm());
            model[k] = RadialModels.of(modelName, grids.get(k).request().terminals(), setting.conditions());
        }
    }

    void radial(int number) {
        int first = cells.first(number);
        int end = cells.end(number);
        if (first == end) return;
        cells.sort(number);
        double azimuth = 2 * Math.PI * number / sampling.radials();
        int samples = (int) Math.ceil(cells.distanceM(end - 1) / sampling.stepM()) + 1;
        samplerOfRays.radial(Math.sin(azimuth), Math.cos(azimuth), Math.max(2, samples), sampling.stepM(), ray);
        samplerOfCells.cells(grids.get(0).grid(), cells, first, end);
        for (int k = 0; k < standpoint.length; k++) fill(k, first, end);
    }

    private void fill(int k, int first, int end) {
        LossGrid grid = grids.get(k);
        Standpoint at = standpoint[k];
        if (ray.known > 0) {
            at.start(ray);
            model[k].start(at);
        }
        double firstVoidKm = ray.known < ray.count ? ray.xKm[ray.known] : Double.POSITIVE_INFINITY;
        for (int slot = first; slot < end; slot++) {
            int cell = cells.cell(slot);
            double distanceM = Math.max(CellsByRadial.NEAREST_M, cells.distanceM(slot));
            if (samplerOfCells.isVoid(slot - first) || firstVoidKm < distanceM / 1000) {
                grid.putUnknown(cell);
                continue;
            }
            int cover = samplerOfCells.coverOrdinal(slot - first);
            at.advanceTo(distanceM / 1000 - sampling.stepM() / 2000);
            at.stand(distanceM / 1000, samplerOfCells.heightM(slot - first), cover);
            grid.put(cell, model[k].lossDb(at), at.departureDeg(), at.arrivalDeg(), at.isInSight(), cover);
        }
    }
}
