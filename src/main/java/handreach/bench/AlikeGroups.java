package handreach.bench;

import handreach.uncertainty.Estimate;
import handreach.uncertainty.Holm;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Groups of antennas of one session that cannot be told apart from one another, all pairs judged together. */
final class AlikeGroups {
    private static final double LEVEL = 0.05;
    /** The largest groups of n antennas can number 3^(n/3): beyond this many, only runs of neighbours in level are sought. */
    private static final int MOST_FOR_ALL_GROUPS = 24;

    static final int MOST_ANTENNAS = 100;

    private final List<AntennaReadings> antennas;
    private final CommonScatter common;
    private final BitSet[] alike;
    private final List<BitSet> groups = new ArrayList<>();

    private AlikeGroups(LevelSession session, List<AntennaReadings> antennas) {
        this.antennas = antennas;
        this.common = new CommonScatter(session, antennas);
        alike = new BitSet[antennas.size()];
        for (int i = 0; i < alike.length; i++) alike[i] = new BitSet();
    }

    /** Groups of two or more, strongest first; none above {@link #MOST_ANTENNAS} antennas. The verdicts are those against the control. */
    static List<List<String>> of(LevelSession session, List<AntennaResult> verdicts) {
        Map<String, AntennaResult> byName = new HashMap<>();
        for (AntennaResult result : verdicts) byName.put(LevelSession.identity(result.antenna()), result);
        List<AntennaReadings> antennas = session.antennas().stream()
                .sorted(Comparator.comparingDouble((AntennaReadings a) -> level(session, byName, a))
                        .reversed())
                .toList();
        if (antennas.size() > MOST_ANTENNAS) return List.of();
        AlikeGroups work = new AlikeGroups(session, antennas);
        work.compareAll(session, byName);
        if (antennas.size() <= MOST_FOR_ALL_GROUPS) {
            BitSet all = new BitSet();
            all.set(0, antennas.size());
            work.grow(new BitSet(), all, new BitSet());
        } else {
            work.runs();
        }
        return work.named();
    }

    /** Where an antenna stands in the order: by its delta, so that lost trials and drift do not move it. */
    private static double level(LevelSession session, Map<String, AntennaResult> byName, AntennaReadings antenna) {
        AntennaResult result = byName.get(LevelSession.identity(antenna.antenna()));
        if (result != null)
            return session.control().map(AntennaReadings::mean).orElse(0.0)
                    + result.delta().db();
        return antenna.mean();
    }

    /**
     * The control against each, and all pairs of the others, are two families. In the first the verdicts stand already, so a group
     * never contradicts them. In the second, two that lie on opposite sides of the control, each told apart from it, are told apart
     * by that: if they were alike, one of the two verdicts would be wrong in sign, an error that the first family already keeps
     * below 5 % (Holm's steps keep signs too: Shaffer, Annals of Statistics 8 (1980) 1342). The rest are judged by the scatter
     * common to the mounting, their odds made stricter together (Holm). A pair of which the scatter is not known, or with too few
     * trials for a verdict, is taken as alike.
     */
    private void compareAll(LevelSession session, Map<String, AntennaResult> byName) {
        Optional<AntennaReadings> control = session.control();
        List<int[]> others = new ArrayList<>();
        for (int i = 0; i < antennas.size(); i++)
            for (int j = i + 1; j < antennas.size(); j++) {
                int[] pair = {i, j};
                AntennaResult one =
                        byName.get(LevelSession.identity(antennas.get(i).antenna()));
                AntennaResult other =
                        byName.get(LevelSession.identity(antennas.get(j).antenna()));
                if (control.isPresent() && antennas.get(i) == control.get()) {
                    if (!other.toldApart()) join(pair);
                } else if (control.isPresent() && antennas.get(j) == control.get()) {
                    if (!one.toldApart()) join(pair);
                } else if (!areOpposite(one, other)) {
                    others.add(pair);
                }
            }
        compare(others);
    }

    private static boolean areOpposite(AntennaResult one, AntennaResult other) {
        return one != null
                && other != null
                && one.toldApart()
                && other.toldApart()
                && one.delta().db() * other.delta().db() < 0;
    }

    private void compare(List<int[]> family) {
        List<int[]> judged = new ArrayList<>();
        List<Double> odds = new ArrayList<>();
        for (int[] pair : family) {
            Optional<Estimate> estimate = common.judged(pair[0], pair[1]);
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
