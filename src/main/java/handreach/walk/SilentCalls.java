package handreach.walk;

import handreach.reach.SubProgress;
import handreach.uncertainty.Odds;
import java.util.Collection;
import java.util.List;

/**
 * Whether calls without an answer stand in the log. A log that leaves them out is too hopeful, and by itself looks like that of a
 * better site: only the prediction, or whoever kept the log, can tell.
 *
 * @param expected silent calls that the prediction leads to expect, counted as independent reports
 * @param found silent calls in the log, counted likewise
 * @param deviation how far the found ones lie from the expected by chance, standard deviations; negative: too few
 */
public record SilentCalls(double expected, double found, double deviation) {
    /** One log in twenty of honest ones over a site as predicted. */
    private static final double TOO_FEW = -1.644854;
    /** Share of the silent calls that is thought to be missing from a log of which nothing is known; our suggestion. */
    private static final double SHARE_LEFT_OUT = 0.7;

    /**
     * Counts the silent calls against the prediction.
     *
     * @shape  n reports with their weights in, one record out; pure
     * @unit   reports; deviation in standard deviations
     * @valid  at least one report. A level log without any level below a floor takes the weakest level for its floor
     * @error  the prediction is taken as right: at a site 6 dB better than predicted honest logs have fewer, too
     * @source sum of independent trials (Poisson's binomial), normal approximation
     */
    static SilentCalls of(List<WalkPair> pairs, double[] weight) {
        double floorDbm = floorDbm(pairs);
        double expected = 0;
        double found = 0;
        double variance = 0;
        for (int i = 0; i < weight.length; i++) {
            WalkPair pair = pairs.get(i);
            double silent =
                    1 - Odds.ofMargin(overEdgeDb(pair, floorDbm), pair.link().spreadDb());
            expected += weight[i] * silent;
            variance += weight[i] * silent * (1 - silent);
            if (isSilent(pair)) found += weight[i];
        }
        return new SilentCalls(expected, found, variance > 0 ? (found - expected) / Math.sqrt(variance) : 0);
    }

    /** Predicted level over the one from which a call is heard at all, dB. */
    private static double overEdgeDb(WalkPair pair, double floorDbm) {
        return isOfLevels(pair) ? pair.predictedDbm() - floorDbm : pair.marginDb();
    }

    private static boolean isOfLevels(WalkPair pair) {
        return pair.isLevel() || pair.heard().kind() == Reception.Kind.BELOW;
    }

    private static boolean isSilent(WalkPair pair) {
        return pair.heard().kind() == Reception.Kind.BELOW || !isOfLevels(pair) && !pair.copied();
    }

    private static double floorDbm(List<WalkPair> pairs) {
        return pairs.stream()
                .filter(pair -> pair.heard().kind() == Reception.Kind.BELOW)
                .mapToDouble(pair -> pair.heard().value())
                .max()
                .orElseGet(() -> pairs.stream()
                        .filter(WalkPair::isLevel)
                        .mapToDouble(pair -> pair.heard().value())
                        .min()
                        .orElse(0));
    }

    /** Fewer than chance would leave, were the prediction right. */
    public boolean isTooFew() {
        return deviation < TOO_FEW;
    }

    /**
     * Doubt of the common shift where it is not known whether silent calls stand in the log: how far the shift would move if seven of
     * ten were missing, each of the others then standing for more.
     *
     * @shape  the reports and the calibration by them in, scalar out; one more calibration
     * @unit   dB
     * @valid  at least one report
     * @error  takes the missing ones as missing at random
     * @source weights by one over the share logged; common practice, no source
     */
    static double doubtDb(
            List<WalkPair> pairs,
            Calibration asLogged,
            Priors priors,
            Collection<String> carries,
            SubProgress learning) {
        double[] whole = asLogged.weights();
        for (int i = 0; i < whole.length; i++) if (isSilent(pairs.get(i))) whole[i] /= 1 - SHARE_LEFT_OUT;
        Calibration asIfWhole = Calibration.of(pairs, whole, priors, carries, learning);
        return Math.abs(asIfWhole.commonDb() - asLogged.commonDb());
    }
}
