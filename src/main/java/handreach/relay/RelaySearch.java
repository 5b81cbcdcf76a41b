package handreach.relay;

import handreach.reach.Progress;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Looks for the ground where relays serve best. One relay: every allowed cell is tried, so the answer is the best there is. More:
 * each is added where it helps most among all cells, then each is taken out and put back where it helps most until nothing moves;
 * a bound says how much better any other choice could be. Not for use by several threads.
 */
public final class RelaySearch {
    private static final int MOST_EXCHANGES = 6;
    private static final int MOST_FRONT = 12;
    private static final int MOST_STARTS = 4;

    private final AllowedGround ground;
    private final TalkTable talks;
    private final Progress progress;
    /** One relay in each allowed cell, once computed. */
    private SiteScore[] single;

    private RelaySearch(AllowedGround ground, TalkTable talks, Progress progress) {
        this.ground = ground;
        this.talks = talks;
        this.progress = progress;
    }

    /** Over a survey, on allowed ground, against what people get without a relay. */
    public static RelaySearch of(HopSurvey survey, AllowedGround ground, DirectVerdict verdict, Progress progress) {
        if (!survey.grid().equals(ground.grid()))
            throw new IllegalArgumentException("survey and ground differ in their grids");
        return new RelaySearch(ground, new TalkTable(survey, verdict), progress);
    }

    /**
     * The best cell for one relay, by this order of service levels; of equals, the northernmost, then westernmost.
     *
     * @shape  all allowed cells, talks each; exhaustive
     * @unit   none
     * @valid  empty when no cell is allowed
     * @error  that of the survey's losses; none in the search
     * @source every cell is compared
     */
    public Optional<SiteScore> best(Comparator<ServiceLevel> order) {
        return first(single(), order);
    }

    /** The best cells for one relay, each at least so far from the better ones, at most so many. */
    public List<SiteScore> ranked(Comparator<ServiceLevel> order, double apartM, int most) {
        List<SiteScore> sites = new ArrayList<>();
        List<Integer> taken = new ArrayList<>();
        while (sites.size() < most) {
            BitSet left = ground.awayFrom(taken, apartM);
            SiteScore[] rest = java.util.Arrays.stream(single())
                    .filter(score -> left.get(score.cell()))
                    .toArray(SiteScore[]::new);
            Optional<SiteScore> next = first(rest, order);
            if (next.isEmpty()) break;
            sites.add(next.get());
            taken.add(next.get().cell());
        }
        return sites;
    }

    /** Cells for one relay where neither the share served nor the worst talk can be bettered without the other falling. */
    public List<SiteScore> front() {
        List<SiteScore> front = new ArrayList<>();
        Comparator<SiteScore> order = Comparator.<SiteScore>comparingDouble(
                        s -> s.service().share())
                .thenComparingDouble(s -> s.service().worst())
                .reversed()
                .thenComparingInt(SiteScore::cell);
        double worst = Double.NEGATIVE_INFINITY;
        for (SiteScore score : java.util.Arrays.stream(single()).sorted(order).toList()) {
            if (!front.isEmpty() && score.service().worst() <= worst) continue;
            front.add(score);
            worst = score.service().worst();
            if (front.size() == MOST_FRONT) break;
        }
        return front;
    }

    /** How far a demand can be served at all: the best standing any allowed cell gives it. */
    public Optional<SiteScore> bestFor(int demand) {
        BitSet cells = ground.awayFrom(List.of(), 0);
        int best = -1;
        for (int cell = cells.nextSetBit(0); cell >= 0; cell = cells.nextSetBit(cell + 1))
            if (best < 0 || talks.hop(demand, cell, false) > talks.hop(demand, best, false)) best = cell;
        if (best < 0) return Optional.empty();
        double standing = talks.hop(demand, best, false);
        double sure = talks.hop(demand, best, true);
        double wanted = talks.wanted();
        return Optional.of(
                new SiteScore(best, new ServiceLevel(standing >= wanted ? 1 : 0, sure >= wanted ? 1 : 0, standing)));
    }

    /** How one relay in each cell would do, for a map. */
    public SiteMap map() {
        return SiteMap.of(ground, RelaySet.none(talks).service(), single());
    }

    /**
     * So many relays together.
     *
     * @shape  relays times rounds times all cells
     * @unit   none
     * @valid  1 to 4 relays; fewer come back when no further one is allowed or none helps
     * @error  {@link RelayChoice#boundShare} says how much larger a share could be at most
     * @source greedy choice for submodular coverage and its bounds: Nemhauser, Wolsey and Fisher, Mathematical Programming 14
     *     (1978) 265 (from memory)
     */
    public RelayChoice choose(int count) {
        if (count < 1 || count > 4) throw new IllegalArgumentException(count + " relays");
        CoverageBound bound = new CoverageBound(talks, ground, count);
        bound.tighten(RelaySet.none(talks));
        RelaySet best = grown(RelaySet.none(talks), count, bound);
        // one relay in the middle can be a trap that no single move leaves: start from the ends as well
        for (int demand :
                count > 1 && !best.service().servesAllPessimistically() ? hardest(best) : List.<Integer>of()) {
            Optional<SiteScore> near = bestFor(demand);
            if (near.isEmpty()) continue;
            RelaySet other = grown(RelaySet.none(talks).plus(near.get().cell(), progress), count, bound);
            if (ServiceLevel.BY_SERVED.compare(other.service(), best.service()) > 0) best = other;
        }
        return new RelayChoice(best.cells(), best.service(), bound.share(), withoutEach(best));
    }

    /** Both ends of the talks that do worst, at most so many. */
    private List<Integer> hardest(RelaySet set) {
        return IntStream.range(0, talks.count())
                .boxed()
                .sorted(Comparator.comparingDouble(t -> set.bestMedian()[t]))
                .flatMap(t -> java.util.stream.Stream.of(talks.a(t), talks.b(t)))
                .distinct()
                .limit(MOST_STARTS)
                .toList();
    }

    private RelaySet grown(RelaySet start, int count, CoverageBound bound) {
        RelaySet set = start;
        while (set.size() < count) {
            Optional<SiteScore> next = next(set);
            if (next.isEmpty()) break;
            if (set.size() > 0 && ServiceLevel.BY_SERVED.compare(next.get().service(), set.service()) <= 0) break;
            set = set.plus(next.get().cell(), progress);
            bound.tighten(set);
        }
        return exchanged(set, bound);
    }

    private Optional<SiteScore> next(RelaySet set) {
        return best(set, ground.awayFrom(set.cells(), ground.separationM()), ServiceLevel.BY_SERVED);
    }

    private RelaySet exchanged(RelaySet start, CoverageBound bound) {
        RelaySet set = start;
        for (int round = 0; round < MOST_EXCHANGES && set.size() > 1; round++) {
            boolean moved = false;
            for (int i = 0; i < set.size(); i++) {
                List<Integer> rest = new ArrayList<>(set.cells());
                rest.remove(i);
                if (!isConnected(rest)) continue;
                RelaySet fewer = RelaySet.of(talks, rest, progress);
                Optional<SiteScore> other = next(fewer);
                if (other.isEmpty()
                        || ServiceLevel.BY_SERVED.compare(other.get().service(), set.service()) <= 0) continue;
                set = fewer.plus(other.get().cell(), progress);
                bound.tighten(set);
                moved = true;
            }
            if (!moved) break;
        }
        return set;
    }

    private boolean isConnected(List<Integer> cells) {
        if (!talks.isChained()) return true;
        List<Integer> reached = new ArrayList<>(cells.subList(0, Math.min(1, cells.size())));
        for (int i = 0; i < reached.size(); i++)
            for (int other : cells)
                if (!reached.contains(other) && talks.links(reached.get(i), progress)[other] >= talks.wanted())
                    reached.add(other);
        return reached.size() == cells.size();
    }

    private List<ServiceLevel> withoutEach(RelaySet set) {
        List<ServiceLevel> fails = new ArrayList<>();
        for (int i = 0; i < set.size(); i++) {
            List<Integer> rest = new ArrayList<>(set.cells());
            rest.remove(i);
            fails.add(RelaySet.of(talks, rest, progress).service());
        }
        return fails;
    }

    private SiteScore[] single() {
        if (single == null) single = scores(RelaySet.none(talks), ground.awayFrom(List.of(), 0));
        return single;
    }

    private Optional<SiteScore> best(RelaySet set, BitSet cells, Comparator<ServiceLevel> order) {
        return set.size() == 0 ? best(order) : first(scores(set, cells), order);
    }

    private static Optional<SiteScore> first(SiteScore[] scores, Comparator<ServiceLevel> order) {
        SiteScore best = null;
        for (SiteScore score : scores)
            if (best == null || order.compare(score.service(), best.service()) > 0) best = score;
        return Optional.ofNullable(best);
    }

    /** In the order of the cells, whoever computes them. */
    private SiteScore[] scores(RelaySet set, BitSet cells) {
        progress.goOn();
        int[] candidate = cells.stream().filter(set::hears).toArray();
        int piece = 4096;
        int pieces = (candidate.length + piece - 1) / piece;
        SiteScore[] scores = new SiteScore[candidate.length];
        IntStream.range(0, pieces).parallel().forEach(number -> {
            double[] room = new double[talks.demands()];
            int end = Math.min(candidate.length, (number + 1) * piece);
            for (int i = number * piece; i < end; i++)
                scores[i] = new SiteScore(candidate[i], set.with(candidate[i], room));
        });
        return scores;
    }
}
