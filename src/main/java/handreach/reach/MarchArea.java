package handreach.reach;

import handreach.propagation.FreeSpace;
import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.radial.MarchedWalker;
import handreach.propagation.radial.Radial;
import handreach.propagation.radial.RadialMarch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.DoublePredicate;

/**
 * Area losses by the field marched along radials: seconds to minutes where a sweep takes parts of a second.
 * A cell has the loss between those of the two radials beside it at its own distance, so radials want to lie close, and twice as close where
 * the loss bends much from one to the next, four times where it still does;
 * {@link MarchCost} says before it starts what that costs. What it changes is measured on some cells against a march along each cell's own path, and
 * handed out with the result.
 */
final class MarchArea implements AreaEngine {
    /** Radials of a map where each is marched by itself, and where several go at once: docs/performance.md says what lies between them. */
    private static final int RADIALS_OF_A_MAP = 720;

    /** A multiple of the 72 bearings of the usual rose, which are radials of the map then. */
    private static final int RADIALS_IN_LOCKSTEP = 936;
    /** Radials of one task, of which the first and last are shared with the next tasks: a multiple of those that go at once. */
    private static final int RADIALS_OF_A_TASK = 48;

    private static final int FEWEST_RADIALS = 16;

    /**
     * Neighbouring gaps are halved where the loss bends by more than this from radial to radial, root mean square over their ground, what is
     * lost counted as none, dB: docs/performance.md says what that costs and gains.
     */
    static final double BEND_DB = 0.9;
    /** Halves are halved again from so many times that bend on. */
    private static final double AGAIN = 1.5;
    /** Gaps that are halved together: what goes at once. */
    private static final int GAPS_HALVED = 16;
    /** Radials within gaps that are foretold, for each gap: between gentle and broken ground. */
    static final double FORETOLD_WITHIN = 0.6;

    /** One cell compared for so many radials: a path to a cell costs some six tenths of a radial, so 3 % of the march. */
    private static final int RADIALS_OF_A_CHECK = 20;
    /** Fewer would say nothing; on a small area, where this is more than 3 %, the march takes seconds. */
    private static final int FEWEST_CHECKED = 12;

    private static final int MOST_CHECKED = 48;

    private final Workers workers;
    private final double arcM;
    private final boolean measures;
    private final double bendDb;

    /**
     * An engine.
     *
     * @param threads the caller's among them
     * @param arcM distance of neighbouring radials at the rim, m
     */
    public MarchArea(int threads, double arcM) {
        this(threads, arcM, true, BEND_DB);
    }

    /** The same with gaps halved from another bend on, dB. */
    MarchArea(int threads, double arcM, boolean measures, double bendDb) {
        if (!(arcM >= 1)) throw new IllegalArgumentException("radials " + arcM + " m apart");
        this.workers = new Workers(threads);
        this.arcM = arcM;
        this.measures = measures;
        this.bendDb = bendDb;
    }

    @Override
    public MarchArea withoutMeasuring() {
        return new MarchArea(workers.threads(), arcM, false, bendDb);
    }

    /** Distance of neighbouring radials at the rim of a map, m: half a degree or five thirteenths, but never closer than cells. */
    static double arcOfAMapM(double radiusM, double cellM) {
        int radials = RadialMarch.together() > 1 ? RADIALS_IN_LOCKSTEP : RADIALS_OF_A_MAP;
        return Math.max(cellM, 2 * Math.PI * radiusM / radials);
    }

    /** Radials whose nearest cells one task fills; it marches one more on either side. */
    private static int owned() {
        return RADIALS_OF_A_TASK - 2;
    }

    static int radials(double radiusM, double arcM) {
        return (int) Math.max(FEWEST_RADIALS, Math.ceil(2 * Math.PI * radiusM / arcM - 1e-6));
    }

    /** The same, and so many more that as many bearings at equal angles are radials; {@link #sharesRadials} says whether that pays. */
    static int radials(double radiusM, double arcM, int bearings) {
        int radials = radials(radiusM, arcM);
        return (radials + bearings - 1) / bearings * bearings;
    }

    /** Whether a rose of so many bearings is had cheaper from a map's radials, some of them added for it, than from a march of its own. */
    static boolean sharesRadials(int radials, int bearings) {
        return bearings <= radials;
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
        return losses(request, heights, ground, radials(request.radiusM(), arcM), List.of(), progress);
    }

    /** A rose that is read off the radials of a map, to be filled by pair of heights and bearing. */
    record Rose(BearingRequest request, RadialLosses[][] found) {}

    /**
     * The map together with roses of the same march, which may differ in the state of the trees.
     *
     * @param radials a multiple of the bearings of every rose
     */
    List<LossGrid> losses(
            AreaRequest request,
            List<Terminals> heights,
            AreaGround ground,
            int radials,
            List<Rose> roses,
            Progress progress) {
        AreaSetting setting = AreaSetting.of(request, ground);
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
                () -> new MarchWorker(setting, cells, heights, grids, roses, bendDb, progress),
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
        private final List<Ray> raysBetween = new ArrayList<>();
        private int usedBetween;
        /** Radials within each gap of the task, at equal angles: none, one or three. */
        private final List<List<Ray>> within = new ArrayList<>();

        private final int owned;
        private final List<Rose> roses;
        private final double halvedFromDb;
        private final List<BearingLosses.Filling> fillings;

        MarchWorker(
                AreaSetting setting,
                CellsByRadial cells,
                List<Terminals> heights,
                List<LossGrid> grids,
                List<Rose> roses,
                double bendDb,
                Progress progress) {
            this.halvedFromDb = bendDb;
            this.setting = setting;
            this.cells = cells;
            this.heights = heights;
            this.grids = grids;
            this.progress = progress;
            this.sampler = setting.sampler();
            this.samplerOfCells = setting.sampler();
            this.reader = new CellsByRadial.RowReader(grids.get(0).grid(), setting.frame());
            this.owned = owned();
            this.roses = roses;
            this.fillings = roses.stream()
                    .map(rose -> new BearingLosses.Filling(rose.request(), heights))
                    .toList();
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
            boolean isWanted = !roses.isEmpty();
            for (int r = from; r < to; r++) {
                cells.sort(r);
                isWanted |= cells.first(r) < cells.end(r);
            }
            if (!isWanted) return;
            int count = to - from + 2;
            while (rays.size() < count) rays.add(new Ray());
            List<Ray> base = rays.subList(0, count);
            march(turns(from - 1, 1, count), base);
            halve(from - 1, base);
            for (int r = from; r < to; r++) {
                for (int side = r - from; side <= r - from + 2; side++)
                    rays.get(side).start();
                for (int gap = r - from; gap <= r - from + 1; gap++)
                    within.get(gap).forEach(Ray::start);
                fill(r, r - from + 1);
                bearings(r, rays.get(r - from + 1));
            }
        }

        private void bearings(int radial, Ray ray) {
            for (int i = 0; i < roses.size(); i++) {
                int apart = cells.radials() / roses.get(i).request().bearings();
                if (radial % apart != 0) continue;
                List<CoveredMarch> marches = BearingLosses.Filling.reaches(ray.radial) ? ray.marches : List.of();
                fillings.get(i)
                        .fill(
                                radial / apart,
                                ray.radial,
                                ray.endsAtSteepGround,
                                marches,
                                roses.get(i).found());
            }
        }

        /** In shares of a turn, from so many gaps of the map on, so many gaps apart. */
        private double[] turns(double first, double apart, int count) {
            double[] turns = new double[count];
            for (int i = 0; i < count; i++) turns[i] = (first + i * apart) / cells.radials();
            return turns;
        }

        /** Cuts and marches radials, as many at once as go together. */
        private void march(double[] turns, List<Ray> cut) {
            setting.cutAlike(
                    sampler,
                    Arrays.stream(turns).map(turn -> 2 * Math.PI * turn).toArray(),
                    Math.max(CellsByRadial.NEAREST_M, setting.radiusM()),
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

        /** Where the loss bends much over neighbouring gaps, marches a radial in the midst of each, and where it still does, of each half. */
        private void halve(int first, List<Ray> base) {
            usedBetween = 0;
            within.clear();
            int gaps = base.size() - 1;
            for (int from = 0; from < gaps; from += GAPS_HALVED) {
                int count = Math.min(gaps - from, GAPS_HALVED);
                List<Ray> midst = List.of();
                if (bends(base, from, count, halvedFromDb)) midst = marched(turns(first + from + 0.5, 1, count));
                for (int gap = 0; gap < count; gap++) within.add(midst.isEmpty() ? List.of() : List.of(midst.get(gap)));
            }
            for (int from = 0; from < gaps; from += GAPS_HALVED / 2) {
                int count = Math.min(gaps - from, GAPS_HALVED / 2);
                List<Ray> halves = new ArrayList<>();
                for (int gap = from; gap < from + count; gap++) {
                    halves.add(base.get(gap));
                    halves.addAll(within.get(gap));
                }
                halves.add(base.get(from + count));
                if (halves.size() == count + 1 || !bends(halves, 0, halves.size() - 1, AGAIN * halvedFromDb)) continue;
                List<Ray> midst = marched(turns(first + from + 0.25, 0.5, 2 * count));
                for (int gap = 0; gap < count; gap++) {
                    Ray half = within.get(from + gap).get(0);
                    within.set(from + gap, List.of(midst.get(2 * gap), half, midst.get(2 * gap + 1)));
                }
            }
        }

        private List<Ray> marched(double[] turns) {
            while (raysBetween.size() < usedBetween + turns.length) raysBetween.add(new Ray());
            List<Ray> marched = raysBetween.subList(usedBetween, usedBetween + turns.length);
            usedBetween += turns.length;
            march(turns, marched);
            return marched;
        }

        /** Whether the loss bends by more than this over so many gaps, root mean square. */
        private boolean bends(List<Ray> rays, int from, int gaps, double bendDb) {
            double squares = 0;
            for (int gap = from; gap < from + gaps; gap++) squares += square(bendDb(rays, gap));
            return squares > square(bendDb) * gaps;
        }

        private static double square(double of) {
            return of * of;
        }

        /**
         * How far the loss between two radials of a gap may be off what a straight line says, dB: the bend from radial to radial, over the
         * ground that is not lost, as root of the mean square over the whole gap.
         */
        private double bendDb(List<Ray> base, int gap) {
            int last = base.size() - 1;
            int from = Math.max(1, gap);
            int to = Math.min(last - 1, gap + 1);
            int known = Integer.MAX_VALUE;
            for (int i = from - 1; i <= to + 1; i++)
                known = Math.min(
                        known, base.get(i).isMarched() ? base.get(i).radial.known() : 0);
            double[] distanceKm = base.get(gap).radial.distancesKm();
            int count = base.get(gap).radial.count();
            double most = 0;
            for (int pair = 0; pair < heights.size(); pair++) {
                double sum = 0;
                for (int i = 1; i < known; i++) {
                    double bend = 0;
                    for (int at = from; at <= to; at++)
                        bend += meanLossDb(base, at - 1, pair, i)
                                - 2 * meanLossDb(base, at, pair, i)
                                + meanLossDb(base, at + 1, pair, i);
                    bend /= to - from + 1;
                    double freeDb = FreeSpace.lossDb(setting.conditions().frequency(), distanceKm[i]);
                    double middleDb = 0.5 * (meanLossDb(base, gap, pair, i) + meanLossDb(base, gap + 1, pair, i));
                    if (middleDb - freeDb < CoveredMarch.LOST_DB) sum += distanceKm[i] * bend * bend;
                }
                double all = 0.5 * distanceKm[count - 1] * count;
                most = Math.max(most, Math.sqrt(sum / all));
            }
            return most;
        }

        private static double meanLossDb(List<Ray> base, int at, int pair, int sample) {
            return base.get(at).marches.get(pair).field().meanLossDb(sample);
        }

        private void fill(int radial, int at) {
            int first = cells.first(radial);
            int end = cells.end(radial);
            if (first == end) return;
            Ray nearest = rays.get(at);
            List<Ray> clockwise = across(at, at, at + 1);
            List<Ray> anticlockwise = across(at, at - 1, at - 1);
            samplerOfCells.cells(grids.get(0).grid(), cells, first, end);
            for (int slot = first; slot < end; slot++) {
                double distanceKm = Math.max(CellsByRadial.NEAREST_M, cells.distanceM(slot)) / 1000;
                if (samplerOfCells.isVoid(slot - first) || !nearest.isKnown(distanceKm)) {
                    putNoLoss(nearest, slot, first);
                    continue;
                }
                double aside = aside(cells.cell(slot), radial);
                fill(aside < 0 ? anticlockwise : clockwise, Math.abs(aside), slot, first, distanceKm);
            }
        }

        /** The radials from one of the map over a gap to the next. */
        private List<Ray> across(int at, int gap, int next) {
            List<Ray> across = new ArrayList<>(within.get(gap));
            if (next < at) Collections.reverse(across);
            across.add(0, rays.get(at));
            across.add(rays.get(next));
            return across;
        }

        /** From the nearest radials on either side of a cell that both answer for its distance; it lies so many shares of the gap from the first. */
        private void fill(List<Ray> across, double aside, int slot, int first, double distanceKm) {
            int all = across.size() - 1;
            for (int parts = all; parts > 0; parts /= 2) {
                double way = aside * parts;
                Ray near = across.get((int) way * all / parts);
                Ray beside = across.get(((int) way + 1) * all / parts);
                if (!near.isKnown(distanceKm) || !beside.isKnown(distanceKm)) continue;
                put(near, beside, way - (int) way, slot, first, distanceKm);
                return;
            }
            put(across.get(0), across.get(0), 0, slot, first, distanceKm);
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
