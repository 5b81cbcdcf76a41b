package handreach.walk;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.reach.Progress;
import handreach.reach.SiteCalibration;
import handreach.reach.SubProgress;
import handreach.terrain.Cover;
import handreach.uncertainty.Interval;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What a walk teaches about the loss at a site: a Bayesian update of a common shift, of a shift for each cover, of the carry loss
 * of each position, and of the spread between places. Immutable.
 */
public final class Calibration {
    private static final int COARSE = 11;
    private static final int FINE = 19;
    private static final double COARSE_WIDTH = 3;
    /** Share of the work after which the reports are weighed, as seen on long walks. */
    private static final double WEIGHED = 0.5;
    /** Share of the fits after the coarse row. */
    private static final double FITTED_COARSELY = 0.35;

    private static final double NEGLIGIBLE = 12;
    /** A calibration says nothing about ground much beyond the walked. */
    private static final double BEYOND_WALK_M = 500;

    private final ShiftTerms terms;
    private final List<WalkPair> pairs;
    private final double[] weight;
    private final double[] mean;
    private final RealMatrix covariance;
    private final double spreadDb;
    private final Interval spread95Db;

    private Calibration(ShiftTerms terms, List<WalkPair> pairs, double[] weight, Posterior posterior) {
        this.terms = terms;
        this.pairs = pairs;
        this.weight = weight;
        this.mean = posterior.mean;
        this.covariance = posterior.covariance;
        this.spreadDb = posterior.spreadDb;
        this.spread95Db = posterior.spread95Db;
    }

    /** The shifts and the spread after the walk. */
    private record Posterior(double[] mean, RealMatrix covariance, double spreadDb, Interval spread95Db) {}

    /**
     * Learns from reports.
     *
     * <p>Levels are normal about the shifted prediction, levels below a floor are censored, copy and no copy are probit; one in
     * fifty reports is held to be wild. For each of a row of spreads the shifts are found by Newton's steps and given a bell curve
     * at the top; the spreads are then weighed by their evidence.
     *
     * @shape  n reports in, one calibration out; some 50 fits of some steps, each O(n); pure; stops between steps where nobody wants it
     * @unit   dB; a positive shift weakens
     * @valid  at least one report; outside: IllegalArgumentException. Further carry positions stay as they were believed
     * @error  95 % intervals of shift and spread hold the truth in 90 to 99 % of 200 simulated walks, of levels and of copies
     * @source Bayes' rule; Laplace's approximation (MacKay 2003, chapter 27, from memory); probit: Bliss, Annals of Applied Biology
     *     22 (1935) 134 (from memory)
     */
    public static Calibration of(
            List<WalkPair> pairs,
            double decorrelationM,
            Priors priors,
            Collection<String> furtherCarries,
            Progress progress) {
        if (pairs.isEmpty()) throw new IllegalArgumentException("nothing to learn from");
        SubProgress learning = new SubProgress(progress, "learning from the reports", 0, 1);
        double[] weight = Thinning.weights(pairs, decorrelationM, learning.part(0, WEIGHED));
        return of(pairs, weight, priors, furtherCarries, learning.part(WEIGHED, 1));
    }

    /** The same from reports whose weights are known. */
    static Calibration of(
            List<WalkPair> pairs,
            double[] weight,
            Priors priors,
            Collection<String> furtherCarries,
            SubProgress learning) {
        ShiftTerms terms = new ShiftTerms(pairs, furtherCarries);
        BiasFit fit = new BiasFit(pairs, weight, terms, priors);
        double believedDb =
                pairs.stream().mapToDouble(p -> p.link().spreadDb()).average().orElseThrow();
        Believed believed = new Believed(Math.log(Math.max(1, believedDb)), priors.spreadLog());
        SpreadRow coarse = SpreadRow.of(fit, believed, believed.span(), COARSE, learning.part(0, FITTED_COARSELY));
        SpreadRow fine = SpreadRow.of(fit, believed, coarse.worthwhile(), FINE, learning.part(FITTED_COARSELY, 1));
        return new Calibration(terms, List.copyOf(pairs), weight, fine.posterior(terms.count()));
    }

    /** The same with a further doubt of the common shift, dB. */
    Calibration widened(double furtherDb) {
        if (furtherDb == 0) return this;
        RealMatrix wider = covariance.copy();
        wider.addToEntry(0, 0, furtherDb * furtherDb);
        return new Calibration(terms, pairs, weight, new Posterior(mean, wider, spreadDb, spread95Db));
    }

    /** Shift of the mix of covers and carry positions that was walked, dB. */
    double commonDb() {
        return combined(mix()).lossDb();
    }

    /** Weight of each report. */
    double[] weights() {
        return weight.clone();
    }

    /** Logarithm of the spread before the walk: its middle and its standard uncertainty. */
    private record Believed(double middle, double width) {
        Interval span() {
            return new Interval(middle - COARSE_WIDTH * width, middle + COARSE_WIDTH * width);
        }

        double logOdds(double logSpread) {
            return -Math.pow((logSpread - middle) / width, 2) / 2;
        }
    }

    /** Fits along a row of spreads with the weight of each. */
    private static final class SpreadRow {
        private final double[] logSpread;
        private final double[] logWeight;
        private final List<BiasFit.Top> tops = new ArrayList<>();

        private SpreadRow(int count) {
            logSpread = new double[count];
            logWeight = new double[count];
        }

        static SpreadRow of(BiasFit fit, Believed believed, Interval span, int count, SubProgress fitting) {
            SpreadRow row = new SpreadRow(count);
            double[] start = new double[fit.termCount()];
            for (int i = 0; i < count; i++) {
                row.logSpread[i] = span.low() + span.width() * i / (count - 1);
                BiasFit.Top top = fit.at(Math.exp(row.logSpread[i]), start, fitting);
                row.tops.add(top);
                start = top.shift();
                row.logWeight[i] = top.logEvidence() + believed.logOdds(row.logSpread[i]);
                fitting.done((i + 1.0) / count);
            }
            return row;
        }

        private double best() {
            double best = Double.NEGATIVE_INFINITY;
            for (double w : logWeight) best = Math.max(best, w);
            return best;
        }

        /** The part of the row with a weight worth counting, one step wider on both sides. */
        Interval worthwhile() {
            int first = logWeight.length - 1;
            int last = 0;
            for (int i = 0; i < logWeight.length; i++)
                if (logWeight[i] > best() - NEGLIGIBLE) {
                    first = Math.min(first, i);
                    last = Math.max(last, i);
                }
            return new Interval(logSpread[Math.max(0, first - 1)], logSpread[Math.min(logSpread.length - 1, last + 1)]);
        }

        Posterior posterior(int termCount) {
            double[] share = new double[logWeight.length];
            double sum = 0;
            for (int i = 0; i < share.length; i++) sum += share[i] = Math.exp(logWeight[i] - best());
            double[] mean = new double[termCount];
            double spread = 0;
            for (int i = 0; i < share.length; i++) {
                share[i] /= sum;
                spread += share[i] * Math.exp(logSpread[i]);
                for (int t = 0; t < termCount; t++)
                    mean[t] += share[i] * tops.get(i).shift()[t];
            }
            double[][] covariance = new double[termCount][termCount];
            for (int i = 0; i < share.length; i++)
                for (int a = 0; a < termCount; a++)
                    for (int b = 0; b < termCount; b++)
                        covariance[a][b] += share[i]
                                * (tops.get(i).covariance().getEntry(a, b)
                                        + (tops.get(i).shift()[a] - mean[a])
                                                * (tops.get(i).shift()[b] - mean[b]));
            Interval interval = new Interval(Math.exp(quantile(share, 0.025)), Math.exp(quantile(share, 0.975)));
            return new Posterior(mean, new Array2DRowRealMatrix(covariance, false), spread, interval);
        }

        /** Each point of the row stands for the step around it. */
        private double quantile(double[] share, double part) {
            double step = logSpread[1] - logSpread[0];
            double below = 0;
            for (int i = 0; i < share.length; i++) {
                if (below + share[i] >= part) return logSpread[i] + step * ((part - below) / share[i] - 0.5);
                below += share[i];
            }
            return logSpread[logSpread.length - 1];
        }
    }

    /** Shift of the loss by these terms, with what is not known about it. */
    SiteCalibration.Shift combined(double[] row) {
        double sum = 0;
        for (int i = 0; i < row.length; i++) sum += row[i] * mean[i];
        return new SiteCalibration.Shift(sum, Math.sqrt(Math.max(0, dot(row, covariance.operate(row)))));
    }

    static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) sum += a[i] * b[i];
        return sum;
    }

    public double spreadDb() {
        return spreadDb;
    }

    public Interval spread95Db() {
        return spread95Db;
    }

    /** How many independent reports the walk was worth. */
    public double effectiveCount() {
        double sum = 0;
        for (double w : weight) sum += w;
        return sum;
    }

    ShiftTerms terms() {
        return terms;
    }

    /** A report beside the prediction as the calibration shifts it. */
    public WalkPair corrected(WalkPair pair) {
        double shift = combined(terms.row(terms.of(pair))).lossDb();
        return pair.with(pair.marginDb() - shift, spreadDb);
    }

    /**
     * The value that reach and relay use. Its common shift is that of the mix of covers and carry positions that was walked, and
     * the others are differences from that mix, so that the parts are nearly independent of each other.
     */
    public SiteCalibration site(String source, java.time.LocalDate day) {
        double[] mixed = mix();
        int covers = Cover.values().length;
        Map<Cover, SiteCalibration.Shift> byCover = new EnumMap<>(Cover.class);
        for (Cover cover : Cover.values()) {
            double[] row = new double[mixed.length];
            for (int t = 1; t <= covers; t++) row[t] = -mixed[t];
            row[terms.cover(cover)]++;
            byCover.put(cover, combined(row));
        }
        Map<String, SiteCalibration.Shift> byCarry = new LinkedHashMap<>();
        for (String carry : terms.carries()) {
            double[] row = new double[mixed.length];
            for (int t = 1 + covers; t < row.length; t++) row[t] = -mixed[t] / 2;
            row[terms.carry(carry)]++;
            byCarry.put(carry, combined(row));
        }
        int count = (int) Math.max(1, Math.round(effectiveCount()));
        SiteCalibration.Origin origin = new SiteCalibration.Origin(source, day, count);
        return new SiteCalibration(combined(mixed), byCover, byCarry, spreadDb, origin, area());
    }

    /** The average row of all reports: one, shares of the covers, and two ends shared among the carry positions. */
    private double[] mix() {
        double[] mixed = new double[terms.count()];
        double sum = effectiveCount();
        for (int i = 0; i < weight.length; i++)
            for (int term : terms.of(pairs.get(i))) if (term >= 0) mixed[term] += weight[i] / sum;
        return mixed;
    }

    private SiteCalibration.Area area() {
        double latitude = 0;
        double east = 0;
        double first = pairs.get(0).spot().at().longitudeDeg();
        for (WalkPair pair : pairs) {
            latitude += pair.spot().at().latitudeDeg() / pairs.size();
            east += Math.IEEEremainder(pair.spot().at().longitudeDeg() - first, 360) / pairs.size();
        }
        Position middle = new Position(latitude, first + east);
        double farthest = pairs.stream()
                .mapToDouble(pair -> GeodesicLine.distanceM(middle, pair.spot().at()))
                .max()
                .orElseThrow();
        return new SiteCalibration.Area(middle, farthest + BEYOND_WALK_M);
    }
}
