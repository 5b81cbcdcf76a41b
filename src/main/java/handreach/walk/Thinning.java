package handreach.walk;

import handreach.reach.Progress;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** How much independent evidence near-by reports hold: shadowing is the same for neighbours. */
public final class Thinning {
    private static final double USUAL_COVERED_M = 50;
    private static final double USUAL_OPEN_M = 130;

    /** Share of the least sum of correlations that all far reports together may have and are left out. */
    private static final double LEFT_OUT = 5e-7;

    private Thinning() {}

    /**
     * How far errors are taken to stay alike where nothing can be estimated.
     *
     * @shape  a choice of two; pure
     * @unit   m
     * @valid  for ground that is open, or wooded or built up, for the most part
     * @error  a factor of two either way
     * @source open: our suggestion, 150 to 220 m being found between means over 60 m of three measured lines (docs/field-comparison.md);
     *     cover: Gudmundson, Electronics Letters 27 (1991) 2145 (from memory)
     */
    public static double usualDecorrelationM(boolean isOpen) {
        return isOpen ? USUAL_OPEN_M : USUAL_COVERED_M;
    }

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
}
