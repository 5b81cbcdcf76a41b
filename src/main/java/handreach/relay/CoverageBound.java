package handreach.relay;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;

/**
 * What no choice of so many relays can exceed: share served by some set, plus the largest gains that any relays bring to it. It
 * holds for every set, as gains only shrink when a set grows; the least over the sets seen is kept.
 *
 * <p>Where relays pass to one another, a talk may enter by one and leave by another: then half its share is counted for each end
 * that is heard at all, which can only be too much.
 */
final class CoverageBound {
    private final TalkTable talks;
    private final int relays;
    private final long[] masks;
    private final double ceiling;
    private double share;

    CoverageBound(TalkTable talks, AllowedGround ground, int relays) {
        this.talks = talks;
        this.relays = relays;
        Set<Long> distinct = new HashSet<>();
        ground.awayFrom(java.util.List.of(), 0).stream().forEach(cell -> distinct.add(talks.served(cell)));
        this.masks = distinct.stream().mapToLong(mask -> mask).toArray();
        this.ceiling = ceiling();
        this.share = ceiling;
    }

    double share() {
        return share;
    }

    /** Talks that some relay, or some two of a chain, could serve at all. */
    private double ceiling() {
        double[] direct = talks.direct(false);
        long anywhere = 0;
        for (long mask : masks) anywhere |= mask;
        double sum = 0;
        for (int t = 0; t < talks.count(); t++) {
            long both = both(t);
            boolean servable =
                    direct[t] >= talks.wanted() || (talks.isChained() ? (anywhere & both) == both : anyHolds(both));
            if (servable) sum += talks.share(t);
        }
        return sum;
    }

    private boolean anyHolds(long both) {
        for (long mask : masks) if ((mask & both) == both) return true;
        return false;
    }

    private long both(int talk) {
        return 1L << talks.a(talk) | 1L << talks.b(talk);
    }

    void tighten(RelaySet set) {
        double[] gain = new double[masks.length];
        double base = talks.isChained() ? chained(set, gain) : single(set, gain);
        Arrays.sort(gain);
        double bound = base;
        for (int i = 0; i < relays && i < gain.length; i++) bound += gain[gain.length - 1 - i];
        share = Math.min(share, Math.min(ceiling, bound));
    }

    private double single(RelaySet set, double[] gain) {
        double base = 0;
        for (int t = 0; t < talks.count(); t++) {
            if (set.bestMedian()[t] >= talks.wanted()) {
                base += talks.share(t);
                continue;
            }
            long both = both(t);
            for (int m = 0; m < masks.length; m++) if ((masks[m] & both) == both) gain[m] += talks.share(t);
        }
        return base;
    }

    private double chained(RelaySet set, double[] gain) {
        double[] direct = talks.direct(false);
        long heard = 0;
        for (int cell : set.cells()) heard |= talks.served(cell);
        double base = 0;
        for (int t = 0; t < talks.count(); t++) {
            if (direct[t] >= talks.wanted()) {
                base += talks.share(t);
                continue;
            }
            for (long end : new long[] {1L << talks.a(t), 1L << talks.b(t)}) {
                if ((heard & end) != 0) base += talks.share(t) / 2;
                else for (int m = 0; m < masks.length; m++) if ((masks[m] & end) != 0) gain[m] += talks.share(t) / 2;
            }
        }
        return base;
    }
}
