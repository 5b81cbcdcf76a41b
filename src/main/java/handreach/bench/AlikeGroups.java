package handreach.bench;

import handreach.uncertainty.Estimate;
import handreach.uncertainty.Holm;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Groups of antennas of one session that cannot be told apart from one another, all pairs judged together. */
final class AlikeGroups {
    private static final double LEVEL = 0.05;
    /** The largest groups of n antennas can number 3^(n/3): beyond this many, only runs of neighbours in level are sought. */
    private static final int MOST_FOR_ALL_GROUPS = 24;

    static final int MOST_ANTENNAS = 100;

    private final List<AntennaReadings> antennas;
    private final BitSet[] alike;
    private final List<BitSet> groups = new ArrayList<>();

    private AlikeGroups(List<AntennaReadings> antennas) {
        this.antennas = antennas;
        alike = new BitSet[antennas.size()];
        for (int i = 0; i < alike.length; i++) alike[i] = new BitSet();
    }

    /** Groups of two or more, strongest first; none above {@link #MOST_ANTENNAS} antennas. */
    static List<List<String>> of(LevelSession session) {
        List<AntennaReadings> antennas = session.antennas().stream()
                .sorted(Comparator.comparingDouble(AntennaReadings::mean).reversed())
                .toList();
        if (antennas.size() > MOST_ANTENNAS) return List.of();
        AlikeGroups work = new AlikeGroups(antennas);
        work.compareAll(session);
        if (antennas.size() <= MOST_FOR_ALL_GROUPS) {
            BitSet all = new BitSet();
            all.set(0, antennas.size());
            work.grow(new BitSet(), all, new BitSet());
        } else {
            work.runs();
        }
        return work.named();
    }

    /**
     * The control against each, and all pairs of the others, are two families: so a group never contradicts a verdict against
     * the control. A pair of which the scatter is not known is taken as alike.
     */
    private void compareAll(LevelSession session) {
        Optional<AntennaReadings> control = session.control();
        List<int[]> withControl = new ArrayList<>();
        List<int[]> others = new ArrayList<>();
        for (int i = 0; i < antennas.size(); i++)
            for (int j = i + 1; j < antennas.size(); j++) {
                boolean has =
                        control.isPresent() && (antennas.get(i) == control.get() || antennas.get(j) == control.get());
                (has ? withControl : others).add(new int[] {i, j});
            }
        compare(session, withControl);
        compare(session, others);
    }

    private void compare(LevelSession session, List<int[]> family) {
        List<int[]> judged = new ArrayList<>();
        List<Double> odds = new ArrayList<>();
        for (int[] pair : family) {
            Optional<Estimate> estimate = session.difference(antennas.get(pair[0]), antennas.get(pair[1]))
                    .estimate();
            if (estimate.isEmpty()) {
                join(pair);
                continue;
            }
            judged.add(pair);
            odds.add(estimate.get().twoSidedP());
        }
        List<Double> adjusted = Holm.adjusted(odds);
        for (int k = 0; k < judged.size(); k++) if (adjusted.get(k) >= LEVEL) join(judged.get(k));
    }

    private void join(int[] pair) {
        alike[pair[0]].set(pair[1]);
        alike[pair[1]].set(pair[0]);
    }

    /** Bron and Kerbosch, Communications of the ACM 16 (1973) 575, with a pivot: all largest groups of mutual neighbours. */
    private void grow(BitSet group, BitSet candidates, BitSet done) {
        if (candidates.isEmpty()) {
            if (done.isEmpty() && group.cardinality() > 1) groups.add((BitSet) group.clone());
            return;
        }
        BitSet toTry = (BitSet) candidates.clone();
        toTry.andNot(alike[pivot(candidates, done)]);
        for (int v = toTry.nextSetBit(0); v >= 0; v = toTry.nextSetBit(v + 1)) {
            BitSet larger = (BitSet) group.clone();
            larger.set(v);
            BitSet stillCandidates = (BitSet) candidates.clone();
            stillCandidates.and(alike[v]);
            BitSet stillDone = (BitSet) done.clone();
            stillDone.and(alike[v]);
            grow(larger, stillCandidates, stillDone);
            candidates.clear(v);
            done.set(v);
        }
    }

    private int pivot(BitSet candidates, BitSet done) {
        BitSet both = (BitSet) candidates.clone();
        both.or(done);
        int best = both.nextSetBit(0);
        int most = -1;
        for (int v = best; v >= 0; v = both.nextSetBit(v + 1)) {
            BitSet shared = (BitSet) candidates.clone();
            shared.and(alike[v]);
            if (shared.cardinality() > most) {
                most = shared.cardinality();
                best = v;
            }
        }
        return best;
    }

    /** Longest stretches, in order of level, in which every antenna is like every other. */
    private void runs() {
        int reached = 0;
        for (int start = 0; start < alike.length; start++) {
            int end = start + 1;
            while (end < alike.length && alike[end].get(start, end).cardinality() == end - start) end++;
            if (end - start > 1 && end > reached) {
                BitSet run = new BitSet();
                run.set(start, end);
                groups.add(run);
                reached = end;
            }
        }
    }

    private List<List<String>> named() {
        return groups.stream()
                .sorted(Comparator.comparingInt((BitSet g) -> g.nextSetBit(0)).thenComparingInt(BitSet::length))
                .map(g -> g.stream().mapToObj(i -> antennas.get(i).antenna()).toList())
                .toList();
    }
}
