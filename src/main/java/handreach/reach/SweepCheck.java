package handreach.reach;

import handreach.propagation.Terminals;
import java.util.Arrays;

/** Compares a sweep with one exact path per cell, on cells spread evenly over the area. */
final class SweepCheck {
    private static final int CELLS = 400;

    private final AreaSetting setting;
    private final Workers workers;

    SweepCheck(AreaSetting setting, Workers workers) {
        this.setting = setting;
        this.workers = workers;
    }

    /** The grid with its difference; without one when no compared cell is known. */
    LossGrid measured(LossGrid grid, CellsByRadial cells, Stretch stretch) {
        int wanted = Math.min(CELLS, cells.count());
        if (wanted == 0) return grid;
        double[] difference = new double[wanted];
        Terminals[] pair = {grid.request().terminals()};
        workers.run(
                wanted,
                () -> new Comparison(grid, pair),
                (comparison, i) -> {
                    // The golden section spreads any number of picks evenly over radials and distances.
                    double turn = (i + 0.5) * 0.6180339887498949;
                    int slot = (int) ((turn - Math.floor(turn)) * cells.count());
                    difference[i] = comparison.differenceDb(cells.cell(slot));
                },
                stretch);
        double[] known = Arrays.stream(difference).filter(d -> !Double.isNaN(d)).toArray();
        return known.length == 0 ? grid : grid.with(SamplingDifference.of(known));
    }

    /** Reckons single cells exactly and sets the sweep's loss against them. */
    private final class Comparison implements CellSink {
        private final LossGrid swept;
        private final ExactWorker exact;
        private double lossDb;

        Comparison(LossGrid swept, Terminals[] pair) {
            this.swept = swept;
            this.exact = new ExactWorker(setting, swept.request().model(), pair, swept.grid(), new CellSink[] {this});
        }

        /** NaN where either engine does not know the cell; it does not leave this class. */
        double differenceDb(int cell) {
            lossDb = Double.NaN;
            exact.cell(cell);
            return swept.isKnown(cell) ? swept.lossDb(cell) - lossDb : Double.NaN;
        }

        @Override
        public void put(int cell, double loss, double departureDeg, double arrivalDeg, boolean inSight, int cover) {
            lossDb = loss;
        }

        @Override
        public void putUnknown(int cell) {
            lossDb = Double.NaN;
        }
    }
}
