package handreach.walk;

import java.util.List;

/**
 * Whether the errors that a calibration leaves grow or fall with the predicted margin, as they do where the loss grows faster or
 * slower with distance than predicted. A shift alone is then right at one margin and wrong at the others.
 *
 * @param slope decibels of further loss for each decibel of predicted margin
 * @param standardUncertainty of the slope
 * @param rmsMarginDb how far the predicted margins of the walk lie from the edge of copy, at most 15 dB each, RMS, dB
 */
public record MarginTrend(double slope, double standardUncertainty, double rmsMarginDb) {
    private static final int STEPS = 20;
    /** What is believed before the walk: a distance law is right within 30 % nineteen times in twenty; our suggestion. */
    private static final double BELIEVED = 0.15;

    private static final double SEEN = 2;
    /** Margins farther from the edge of copy count as this far: whether there is copy is hardly open there; our suggestion. */
    private static final double OPEN_DB = 15;

    /**
     * The slope that fits best beside the calibration's shifts.
     *
     * @shape  n reports and their weights in, one record out; O(n), some steps of Newton; pure
     * @unit   dB/dB; RMS dB
     * @valid  at least one report; with one margin for all the slope is what was believed before, 0 ± 0.15
     * @error  the standard uncertainty, as the weights count reports; copies alone hardly tell a slope from another spread
     * @source Bayes' rule with the evidence of each report and a normal belief in the slope; Newton's steps
     */
    static MarginTrend of(List<WalkPair> pairs, double[] weight, Calibration calibration) {
        int n = pairs.size();
        Evidence.Edge[] edges = new Evidence.Edge[n];
        double[] marginDb = new double[n];
        double sum = 0;
        double squares = 0;
        double mean = 0;
        for (int i = 0; i < n; i++) {
            marginDb[i] = pairs.get(i).marginDb();
            edges[i] = Evidence.Edge.of(calibration.corrected(pairs.get(i)));
            sum += weight[i];
            mean += weight[i] * marginDb[i];
            squares += weight[i] * Math.pow(Math.min(OPEN_DB, Math.abs(marginDb[i])), 2);
        }
        mean /= sum;
        double[] found = new double[2];
        double uncertainty = Double.POSITIVE_INFINITY;
        Evidence evidence = new Evidence();
        for (int step = 0; step < STEPS; step++) {
            double[] gradient = new double[2];
            double[][] bowl = new double[2][2];
            for (int i = 0; i < n; i++) {
                double over = marginDb[i] - mean;
                evidence.set(edges[i], found[0] + found[1] * over, calibration.spreadDb());
                gradient[0] += weight[i] * evidence.slope;
                gradient[1] += weight[i] * evidence.slope * over;
                bowl[0][0] += weight[i] * evidence.bowl;
                bowl[0][1] += weight[i] * evidence.bowl * over;
                bowl[1][1] += weight[i] * evidence.bowl * over * over;
            }
            gradient[1] -= found[1] / (BELIEVED * BELIEVED);
            bowl[1][1] += 1 / (BELIEVED * BELIEVED);
            double determinant = bowl[0][0] * bowl[1][1] - bowl[0][1] * bowl[0][1];
            found[0] += (bowl[1][1] * gradient[0] - bowl[0][1] * gradient[1]) / determinant;
            found[1] += (bowl[0][0] * gradient[1] - bowl[0][1] * gradient[0]) / determinant;
            uncertainty = Math.sqrt(bowl[0][0] / determinant);
        }
        return new MarginTrend(found[1], uncertainty, Math.sqrt(squares / sum));
    }

    /** Whether it is more than chance would make of it, at two standard uncertainties. */
    public boolean isSeen() {
        return Math.abs(slope) > SEEN * standardUncertainty;
    }

    /** Doubt of a common shift that goes with it, dB: of a slope that was seen, and of one that the walk cannot exclude. */
    double doubtDb() {
        return Math.hypot(slope, standardUncertainty) * rmsMarginDb;
    }
}
