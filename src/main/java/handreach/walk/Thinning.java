package handreach.walk;

import handreach.reach.Progress;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
    /** Share of the least sum of correlations that all far reports together may have and are left out. */
    private static final double LEFT_OUT = 5e-7;

    private Thinning() {}

    /**
     * Weight of each report: one over the sum of its correlations with all reports, itself included.
     *
     * @shape  n reports in, n weights out; O(n k) for k places within the cut-off of each, pure; stops between places where nobody
     *     wants the result
     * @unit   decorrelation distance d in m; weights 0 to 1
     * @valid  distance above 0; outside: IllegalArgumentException
     * @error  a stand-in for the full covariance: exact for reports at one place and for reports far apart. Reports farther than
     *     d ln(n/5e-7) are left out (24 d for 21 600 reports): each correlation there is below 5e-7/n, so that a weight is at most
     *     5e-7 of itself too great
     * @source ρ = exp(−Δ/d), Gudmundson, Electronics Letters 27 (1991) 2145 (from memory); the weights are our suggestion
     */
    public static double[] weights(List<WalkPair> pairs, double decorrelationM, Progress progress) {
        int[] all = new int[pairs.size()];
        Arrays.fill(all, 1);
        return weights(Neighbourhood.of(pairs), all, 1, decorrelationM, progress)[0];
    }

    /**
     * The same for several sets of the reports at once, for which each correlation is found once: the weight of each report in each
     * set, 0 where it is not in it.
     *
     * @param sets for each report the sets it is in, a bit for each; reports of one place are in the same sets. Places are told
     *     apart by the sets they are in, of which there are few, so that each two are added up once whatever the number of sets
     */
    static double[][] weights(Neighbourhood near, int[] sets, int count, double decorrelationM, Progress progress) {
        if (!(decorrelationM > 0)) throw new IllegalArgumentException("decorrelation distance " + decorrelationM);
        int[] in = new int[near.places()];
        for (int i = 0; i < sets.length; i++) in[near.place(i)] = sets[i];
        double reachM = decorrelationM * Math.log(Math.max(1, sets.length) / LEFT_OUT);
        int[] kinds = Arrays.stream(in).distinct().toArray();
        double[] sum = sums(near, numbers(in, kinds), kinds.length, reachM, decorrelationM, progress);
        double[][] weight = new double[count][sets.length];
        for (int set = 0; set < count; set++)
            for (int i = 0; i < sets.length; i++) {
                if ((sets[i] >> set & 1) == 0) continue;
                double whole = 0;
                for (int k = 0; k < kinds.length; k++)
                    if ((kinds[k] >> set & 1) == 1) whole += sum[near.place(i) * kinds.length + k];
                weight[set][i] = 1 / whole;
            }
        return weight;
    }

    private static int[] numbers(int[] in, int[] kinds) {
        Map<Integer, Integer> number = new HashMap<>();
        for (int k = 0; k < kinds.length; k++) number.put(kinds[k], k);
        return Arrays.stream(in).map(number::get).toArray();
    }

    /** Sum of the correlations of each place with the reports of each kind of place, place by place. */
    private static double[] sums(
            Neighbourhood near, int[] kind, int kinds, double reachM, double decorrelationM, Progress progress) {
        double[] sum = new double[kind.length * kinds];
        for (int at = 0; at < kind.length; at++) sum[at * kinds + kind[at]] = near.reports(at);
        near.within(reachM, progress, "weighing reports", (a, b, apartM) -> {
            double rho = Math.exp(-apartM / decorrelationM);
            sum[a * kinds + kind[b]] += rho * near.reports(b);
            sum[b * kinds + kind[a]] += rho * near.reports(a);
        });
        return sum;
    }

    /**
     * Decorrelation distance of the errors of levels.
     *
     * @shape  n reports in, one distance or none out; O(n k) for k places within 600 m of each, pure; stops between places where
     *     nobody wants the result
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
        for (int i = 0; i < error.length; i++) error[i] -= score.meanDb();
        double[] sum = new double[LAGS];
        long[] count = new long[LAGS];
        lags(Neighbourhood.of(levels), error, sum, count, progress);
        return nearest(sum, count, variance);
    }

    /** Sums and counts of the products of two errors by the lag between them; reports of one place have lag 0. */
    private static void lags(Neighbourhood near, double[] error, double[] sum, long[] count, Progress progress) {
        double[] here = new double[near.places()];
        double[] squares = new double[near.places()];
        for (int i = 0; i < error.length; i++) {
            here[near.place(i)] += error[i];
            squares[near.place(i)] += error[i] * error[i];
        }
        for (int at = 0; at < here.length; at++) {
            sum[0] += (here[at] * here[at] - squares[at]) / 2;
            count[0] += near.reports(at) * (near.reports(at) - 1L) / 2;
        }
        near.within(LAGS * LAG_M, progress, "how far errors stay alike", (a, b, apartM) -> {
            int lag = Math.min(LAGS - 1, (int) (apartM / LAG_M));
            sum[lag] += here[a] * here[b];
            count[lag] += (long) near.reports(a) * near.reports(b);
        });
    }

    private static OptionalDouble nearest(double[] sum, long[] count, double variance) {
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
