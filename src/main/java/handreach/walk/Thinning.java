package handreach.walk;

import handreach.geodesy.Position;
import handreach.reach.Progress;
import java.util.List;
import java.util.OptionalDouble;

/** How much independent evidence near-by reports hold: shadowing is the same for neighbours. */
public final class Thinning {
    /** Where nothing can be estimated: between 20 m in towns and 100 m in open hills (Gudmundson 1991, from memory). */
    public static final double USUAL_DECORRELATION_M = 50;

    private static final double[] TRIED_M = {5, 10, 15, 20, 30, 40, 50, 70, 100, 140, 200, 280, 400};
    private static final int LEAST_LEVELS = 40;
    private static final int LEAST_PAIRS = 30;
    private static final double LAG_M = 20;
    private static final int LAGS = 30;
    private static final double METRES_PER_DEGREE = 111_195;

    private Thinning() {}

    /** Distance between two reports over a plane, m; enough for weights. */
    static double apartM(WalkPair a, WalkPair b) {
        return apartM(a.spot().at(), b.spot().at());
    }

    static double apartM(Position a, Position b) {
        double north = a.latitudeDeg() - b.latitudeDeg();
        double east = (a.longitudeDeg() - b.longitudeDeg()) * Math.cos(Math.toRadians(a.latitudeDeg()));
        return METRES_PER_DEGREE * Math.hypot(north, east);
    }

    /**
     * Weight of each report: one over the sum of its correlations with all reports, itself included.
     *
     * @shape  n reports in, n weights out; O(n²), pure; stops between rows where nobody wants the result
     * @unit   decorrelation distance m; weights 0 to 1
     * @valid  distance above 0; outside: IllegalArgumentException
     * @error  a stand-in for the full covariance: exact for reports at one place and for reports far apart
     * @source ρ = exp(−Δ/d), Gudmundson, Electronics Letters 27 (1991) 2145 (from memory); the weights are our suggestion
     */
    public static double[] weights(List<WalkPair> pairs, double decorrelationM, Progress progress) {
        if (!(decorrelationM > 0)) throw new IllegalArgumentException("decorrelation distance " + decorrelationM);
        int n = pairs.size();
        double[] sum = new double[n];
        for (int i = 0; i < n; i++) {
            progress.goOn();
            sum[i] += 1;
            for (int j = 0; j < i; j++) {
                double rho = Math.exp(-apartM(pairs.get(i), pairs.get(j)) / decorrelationM);
                sum[i] += rho;
                sum[j] += rho;
            }
            progress.done("weighing reports", shareOfPairs(i, n));
        }
        for (int i = 0; i < n; i++) sum[i] = 1 / sum[i];
        return sum;
    }

    /** How many of all pairs of n are done after this row: a row is as long as its number. */
    private static double shareOfPairs(int row, int n) {
        return (row + 1.0) * (row + 1.0) / n / n;
    }

    /**
     * Decorrelation distance of the errors of levels.
     *
     * @shape  n reports in, one distance or none out; O(n²), pure; stops between rows where nobody wants the result
     * @unit   m
     * @valid  at least 40 levels, 30 pairs in each lag used; fewer: empty
     * @error  a factor of about two on a walk of some kilometres (seen on simulated walks)
     * @source least squares of exp(−Δ/d) against the correlation of errors by lag
     */
    public static OptionalDouble decorrelationM(List<WalkPair> pairs, Progress progress) {
        List<WalkPair> levels = pairs.stream().filter(WalkPair::isLevel).toList();
        if (levels.size() < LEAST_LEVELS) return OptionalDouble.empty();
        double[] error = levels.stream().mapToDouble(WalkPair::errorDb).toArray();
        Comparison.LevelScore score = Comparison.LevelScore.of(error);
        double variance = Math.pow(score.standardDeviationDb(), 2);
        if (variance == 0) return OptionalDouble.empty();
        double[] sum = new double[LAGS];
        int[] count = new int[LAGS];
        for (int i = 0; i < error.length; i++) {
            progress.goOn();
            for (int j = 0; j < i; j++) {
                int lag = (int) (apartM(levels.get(i), levels.get(j)) / LAG_M);
                if (lag >= LAGS) continue;
                sum[lag] += (error[i] - score.meanDb()) * (error[j] - score.meanDb());
                count[lag]++;
            }
            progress.done("how far errors stay alike", shareOfPairs(i, error.length));
        }
        return nearest(sum, count, variance);
    }

    private static OptionalDouble nearest(double[] sum, int[] count, double variance) {
        double best = Double.POSITIVE_INFINITY;
        OptionalDouble found = OptionalDouble.empty();
        for (double triedM : TRIED_M) {
            double squares = 0;
            int lags = 0;
            for (int lag = 0; lag < LAGS; lag++) {
                if (count[lag] < LEAST_PAIRS) continue;
                lags++;
                double rho = sum[lag] / count[lag] / variance;
                squares += count[lag] * Math.pow(rho - Math.exp(-(lag + 0.5) * LAG_M / triedM), 2);
            }
            if (lags >= 3 && squares < best) {
                best = squares;
                found = OptionalDouble.of(triedM);
            }
        }
        return found;
    }
}
