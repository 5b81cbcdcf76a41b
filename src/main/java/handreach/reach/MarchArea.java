package handreach.reach;

import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.radial.MarchedWalker;
import handreach.propagation.radial.Radial;
import handreach.propagation.radial.RadialMarch;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoublePredicate;

/**
 * Area losses by the field marched along radials: on request only, since it takes minutes where a sweep takes parts of a second.
 * A cell has the loss between those of the two radials beside it at its own distance, so radials want to lie close;
 * {@link MarchCost} says before it starts what that costs. What it changes is measured on some cells against a march along each cell's own path, and
 * handed out with the result.
 */
final class MarchArea implements AreaEngine {
    /** Radials of a map where each is marched by itself, and where several go at once: docs/performance.md says what lies between them. */
    private static final int RADIALS_OF_A_MAP = 720;

    private static final int RADIALS_IN_LOCKSTEP = 900;
    /** Radials of one task, of which the first and last are shared with the next tasks: a multiple of those that go at once. */
    private static final int RADIALS_OF_A_TASK = 48;

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

    /** Distance of neighbouring radials at the rim of a map, m: half a degree or two fifths, but never closer than cells. */
    static double arcOfAMapM(double radiusM, double cellM) {
        int radials = RadialMarch.together() > 1 ? RADIALS_IN_LOCKSTEP : RADIALS_OF_A_MAP;
        return Math.max(cellM, 2 * Math.PI * radiusM / radials);
    }

    /** Radials whose nearest cells one task fills; it marches one more on either side. */
    private static int owned() {
        return RADIALS_OF_A_TASK - 2;
    }

    static int radials(double radiusM, double arcM) {
        return (int) Math.max(FEWEST_RADIALS, Math.ceil(2 * Math.PI * radiusM / arcM));
    }

    /** Radials marched for so many of a map: those on the seam of two tasks are marched for both. */
    static int marched(int radials) {
        return radials + 2 * ((radials + owned() - 1) / owned());
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
                request.grid(),
                setting.frame(),
                radials,
                workers,
                new SubProgress(progress, "cells to radials", 0, 0.01));
        List<LossGrid> grids = new ArrayList<>();
        for (Terminals pair : heights) grids.add(new LossGrid(request.with(pair), MapEngine.MARCH));
        double end = measures ? 0.97 : 1;
        workers.run(
                (radials + owned() - 1) / owned(),
                () -> new MarchWorker(setting, cells, heights, grids, progress),
                MarchWorker::group,
                new SubProgress(progress, "marching radials", 0.01, end));
        if (!measures) return List.copyOf(grids);
        return new SamplingCheck(setting, workers, checked(radials))
                .measured(grids, cells, new SubProgress(progress, "comparing with exact paths", end, 1));
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
        private final CellsByRadial.RowReader reader;
        private final List<Ray> rays = new ArrayList<>();
        private final int owned;

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
            this.reader = new CellsByRadial.RowReader(grids.get(0).grid(), setting.frame());
            this.owned = owned();
        }

        /** A radial, what was marched along it and who reads it for each pair of heights. */
        private final class Ray {
            final Radial radial = new Radial();
            final List<MarchedWalker> walkers = heights.stream()
                    .map(pair -> new MarchedWalker(pair, setting.conditions()))
                    .toList();
            List<CoveredMarch> marches = List.of();
            boolean endsAtSteepGround;

            boolean isMarched() {
                return radial.known() >= 2;
            }

            void start() {
                if (!isMarched()) return;
                for (int k = 0; k < walkers.size(); k++)
                    walkers.get(k).over(marches.get(k)).start(radial);
            }

            boolean isKnown(double distanceKm) {
                return isMarched() && walkers.get(0).isKnown(distanceKm);
            }

            /** The walker of a pair, standing at a cell. */
            MarchedWalker at(int pair, double distanceKm, double heightM, int cover) {
                MarchedWalker walker = walkers.get(pair);
                walker.advanceTo(distanceKm - radial.distancesKm()[1] / 2);
                walker.stand(distanceKm, heightM, cover);
                return walker;
            }
        }

        /** Marches the radials of a group and one more on either side, and gives their losses to the cells nearest to its own. */
        void group(int number) {
            int from = number * owned;
            int to = Math.min(cells.radials(), from + owned);
            double farthestM = 0;
            for (int r = from; r < to; r++) {
                cells.sort(r);
                if (cells.first(r) < cells.end(r)) farthestM = Math.max(farthestM, cells.distanceM(cells.end(r) - 1));
            }
            if (farthestM == 0) return;
            march(from - 1, to - from + 2, Math.max(CellsByRadial.NEAREST_M, farthestM));
            for (int r = from; r < to; r++) {
                for (int side = r - from; side <= r - from + 2; side++)
                    rays.get(side).start();
                fill(r, r - from + 1);
            }
        }

        private void march(int first, int count, double lengthM) {
            while (rays.size() < count) rays.add(new Ray());
            double[] azimuth = new double[count];
            for (int i = 0; i < count; i++) azimuth[i] = 2 * Math.PI * (first + i) / cells.radials();
            List<Ray> cut = rays.subList(0, count);
            setting.cutAlike(
                    sampler,
                    azimuth,
                    lengthM,
                    cut.stream().map(ray -> ray.radial).toList());
            for (Ray ray : cut) ray.endsAtSteepGround = RadialMarch.endAtSteepGround(ray.radial, setting.conditions());
            List<Ray> marched = cut.stream().filter(Ray::isMarched).toList();
            DoublePredicate goOn = share -> !progress.isCancelled();
            int together = RadialMarch.together();
            if (together > 1) {
                for (int from = 0; from < marched.size(); from += together) {
                    List<Ray> bundle = marched.subList(from, Math.min(marched.size(), from + together));
                    List<List<CoveredMarch>> all = RadialMarch.together(
                            bundle.stream().map(ray -> ray.radial).toList(), heights, setting.conditions(), goOn);
                    for (int i = 0; i < bundle.size(); i++) bundle.get(i).marches = all.get(i);
                }
            } else {
                for (Ray ray : marched)
                    ray.marches = RadialMarch.along(ray.radial, heights, setting.conditions(), goOn);
            }
        }

        private void fill(int radial, int at) {
            int first = cells.first(radial);
            int end = cells.end(radial);
            if (first == end) return;
            Ray nearest = rays.get(at);
            samplerOfCells.cells(grids.get(0).grid(), cells, first, end);
            for (int slot = first; slot < end; slot++) {
                double distanceKm = Math.max(CellsByRadial.NEAREST_M, cells.distanceM(slot)) / 1000;
                if (samplerOfCells.isVoid(slot - first) || !nearest.isKnown(distanceKm)) {
                    putNoLoss(nearest, slot, first);
                    continue;
                }
                double aside = aside(cells.cell(slot), radial);
                Ray beside = rays.get(aside < 0 ? at - 1 : at + 1);
                double share = beside.isKnown(distanceKm) ? Math.abs(aside) : 0;
                put(nearest, beside, share, slot, first, distanceKm);
            }
        }

        /** Along the front of the wave the local mean goes over from one radial to the next. */
        private void put(Ray nearest, Ray beside, double share, int slot, int first, double distanceKm) {
            double heightM = samplerOfCells.heightM(slot - first);
            int cover = samplerOfCells.coverOrdinal(slot - first);
            for (int k = 0; k < grids.size(); k++) {
                MarchedWalker walk = nearest.at(k, distanceKm, heightM, cover);
                double lossDb = walk.lossDb();
                if (share > 0)
                    lossDb += share * (beside.at(k, distanceKm, heightM, cover).lossDb() - lossDb);
                grids.get(k)
                        .put(cells.cell(slot), lossDb, walk.departureDeg(), walk.arrivalDeg(), walk.isInSight(), cover);
            }
        }

        /** How far a cell lies beside its nearest radial, in shares of the gap to the next; below 0 anticlockwise. */
        private double aside(int cell, int radial) {
            CellGrid grid = grids.get(0).grid();
            reader.row(grid.rowOf(cell));
            if (!reader.isWithin(grid.columnOf(cell))) return 0;
            double turns = reader.turn() - (double) radial / cells.radials();
            return Math.max(-0.5, Math.min(0.5, (turns - Math.rint(turns)) * cells.radials()));
        }

        private void putNoLoss(Ray nearest, int slot, int first) {
            boolean isSteep = nearest.endsAtSteepGround && !samplerOfCells.isVoid(slot - first);
            for (LossGrid grid : grids) {
                if (isSteep) grid.putBehindSteepGround(cells.cell(slot));
                else grid.putUnknown(cells.cell(slot));
            }
        }
    }
}
