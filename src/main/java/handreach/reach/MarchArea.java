package handreach.reach;

import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.radial.MarchedWalker;
import handreach.propagation.radial.Radial;
import handreach.propagation.radial.RadialMarch;
import java.util.ArrayList;
import java.util.List;

/**
 * Area losses by the field marched along radials: on request only, since it takes minutes where a sweep takes parts of a second.
 * A cell has the loss of the radial nearest to it at its own distance, so radials want to lie close; {@link MarchCost} says
 * before it starts what that costs. What it changes is measured on some cells against a march along each cell's own path, and
 * handed out with the result.
 */
final class MarchArea implements AreaEngine {
    /** Radials every half degree. */
    private static final int RADIALS_OF_A_MAP = 720;

    private static final int FEWEST_RADIALS = 16;

    /** One cell compared for so many radials: a path to a cell costs some six tenths of a radial, so 3 % of the march. */
    private static final int RADIALS_OF_A_CHECK = 20;
    /** Fewer would say nothing; on a small area, where this is more than 3 %, the march takes seconds. */
    private static final int FEWEST_CHECKED = 12;

    private static final int MOST_CHECKED = 48;

    private final Workers workers;
    private final double arcM;
    private final boolean measures;

    /**
     * An engine.
     *
     * @param threads the caller's among them
     * @param arcM distance of neighbouring radials at the rim, m
     */
    public MarchArea(int threads, double arcM) {
        this(threads, arcM, true);
    }

    private MarchArea(int threads, double arcM, boolean measures) {
        if (!(arcM >= 1)) throw new IllegalArgumentException("radials " + arcM + " m apart");
        this.workers = new Workers(threads);
        this.arcM = arcM;
        this.measures = measures;
    }

    @Override
    public MarchArea withoutMeasuring() {
        return new MarchArea(workers.threads(), arcM, false);
    }

    /** Distance of neighbouring radials at the rim of a map, m: half a degree, but never closer than cells. */
    static double arcOfAMapM(double radiusM, double cellM) {
        return Math.max(cellM, 2 * Math.PI * radiusM / RADIALS_OF_A_MAP);
    }

    static int radials(double radiusM, double arcM) {
        return (int) Math.max(FEWEST_RADIALS, Math.ceil(2 * Math.PI * radiusM / arcM));
    }

    /** Cells compared with exact paths beside so many radials. */
    static int checked(int radials) {
        return Math.max(FEWEST_CHECKED, Math.min(MOST_CHECKED, radials / RADIALS_OF_A_CHECK));
    }

    @Override
    public List<LossGrid> losses(AreaRequest request, List<Terminals> heights, AreaGround ground, Progress progress) {
        AreaSetting setting = AreaSetting.of(request, ground);
        int radials = radials(request.radiusM(), arcM);
        CellsByRadial cells = CellsByRadial.of(
                request.grid(), setting.frame(), radials, workers, new Stretch(progress, "cells to radials", 0, 0.01));
        List<LossGrid> grids = new ArrayList<>();
        for (Terminals pair : heights) grids.add(new LossGrid(request.with(pair), MapEngine.MARCH));
        double end = measures ? 0.97 : 1;
        workers.run(
                radials,
                () -> new MarchWorker(setting, cells, heights, grids, progress),
                MarchWorker::radial,
                new Stretch(progress, "marching radials", 0.01, end));
        if (!measures) return List.copyOf(grids);
        return new SamplingCheck(setting, workers, checked(radials))
                .measured(grids, cells, new Stretch(progress, "comparing with exact paths", end, 1));
    }

    /** One thread's share. */
    private static final class MarchWorker {
        private final AreaSetting setting;
        private final CellsByRadial cells;
        private final List<Terminals> heights;
        private final List<LossGrid> grids;
        private final Progress progress;
        private final RaySampler sampler;
        private final RaySampler samplerOfCells;
        private final List<MarchedWalker> walkers;
        private final Radial radial = new Radial();
        private boolean endsAtSteepGround;

        MarchWorker(
                AreaSetting setting,
                CellsByRadial cells,
                List<Terminals> heights,
                List<LossGrid> grids,
                Progress progress) {
            this.setting = setting;
            this.cells = cells;
            this.heights = heights;
            this.grids = grids;
            this.progress = progress;
            this.sampler = setting.sampler();
            this.samplerOfCells = setting.sampler();
            this.walkers = heights.stream()
                    .map(pair -> new MarchedWalker(pair, setting.conditions()))
                    .toList();
        }

        void radial(int number) {
            int first = cells.first(number);
            int end = cells.end(number);
            if (first == end) return;
            cells.sort(number);
            double farthestM = Math.max(CellsByRadial.NEAREST_M, cells.distanceM(end - 1));
            setting.cut(sampler, 2 * Math.PI * number / cells.radials(), farthestM, radial);
            endsAtSteepGround = RadialMarch.endAtSteepGround(radial, setting.conditions());
            samplerOfCells.cells(grids.get(0).grid(), cells, first, end);
            if (radial.known() < 2) {
                for (LossGrid grid : grids) for (int slot = first; slot < end; slot++) putNoLoss(grid, slot, first);
                return;
            }
            List<CoveredMarch> marches =
                    RadialMarch.along(radial, heights, setting.conditions(), share -> !progress.isCancelled());
            for (int k = 0; k < grids.size(); k++)
                fill(grids.get(k), walkers.get(k).over(marches.get(k)), first, end);
        }

        private void putNoLoss(LossGrid grid, int slot, int first) {
            boolean isSteep = endsAtSteepGround && !samplerOfCells.isVoid(slot - first);
            if (isSteep) grid.putBehindSteepGround(cells.cell(slot));
            else grid.putUnknown(cells.cell(slot));
        }

        private void fill(LossGrid grid, MarchedWalker walk, int first, int end) {
            walk.start(radial);
            double stepKm = radial.distancesKm()[1];
            for (int slot = first; slot < end; slot++) {
                int cell = cells.cell(slot);
                double distanceKm = Math.max(CellsByRadial.NEAREST_M, cells.distanceM(slot)) / 1000;
                if (samplerOfCells.isVoid(slot - first) || !walk.isKnown(distanceKm)) {
                    putNoLoss(grid, slot, first);
                    continue;
                }
                int cover = samplerOfCells.coverOrdinal(slot - first);
                walk.advanceTo(distanceKm - stepKm / 2);
                walk.stand(distanceKm, samplerOfCells.heightM(slot - first), cover);
                grid.put(cell, walk.lossDb(), walk.departureDeg(), walk.arrivalDeg(), walk.isInSight(), cover);
            }
        }
    }
}
