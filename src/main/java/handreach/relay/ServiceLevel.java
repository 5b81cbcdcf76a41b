package handreach.relay;

import handreach.uncertainty.Odds;
import java.util.Comparator;

/**
 * How well a set of relays does.
 *
 * @param share weighted share of the talks at the wanted odds or better
 * @param pessimisticShare the same at the pessimistic end of the doubt that is common to all places
 * @param worst standing of the worst talk: margin over spread
 */
public record ServiceLevel(double share, double pessimisticShare, double worst) {
    /** Rounding of sums of weights. */
    private static final double SAME = 1e-9;

    /** First who is served, then who is served still at the pessimistic end, then the worst talk. */
    public static final Comparator<ServiceLevel> BY_SERVED = (a, b) -> {
        if (Math.abs(a.share - b.share) > SAME) return Double.compare(a.share, b.share);
        if (Math.abs(a.pessimisticShare - b.pessimisticShare) > SAME)
            return Double.compare(a.pessimisticShare, b.pessimisticShare);
        return Double.compare(a.worst, b.worst);
    };

    /** First the worst talk. */
    public static final Comparator<ServiceLevel> BY_WORST = Comparator.comparingDouble(ServiceLevel::worst);

    /** Odds of the worst talk, by its weaker hop and direction. */
    public double worstOdds() {
        if (worst == Double.NEGATIVE_INFINITY) return 0;
        return worst == Double.POSITIVE_INFINITY ? 1 : Odds.ofMargin(worst, 1);
    }

    public boolean servesAll() {
        return share > 1 - SAME;
    }

    boolean servesAllPessimistically() {
        return pessimisticShare > 1 - SAME;
    }
}
