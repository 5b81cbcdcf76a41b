package handreach.walk;

import handreach.uncertainty.Interval;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How good the prediction was.
 *
 * @param all all reports together
 * @param groups one for each loadout and direction, in the order met
 * @param reliability odds promised against share found
 * @param sectors range by bearing from the base
 * @param worst the reports farthest from their prediction, worst first
 */
public record Comparison(
        Score all, List<Score> groups, List<Reliability> reliability, List<Sector> sectors, List<WalkPair> worst) {
    private static final int WORST = 5;
    private static final int BINS = 5;
    private static final int SECTORS = 8;

    /**
     * Figures of one group of reports.
     *
     * @param loadout loadout, empty for all
     * @param way direction, empty for all
     * @param levels errors of the levels, empty with fewer than two
     * @param copies promised against found
     * @param brier mean square of odds minus outcome, 0 at best; 0.25 is what odds of one half always get
     */
    public record Score(
            String loadout, Optional<Direction> way, Optional<LevelScore> levels, CopyTable copies, double brier) {}

    /**
     * Errors of levels, predicted minus walked, dB.
     *
     * @param count levels
     * @param meanDb mean error, positive: too hopeful
     * @param standardDeviationDb scatter about the mean, with n − 1
     * @param rmseDb root of the mean square
     */
    public record LevelScore(int count, double meanDb, double standardDeviationDb, double rmseDb) {
        /**
         * Figures of some errors.
         *
         * @shape  n errors in, one record out; pure
         * @unit   dB
         * @valid  at least two; outside: IllegalArgumentException
         * @error  rounding only
         * @source RMSE² = mean² + sd² (n − 1)/n, the definition
         */
        public static LevelScore of(double[] errorDb) {
            int n = errorDb.length;
            if (n < 2) throw new IllegalArgumentException(n + " levels");
            double sum = 0;
            double squares = 0;
            for (double e : errorDb) sum += e;
            double mean = sum / n;
            for (double e : errorDb) squares += (e - mean) * (e - mean);
            return new LevelScore(n, mean, Math.sqrt(squares / (n - 1)), Math.sqrt(mean * mean + squares / n));
        }
    }

    /** One bin of odds: how many reports, mean of the odds, share that was copy. */
    public record Reliability(double low, double high, int count, double meanOdds, double shareFound) {
        private static final double NORMAL_975 = 1.959964;

        /**
         * Interval that holds the true share with 95 %.
         *
         * @shape  scalars in, one interval out; pure
         * @unit   shares, 0 to 1
         * @valid  at least one report
         * @error  as if the reports were independent: near-by ones are not, and the true interval is wider
         * @source score interval, Wilson, Journal of the American Statistical Association 22 (1927) 209 (from memory)
         */
        public Interval share95() {
            double z2 = NORMAL_975 * NORMAL_975 / count;
            double middle = (shareFound + z2 / 2) / (1 + z2);
            double half = NORMAL_975 * Math.sqrt(shareFound * (1 - shareFound) / count + z2 / (4 * count)) / (1 + z2);
            return new Interval(Math.max(0, middle - half), Math.min(1, middle + half));
        }
    }

    /**
     * Range in one eighth of the compass.
     *
     * @param bearingDeg middle of the sector
     * @param reports reports in it
     * @param farthestCopyM farthest copy found
     * @param nearestFailureM nearest failure
     * @param farthestPromiseM farthest report at which copy was promised
     */
    public record Sector(
            double bearingDeg,
            int reports,
            OptionalDouble farthestCopyM,
            OptionalDouble nearestFailureM,
            OptionalDouble farthestPromiseM) {}

    /** Compares reports with their predictions; at least one. */
    public static Comparison of(List<WalkPair> pairs) {
        if (pairs.isEmpty()) throw new IllegalArgumentException("nothing to compare");
        Map<List<Object>, List<WalkPair>> groups = new LinkedHashMap<>();
        for (WalkPair pair : pairs)
            groups.computeIfAbsent(List.of(pair.link().loadout(), pair.link().way()), key -> new ArrayList<>())
                    .add(pair);
        List<Score> scores = new ArrayList<>();
        groups.forEach((key, members) -> scores.add(score(
                members.get(0).link().loadout(),
                Optional.of(members.get(0).link().way()),
                members)));
        return new Comparison(
                score("", Optional.empty(), pairs), scores, reliability(pairs), sectors(pairs), worst(pairs));
    }

    private static Score score(String loadout, Optional<Direction> way, List<WalkPair> pairs) {
        double[] errors = pairs.stream()
                .filter(WalkPair::isLevel)
                .mapToDouble(WalkPair::errorDb)
                .toArray();
        Optional<LevelScore> levels = errors.length < 2 ? Optional.empty() : Optional.of(LevelScore.of(errors));
        return new Score(loadout, way, levels, CopyTable.of(pairs), brier(pairs));
    }

    static double brier(List<WalkPair> pairs) {
        double[] odds = pairs.stream().mapToDouble(WalkPair::odds).toArray();
        boolean[] found = new boolean[odds.length];
        for (int i = 0; i < odds.length; i++) found[i] = pairs.get(i).copied();
        return brier(odds, found);
    }

    /**
     * Brier score of odds against outcomes.
     *
     * @shape  n odds and n outcomes in, one score out; pure
     * @unit   odds 0 to 1; result 0 (best) to 1
     * @valid  at least one; outside: IllegalArgumentException
     * @error  rounding only
     * @source Brier, Monthly Weather Review 78 (1950) 1, in its form for one of two outcomes
     */
    public static double brier(double[] odds, boolean[] found) {
        if (odds.length == 0 || odds.length != found.length) throw new IllegalArgumentException(odds.length + " odds");
        double sum = 0;
        for (int i = 0; i < odds.length; i++) sum += Math.pow(odds[i] - (found[i] ? 1 : 0), 2);
        return sum / odds.length;
    }

    private static List<Reliability> reliability(List<WalkPair> pairs) {
        List<Reliability> bins = new ArrayList<>();
        for (int b = 0; b < BINS; b++) {
            double low = (double) b / BINS;
            double high = (double) (b + 1) / BINS;
            boolean isLast = b == BINS - 1;
            List<WalkPair> in = pairs.stream()
                    .filter(p -> p.odds() >= low && (p.odds() < high || isLast))
                    .toList();
            if (in.isEmpty()) continue;
            double mean = in.stream().mapToDouble(WalkPair::odds).average().orElseThrow();
            double share = (double) in.stream().filter(WalkPair::copied).count() / in.size();
            bins.add(new Reliability(low, high, in.size(), mean, share));
        }
        return bins;
    }

    private static List<Sector> sectors(List<WalkPair> pairs) {
        List<Sector> sectors = new ArrayList<>();
        double width = 360.0 / SECTORS;
        for (int s = 0; s < SECTORS; s++) {
            int number = s;
            List<WalkPair> in = pairs.stream()
                    .filter(p ->
                            Math.floorMod((int) Math.floor(p.spot().bearingDeg() / width + 0.5), SECTORS) == number)
                    .toList();
            if (in.isEmpty()) continue;
            sectors.add(new Sector(
                    s * width,
                    in.size(),
                    distances(in.stream().filter(WalkPair::copied).toList()).max(),
                    distances(in.stream().filter(p -> !p.copied()).toList()).min(),
                    distances(in.stream()
                                    .filter(p -> p.odds() >= CopyTable.PROMISED_FROM)
                                    .toList())
                            .max()));
        }
        return sectors;
    }

    private static java.util.stream.DoubleStream distances(List<WalkPair> pairs) {
        return pairs.stream().mapToDouble(p -> p.spot().distanceM());
    }

    /** By the size of the error for levels, and for copies by how sure the wrong promise was, on one scale of spreads. */
    private static List<WalkPair> worst(List<WalkPair> pairs) {
        return pairs.stream()
                .filter(p -> surprise(p) > 0)
                .sorted(Comparator.comparingDouble(Comparison::surprise).reversed())
                .limit(WORST)
                .toList();
    }

    private static double surprise(WalkPair pair) {
        double spread = Math.max(1, pair.link().spreadDb());
        if (pair.isLevel()) return Math.abs(pair.errorDb()) / spread;
        boolean promised = pair.odds() >= CopyTable.PROMISED_FROM;
        return promised == pair.copied() ? 0 : Math.abs(pair.marginDb()) / spread;
    }
}
