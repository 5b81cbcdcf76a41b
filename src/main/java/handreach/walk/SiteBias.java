package handreach.walk;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What a set of reports would take away from the variance of every shift: a Cholesky factor of the covariance of the reports that
 * grows by one row for each. Immutable; growing it makes another.
 */
final class SiteBias {
    /** Share of a report's variance below which it says nothing that the others do not. */
    private static final double NOTHING_NEW = 1e-10;

    private final NextWalk.Belief belief;
    private final List<NextWalk.Candidate> reports;
    private final List<double[]> factor;
    /** For every kind, its covariance with the reports, solved by the factor. */
    private final List<double[]> seen;

    private final double[] takenDb2;

    SiteBias(NextWalk.Belief belief) {
        this(
                belief,
                List.of(),
                List.of(),
                List.of(),
                new double[belief.shiftCovarianceDb2().size()]);
    }

    private SiteBias(
            NextWalk.Belief belief,
            List<NextWalk.Candidate> reports,
            List<double[]> factor,
            List<double[]> seen,
            double[] takenDb2) {
        this.belief = belief;
        this.reports = reports;
        this.factor = factor;
        this.seen = seen;
        this.takenDb2 = takenDb2;
    }

    /** The set with one more report, whose noise is independent of all others. */
    SiteBias plus(NextWalk.Candidate report, double noiseDb2) {
        int n = factor.size();
        double[] row = new double[n + 1];
        double variance =
                belief.covariance(report.kind(), report.kind()) + report.spreadDb() * report.spreadDb() + noiseDb2;
        double rest = variance;
        for (int i = 0; i < n; i++) {
            double sum = covariance(report, reports.get(i));
            for (int k = 0; k < i; k++) sum -= row[k] * factor.get(i)[k];
            row[i] = sum / factor.get(i)[i];
            rest -= row[i] * row[i];
        }
        if (rest <= NOTHING_NEW * variance) return this;
        row[n] = Math.sqrt(rest);
        double[] solved = new double[takenDb2.length];
        double[] taken = takenDb2.clone();
        for (int kind = 0; kind < solved.length; kind++) {
            double sum = belief.covariance(kind, report.kind());
            for (int i = 0; i < n; i++) sum -= row[i] * seen.get(i)[kind];
            solved[kind] = sum / row[n];
            taken[kind] = Math.min(belief.covariance(kind, kind), taken[kind] + solved[kind] * solved[kind]);
        }
        return new SiteBias(belief, added(reports, report), added(factor, row), added(seen, solved), taken);
    }

    private double covariance(NextWalk.Candidate a, NextWalk.Candidate b) {
        double alike = Math.exp(-Neighbourhood.apartM(a.at(), b.at()) / belief.decorrelationM());
        return belief.covariance(a.kind(), b.kind()) + a.spreadDb() * b.spreadDb() * alike;
    }

    private static <T> List<T> added(List<T> list, T one) {
        List<T> more = new ArrayList<>(list);
        more.add(one);
        return more;
    }

    /** Variance of this kind's shift that the reports take away, dB². */
    double takenDb2(int kind) {
        return Math.max(0, takenDb2[kind]);
    }

    /** Standard deviation by which the reports are expected to move each kind's shift, dB. */
    double[] movementsDb() {
        return Arrays.stream(takenDb2).map(v -> Math.sqrt(Math.max(0, v))).toArray();
    }
}
