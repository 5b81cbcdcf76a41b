package handreach.reach;

import handreach.propagation.FreeSpace;
import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Compares losses off radials with one exact path per cell, on cells spread evenly over the area. Of a march, cells that their own path
 * says are lost are counted but not compared; and where the map itself gives a cell up by far, its path is not marched at all.
 */
final class SamplingCheck {
    /** Excess over free space in the map beyond which no path is marched, dB: a cell that is not lost would be wrong by 15 dB there. */
    private static final double GIVEN_UP_DB = CoveredMarch.LOST_DB + 15;
    /** Cells looked at for each that is wanted, before a map that gives up nearly all is left alone. */
    private static final int LOOKED_FOR_ONE = 8;

    private final AreaSetting setting;
    private final Workers workers;
    private final int wanted;

    /** Compares that many cells, fewer where the area has fewer. */
    SamplingCheck(AreaSetting setting, Workers workers, int wanted) {
        this.setting = setting;
        this.workers = workers;
        this.wanted = wanted;
    }

    /** The grids of one run with their differences; a grid without one when no compared cell is known in it. */
    List<LossGrid> measured(List<LossGrid> grids, CellsByRadial cells, SubProgress stretch) {
        Picks picks = picks(grids, cells);
        int compared = picks.slots().length;
        if (compared == 0) return List.copyOf(grids);
        double[][] difference = new double[grids.size()][compared];
        boolean[][] isLost = new boolean[grids.size()][compared];
        workers.run(
                compared,
                () -> new Comparison(grids, stretch),
                (comparison, i) -> comparison.compare(cells, picks.slots()[i], difference, isLost, i),
                stretch);
        List<LossGrid> measured = new ArrayList<>();
        for (int k = 0; k < grids.size(); k++) {
            double[] known =
                    Arrays.stream(difference[k]).filter(d -> !Double.isNaN(d)).toArray();
            int lost = picks.givenUp();
            for (boolean is : isLost[k]) if (is) lost++;
            measured.add(known.length == 0 ? grids.get(k) : grids.get(k).with(SamplingDifference.of(known, lost)));
        }
        return List.copyOf(measured);
    }

    /** Cells to compare, and how many more were met that the map gives up for every pair of heights. */
    private record Picks(int[] slots, int givenUp) {}

    private Picks picks(List<LossGrid> grids, CellsByRadial cells) {
        int[] slots = new int[Math.min(wanted, cells.count())];
        int found = 0;
        int givenUp = 0;
        int most = Math.min(LOOKED_FOR_ONE * slots.length, cells.count());
        for (int pick = 0; pick < most && found < slots.length; pick++) {
            int slot = slot(pick, cells.count());
            if (grids.stream().allMatch(grid -> isGivenUp(grid, cells, slot))) givenUp++;
            else slots[found++] = slot;
        }
        return new Picks(Arrays.copyOf(slots, found), givenUp);
    }

    private boolean isGivenUp(LossGrid grid, CellsByRadial cells, int slot) {
        int cell = cells.cell(slot);
        if (grid.engine() != MapEngine.MARCH || !grid.isKnown(cell)) return false;
        return grid.lossDb(cell) - freeDb(cells, slot) > GIVEN_UP_DB;
    }

    private double freeDb(CellsByRadial cells, int slot) {
        double distanceKm = Math.max(CellsByRadial.NEAREST_M, cells.distanceM(slot)) / 1000;
        return FreeSpace.lossDb(setting.conditions().frequency(), distanceKm);
    }

    /** The slot of a pick: the golden section spreads any number of picks evenly over radials and distances. */
    static int slot(int pick, int cells) {
        double turn = (pick + 0.5) * 0.6180339887498949;
        return (int) ((turn - Math.floor(turn)) * cells);
    }

    /** Computes single cells exactly and sets the losses off radials against them. */
    private final class Comparison {
        private final List<LossGrid> grids;
        private final ExactWorker exact;
        private final double[] exactDb;

        Comparison(List<LossGrid> grids, Progress progress) {
            this.grids = grids;
            this.exactDb = new double[grids.size()];
            CellSink[] sinks = new CellSink[grids.size()];
            for (int k = 0; k < sinks.length; k++) sinks[k] = new Kept(k);
            Terminals[] pairs =
                    grids.stream().map(grid -> grid.request().terminals()).toArray(Terminals[]::new);
            AreaRequest request = grids.get(0).request();
            this.exact = new ExactWorker(setting, request.model(), pairs, request.grid(), sinks, progress);
        }

        /** Puts NaN where either engine does not know the cell, or where it is lost; it does not leave this class. */
        void compare(CellsByRadial cells, int slot, double[][] differenceDb, boolean[][] isLost, int i) {
            int cell = cells.cell(slot);
            Arrays.fill(exactDb, Double.NaN);
            exact.cell(cell);
            for (int k = 0; k < exactDb.length; k++) {
                LossGrid grid = grids.get(k);
                differenceDb[k][i] = grid.isKnown(cell) ? grid.lossDb(cell) - exactDb[k] : Double.NaN;
                if (Double.isNaN(differenceDb[k][i]) || grid.engine() != MapEngine.MARCH) continue;
                isLost[k][i] = exactDb[k] - freeDb(cells, slot) > CoveredMarch.LOST_DB;
                if (isLost[k][i]) differenceDb[k][i] = Double.NaN;
            }
        }

        /** Keeps the loss for one pair of heights. */
        private final class Kept implements CellSink {
            private final int pair;

            Kept(int pair) {
                this.pair = pair;
            }

            @Override
            public void put(int cell, double loss, double departureDeg, double arrivalDeg, boolean inSight, int cover) {
                exactDb[pair] = loss;
            }

            @Override
            public void putUnknown(int cell) {
                exactDb[pair] = Double.NaN;
            }
        }
    }
}
