package handreach.atlas;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Positions that together reach the most targets, each added where it helps most.
 *
 * @param picks in the order in which they were added
 * @param most no set of as many positions reaches more targets than this
 */
public record RelayCover(List<Pick> picks, int most) {
    public RelayCover {
        picks = List.copyOf(picks);
    }

    /**
     * A position of the set.
     *
     * @param position its index in the list of positions
     * @param gained targets that none before it reaches
     * @param covered targets that it and those before it reach
     */
    public record Pick(int position, int gained, int covered) {}

    /** What a position could still add when it was last looked at: never less than what it can add now. */
    private record Hope(int position, int gain, int seen) {}

    /**
     * The lazy greedy search: gains only shrink as the set grows, so a position whose last known gain is below the best is not looked at
     * again.
     *
     * @shape  positions and number wanted in, at most as many picks out; O(bits) and little more
     * @unit   targets
     * @valid  fewer picks where no position adds anything; equal gains go to the position that comes first
     * @error  at least 1 − (1 − 1/k)^k, above 63 %, of what the best set of k reaches; {@link #most} bounds this very search: the least,
     *     over the sets on the way, of what a set reaches plus the k largest gains that are left to it
     * @source G. L. Nemhauser, L. A. Wolsey, M. L. Fisher, Mathematical Programming 14 (1978) 265; M. Minoux, Optimization Techniques, LNCIS 7
     *     (1978) 234 for the lazy form, both from memory
     */
    public static RelayCover greedy(AtlasGrid targets, List<PositionFigures> positions, int loadout, int wanted) {
        PriorityQueue<Hope> hopes = new PriorityQueue<>(
                Comparator.comparingInt((Hope h) -> -h.gain()).thenComparingInt(Hope::position));
        BitSet covered = new BitSet(targets.cells().count());
        for (int i = 0; i < positions.size(); i++)
            if (positions.get(i).isKnown())
                hopes.add(new Hope(i, gain(targets, positions.get(i), loadout, covered), 0));
        List<Pick> picks = new ArrayList<>();
        int most = bound(hopes, 0, wanted);
        while (picks.size() < wanted && !hopes.isEmpty()) {
            Hope best = hopes.poll();
            if (best.seen() < picks.size()) {
                int gain = gain(targets, positions.get(best.position()), loadout, covered);
                hopes.add(new Hope(best.position(), gain, picks.size()));
                continue;
            }
            if (best.gain() == 0) break;
            cover(targets, positions.get(best.position()), loadout, covered);
            picks.add(new Pick(best.position(), best.gain(), covered.cardinality()));
            most = Math.min(most, bound(hopes, covered.cardinality(), wanted));
        }
        List<Hope> now = new ArrayList<>();
        for (Hope hope : hopes)
            now.add(new Hope(
                    hope.position(), gain(targets, positions.get(hope.position()), loadout, covered), picks.size()));
        return new RelayCover(picks, Math.min(most, bound(now, covered.cardinality(), wanted)));
    }

    private static int bound(Collection<Hope> hopes, int covered, int wanted) {
        return covered
                + hopes.stream()
                        .mapToInt(h -> -h.gain())
                        .sorted()
                        .limit(wanted)
                        .map(gain -> -gain)
                        .sum();
    }

    private static int gain(AtlasGrid targets, PositionFigures position, int loadout, BitSet covered) {
        int[] gain = new int[1];
        own(targets, position, covered, own -> gain[0]++);
        position.loadouts().get(loadout).heard().each(targets.cells(), target -> {
            if (!covered.get(target)) gain[0]++;
        });
        return gain[0];
    }

    private static void cover(AtlasGrid targets, PositionFigures position, int loadout, BitSet covered) {
        own(targets, position, covered, covered::set);
        position.loadouts().get(loadout).heard().each(targets.cells(), covered::set);
    }

    /** The target in which the position itself lies, which its bits leave out where both are one place. */
    private static void own(
            AtlasGrid targets, PositionFigures position, BitSet covered, java.util.function.IntConsumer take) {
        int own = targets.cells().indexOf(position.at());
        boolean isOnePlace = targets.cells().positionOf(own).equals(position.at());
        if (isOnePlace && targets.isAsked(own) && !covered.get(own)) take.accept(own);
    }
}
