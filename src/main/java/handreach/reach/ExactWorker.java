package handreach.reach;

import handreach.propagation.Terminals;

/** One thread's share of exact work: one path per cell, cut and reckoned as a single path is. */
final class ExactWorker {
    private final AreaSetting setting;
    private final double stepM;
    private final RaySampler sampler;
    private final CellsByRadial.RowReader reader;
    private final CellGrid grid;
    private final CellSink[] out;
    private final Standpoint[] standpoint;
    private final RadialModel[] model;
    private final Ray ray = new Ray();
    private int row = -1;

    ExactWorker(AreaSetting setting, String modelName, Terminals[] pairs, CellGrid grid, CellSink[] out) {
        this.setting = setting;
        this.out = out;
        this.grid = grid;
        this.stepM = setting.exactStepM();
        this.sampler = setting.sampler();
        this.reader = new CellsByRadial.RowReader(grid, setting.frame());
        this.standpoint = new Standpoint[out.length];
        this.model = new RadialModel[out.length];
        for (int k = 0; k < out.length; k++) {
            standpoint[k] = new Standpoint(pairs[k], setting.earthKm());
            model[k] = RadialModels.of(modelName, pairs[k], setting.conditions());
        }
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
        int intervals = Math.max(1, (int) Math.ceil(distanceM / stepM));
        sampler.radial(sine, cosine, intervals + 1, distanceM / intervals, ray);
        if (ray.known <= intervals) {
            for (CellSink losses : out) losses.putUnknown(cell);
            return true;
        }
        double endKm = ray.xKm[intervals];
        double endM = ray.groundM[intervals];
        int cover = ray.cover[intervals];
        ray.known = intervals;
        for (int k = 0; k < out.length; k++) {
            Standpoint at = standpoint[k];
            at.start(ray);
            model[k].start(at);
            at.advanceTo(endKm);
            at.stand(endKm, endM, cover);
            out[k].put(cell, model[k].lossDb(at), at.departureDeg(), at.arrivalDeg(), at.isInSight(), cover);
        }
        return true;
    }
}
