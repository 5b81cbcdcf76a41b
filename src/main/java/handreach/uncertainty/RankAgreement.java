package handreach.uncertainty;

import java.util.List;
import org.apache.commons.math3.stat.correlation.KendallsCorrelation;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.apache.commons.math3.stat.ranking.NaturalRanking;

/**
 * How far two ways of measuring put the same things in the same order: 1 the same, 0 no relation, −1 the reverse.
 *
 * @param count things ranked
 * @param kendall Kendall's tau-b
 * @param spearman Spearman's rho
 */
public record RankAgreement(int count, double kendall, double spearman) {
    /**
     * Agreement of two lists of values of the same things.
     *
     * @shape  two lists of the same n in, one record out; O(n log n), pure
     * @unit   none; ties share their rank
     * @valid  at least two things, neither list all the same; outside: IllegalArgumentException
     * @error  rounding only
     * @source Kendall, Biometrika 30 (1938) 81; Spearman, American Journal of Psychology 15 (1904) 72 (from memory)
     */
    public static RankAgreement of(List<Double> first, List<Double> second) {
        int n = first.size();
        if (n != second.size() || n < 2 || isFlat(first) || isFlat(second))
            throw new IllegalArgumentException("ranks of " + n + " and " + second.size() + " values");
        // adding zero turns -0.0 into 0.0, which the library would rank apart
        double[] a = first.stream().mapToDouble(x -> x + 0.0).toArray();
        double[] b = second.stream().mapToDouble(x -> x + 0.0).toArray();
        double kendall = new KendallsCorrelation().correlation(a, b);
        double spearman = new SpearmansCorrelation(new NaturalRanking()).correlation(a, b);
        return new RankAgreement(n, kendall, spearman);
    }

    private static boolean isFlat(List<Double> values) {
        return values.stream().distinct().count() < 2;
    }
}
