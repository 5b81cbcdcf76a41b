package handreach.reach;

import handreach.uncertainty.Interval;

/** Counts, row by row, the cells that a link reaches with the wanted odds, and with the doubt common to all places against and for it. */
final class ShareCount {
    private final LossGrid losses;
    private final double thresholdDb;
    private final double shiftDb;
    private long reached;
    private long low;
    private long high;

    ShareCount(OddsGrid odds, double targetOdds) {
        this.losses = odds.losses();
        this.thresholdDb = odds.link().thresholdDb(targetOdds);
        this.shiftDb = Interval.COVERAGE_95 * odds.link().commonDoubtDb();
    }

    /** Margins of a row of cells; NaN, which is what is not known, counts nowhere. */
    void row(double[] marginDb) {
        double surelyDb = thresholdDb + shiftDb;
        double perhapsDb = thresholdDb - shiftDb;
        for (double margin : marginDb) {
            if (margin >= thresholdDb) reached++;
            if (margin >= surelyDb) low++;
            if (margin >= perhapsDb) high++;
        }
    }

    ReachEstimate estimate() {
        double known = Math.max(1, losses.knownCount());
        return new ReachEstimate(reached / known, new Interval(low / known, high / known));
    }
}
