package handreach.relay;

import handreach.reach.Progress;
import java.util.ArrayList;
import java.util.List;

/**
 * Some relays in some cells, and what each talk gets from them. A talk takes the better of straight and any relay; over a relay
 * the weaker hop counts, over a chain the weakest. Immutable.
 */
final class RelaySet {
    private final TalkTable talks;
    private final List<Integer> cells;
    /** Links from each relay to every cell; null where relays do not pass to one another. */
    private final List<float[]> links;
    /** Best standing of each talk so far, at the median and at the pessimistic end. */
    private final double[][] best;
    /** Best standing from each demand into each relay, over other relays too; [end][relay][demand]. */
    private final double[][][] into;

    private RelaySet(TalkTable talks, List<Integer> cells, List<float[]> links, double[][] best, double[][][] into) {
        this.talks = talks;
        this.cells = cells;
        this.links = links;
        this.best = best;
        this.into = into;
    }

    static RelaySet none(TalkTable talks) {
        return new RelaySet(
                talks,
                List.of(),
                List.of(),
                new double[][] {talks.direct(false), talks.direct(true)},
                new double[2][0][]);
    }

    List<Integer> cells() {
        return cells;
    }

    int size() {
        return cells.size();
    }

    double[] bestMedian() {
        return best[0];
    }

    /** Whether a relay in this cell hears one of the set at the wanted odds; always, where they need not. */
    boolean hears(int cell) {
        if (!talks.isChained() || cells.isEmpty()) return true;
        for (float[] link : links) if (link[cell] >= talks.wanted()) return true;
        return false;
    }

    /** How the set would do with one more relay in this cell. */
    ServiceLevel with(int cell, double[] room) {
        double share = 0;
        double sure = 0;
        double worst = Double.POSITIVE_INFINITY;
        for (int end = 0; end < 2; end++) {
            into(cell, end, room);
            for (int t = 0; t < talks.count(); t++) {
                double value = Math.max(best[end][t], Math.min(room[talks.a(t)], room[talks.b(t)]));
                boolean served = value >= talks.wanted();
                if (end == 0) {
                    worst = Math.min(worst, value);
                    if (served) share += talks.share(t);
                } else if (served) sure += talks.share(t);
            }
        }
        return new ServiceLevel(share, sure, worst);
    }

    ServiceLevel service() {
        double share = 0;
        double sure = 0;
        double worst = Double.POSITIVE_INFINITY;
        for (int t = 0; t < talks.count(); t++) {
            worst = Math.min(worst, best[0][t]);
            if (best[0][t] >= talks.wanted()) share += talks.share(t);
            if (best[1][t] >= talks.wanted()) sure += talks.share(t);
        }
        return new ServiceLevel(share, sure, worst);
    }

    /** Best standing from each demand into a relay in this cell. */
    private void into(int cell, int end, double[] room) {
        for (int d = 0; d < room.length; d++) room[d] = talks.hop(d, cell, end == 1);
        for (int r = 0; r < links.size(); r++) {
            double link = links.get(r)[cell] - (end == 1 ? talks.linkPessimism() : 0);
            double[] over = into[end][r];
            for (int d = 0; d < room.length; d++) room[d] = Math.max(room[d], Math.min(over[d], link));
        }
    }

    RelaySet plus(int cell, Progress progress) {
        List<Integer> more = new ArrayList<>(cells);
        more.add(cell);
        List<float[]> linked = new ArrayList<>(links);
        double[][] better = new double[2][];
        double[][][] inner = new double[2][more.size()][];
        for (int end = 0; end < 2; end++) {
            double[] own = new double[talks.demands()];
            into(cell, end, own);
            better[end] = best[end].clone();
            for (int t = 0; t < talks.count(); t++)
                better[end][t] = Math.max(better[end][t], Math.min(own[talks.a(t)], own[talks.b(t)]));
            for (int r = 0; r < size(); r++) inner[end][r] = onward(r, cell, end, own);
            inner[end][size()] = own;
        }
        if (talks.isChained()) linked.add(talks.links(cell, progress));
        return new RelaySet(talks, List.copyOf(more), linked, better, inner);
    }

    private double[] onward(int relay, int cell, int end, double[] own) {
        double[] improved = into[end][relay].clone();
        if (!talks.isChained()) return improved;
        double link = links.get(relay)[cell] - (end == 1 ? talks.linkPessimism() : 0);
        for (int d = 0; d < improved.length; d++) improved[d] = Math.max(improved[d], Math.min(own[d], link));
        return improved;
    }

    static RelaySet of(TalkTable talks, List<Integer> cells, Progress progress) {
        RelaySet set = none(talks);
        for (int cell : cells) set = set.plus(cell, progress);
        return set;
    }
}
