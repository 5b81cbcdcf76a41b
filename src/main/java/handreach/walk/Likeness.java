package handreach.walk;

import handreach.reach.Progress;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How far errors stay alike, learned from what a calibration leaves over: levels, levels below a floor, copies and misses alike. What
 * a copy says of a normal error is expanded in Hermite polynomials, so that the product of two residuals is a power series in their
 * correlation.
 */
final class Likeness {
    private static final double[] TRIED_M = {5, 10, 15, 20, 30, 40, 50, 70, 100, 140, 200, 280, 400, 560, 800, 1100};
    private static final int TERMS = 4;
    private static final int MOST_REPORTS = 1200;
    static final int LEAST_REPORTS = 40;
    private static final double LAG_M = 20;
    /** Lags that are compared, and those that only tell how far the walk went. */
    private static final int COMPARED = 100;

    private static final int LAGS = 1500;
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final double[][] product = new double[TERMS][LAGS];
    private final double[] residual = new double[LAGS];
    private final double[] variance = new double[LAGS];
    private final long[] count = new long[LAGS];
    private int reports;

    /** What one report leaves: its residual, that residual's variance, and its Hermite coefficients. */
    private record Left(WalkPair pair, double residual, double variance, double[] hermite) {
        static Left of(WalkPair corrected) {
            double spread = corrected.link().spreadDb();
            if (corrected.isLevel()) {
                double[] linear = new double[TERMS];
                linear[0] = 1;
                return new Left(corrected, -corrected.errorDb() / spread, 1, linear);
            }
            boolean isFloor = corrected.heard().kind() == Reception.Kind.BELOW;
            double z = (isFloor ? corrected.predictedDbm() - corrected.heard().value() : corrected.marginDb()) / spread;
            boolean isAbove = !isFloor && corrected.copied();
            double p = Math.min(1 - 1e-6, Math.max(1e-6, NORMAL.cumulativeProbability(z)));
            double bell = NORMAL.density(z);
            double[] hermite = {
                bell,
                -bell * z / Math.sqrt(2),
                bell * (z * z - 1) / Math.sqrt(6),
                bell * (3 * z - z * z * z) / Math.sqrt(24)
            };
            return new Left(corrected, (isAbove ? 1 : 0) - p, p * (1 - p), hermite);
        }
    }

    /**
     * Decorrelation distance of the errors that a calibration leaves.
     *
     * @shape  n reports in, one distance or none out; O(m²) for m reports, n but at most 1200; pure; stops between reports where nobody
     *     wants the result
     * @unit   m
     * @valid  at least 40 reports; fewer, or none near another: empty
     * @error  a factor of about two on a walk of ten kilometres (seen on simulated walks)
     * @source least squares of ρ = exp(−Δ/d), less the part that goes with the fitted shift, against the products of residuals by lag;
     *     Hermite expansion of a threshold (Mehler's formula; Kendall and Stuart, chapter 26, from memory)
     */
    static OptionalDouble decorrelationM(List<WalkPair> pairs, Calibration calibration, Progress progress) {
        if (pairs.size() < LEAST_REPORTS) return OptionalDouble.empty();
        int step = (pairs.size() + MOST_REPORTS - 1) / MOST_REPORTS;
        Left[] left = new Left[(pairs.size() + step - 1) / step];
        for (int i = 0; i < left.length; i++) left[i] = Left.of(calibration.corrected(pairs.get(i * step)));
        Likeness likeness = new Likeness();
        likeness.reports = left.length;
        for (int i = 0; i < left.length; i++) {
            progress.goOn();
            progress.done("how far errors stay alike", (i + 1.0) / left.length);
            for (int j = 0; j < i; j++) likeness.add(left[i], left[j]);
        }
        return likeness.nearest();
    }

    private void add(Left a, Left b) {
        double apartM = Neighbourhood.apartM(a.pair.spot().at(), b.pair.spot().at());
        int lag = (int) Math.min(LAGS - 1, apartM / LAG_M);
        count[lag]++;
        if (lag >= COMPARED) return;
        residual[lag] += a.residual * b.residual;
        variance[lag] += a.variance * b.variance;
        for (int n = 0; n < TERMS; n++) product[n][lag] += a.hermite[n] * b.hermite[n];
    }

    private OptionalDouble nearest() {
        double best = Double.POSITIVE_INFINITY;
        OptionalDouble found = OptionalDouble.empty();
        for (double triedM : TRIED_M) {
            double squares = squares(triedM);
            if (squares < best) {
                best = squares;
                found = OptionalDouble.of(triedM);
            }
        }
        return found;
    }

    private double squares(double triedM) {
        double shared = reports;
        for (int lag = 0; lag < LAGS; lag++) shared += 2 * count[lag] * alike(lag, triedM);
        shared /= (double) reports * reports;
        double squares = 0;
        for (int lag = 0; lag < COMPARED; lag++) {
            if (variance[lag] == 0) continue;
            double rho = (alike(lag, triedM) - shared) / (1 - shared);
            double expected = 0;
            double power = 1;
            for (int n = 0; n < TERMS; n++) expected += (power *= rho) * product[n][lag];
            squares += Math.pow(residual[lag] - expected, 2) / variance[lag];
        }
        return squares;
    }

    private static double alike(int lag, double triedM) {
        return Math.exp(-(lag + 0.5) * LAG_M / triedM);
    }
}
