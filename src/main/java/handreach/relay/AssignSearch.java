package handreach.relay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Branch and bound over what each person may still carry. Options that no partner can match are struck out as soon as one is chosen
 * (arc consistency). The burden cannot fall below the least for a tree of the talks alone, which is found exactly from its leaves up;
 * the tightest talk cannot have more to spare than its best remaining pair of options.
 */
final class AssignSearch {
    /** Burdens closer than this are alike. */
    private static final double SAME_BURDEN = 1e-6;
    /** Room for the changes below one step of burden. */
    private static final long STEP = 1000;

    private static final double ROUNDING_DB = 1e-9;
    /** Pairs of options looked at in one search, in all its branches: some seconds. */
    private static final long MOST_LOOKS = 100_000_000L;

    private final AssignTable table;
    private final double leastDb;
    private final Optional<Assignment.Choice> unlike;
    private final long mostLooks;
    /** Burden in steps, with the changes below; [person][option]. */
    private final long[][] cost;

    private final int[][] talksOf;
    private int[] found;
    private long foundCost = Long.MAX_VALUE;
    /** First the least cost is found, then, among all that cost no more, the one whose tightest talk has most to spare. */
    private boolean isByTightest;

    private double foundTightestDb = Double.NEGATIVE_INFINITY;
    private long looks;

    /**
     * A search.
     *
     * @param lackDb by how much each talk may fall short
     * @param unlike a choice from which the burden of at least one person must differ
     */
    AssignSearch(AssignTable table, double lackDb, Optional<Assignment.Choice> unlike) {
        this(table, lackDb, unlike, MOST_LOOKS);
    }

    /** @param mostLooks after which it is given up */
    AssignSearch(AssignTable table, double lackDb, Optional<Assignment.Choice> unlike, long mostLooks) {
        this.table = table;
        this.mostLooks = mostLooks;
        this.leastDb = -lackDb - ROUNDING_DB;
        this.unlike = unlike;
        this.cost = new long[table.people()][];
        for (int p = 0; p < cost.length; p++) {
            cost[p] = new long[table.options(p)];
            for (int o = 0; o < cost[p].length; o++) cost[p][o] = steps(p, o) * STEP + table.change(p, o);
        }
        List<AssignTable.Wanted> talks = table.wanted();
        this.talksOf = IntStream.range(0, table.people())
                .mapToObj(p -> IntStream.range(0, talks.size())
                        .filter(t -> talks.get(t).a() == p || talks.get(t).b() == p)
                        .toArray())
                .toArray(int[][]::new);
    }

    private long steps(int person, int option) {
        return Math.round(table.burden(person, option) / SAME_BURDEN);
    }

    Optional<Assignment.Choice> best() {
        List<long[]> starts = starts();
        for (long[] left : starts) search(left);
        if (found == null) return Optional.empty();
        isByTightest = true;
        for (long[] left : starts) search(left);
        return Optional.of(table.choice(Arrays.stream(found).boxed().toList()));
    }

    /** What everybody may carry; where somebody's burden must differ, once for each person with only the options that differ. */
    private List<long[]> starts() {
        long[] all = new long[table.people()];
        for (int p = 0; p < all.length; p++) all[p] = (1L << table.options(p)) - 1;
        List<long[]> starts = new ArrayList<>();
        if (unlike.isEmpty()) starts.add(all);
        for (int p = 0; unlike.isPresent() && p < all.length; p++) {
            long[] left = all.clone();
            long was = steps(p, unlike.get().options().get(p));
            for (int o = 0; o < cost[p].length; o++) if (steps(p, o) == was) left[p] &= ~(1L << o);
            if (left[p] != 0) starts.add(left);
        }
        List<Integer> talks = IntStream.range(0, table.wanted().size()).boxed().toList();
        starts.removeIf(left -> !strike(left, talks));
        return starts;
    }

    private void search(long[] left) {
        for (AssignTable.Wanted talk : table.wanted())
            looks += (long) Long.bitCount(left[talk.a()]) * Long.bitCount(left[talk.b()]);
        if (looks > mostLooks) throw new TooManyChoices();
        long bound = bound(left);
        if (bound > foundCost || bound == foundCost && !isByTightest) return;
        double tightestDb = tightestDb(left);
        if (isByTightest && tightestDb <= foundTightestDb + ROUNDING_DB) return;
        int person = open(left);
        if (person < 0) {
            found = Arrays.stream(left).mapToInt(Long::numberOfTrailingZeros).toArray();
            foundCost = bound;
            foundTightestDb = tightestDb;
            return;
        }
        for (int option : byCost(person, left[person])) {
            long[] next = left.clone();
            next[person] = 1L << option;
            if (strike(next, Arrays.stream(talksOf[person]).boxed().toList())) search(next);
        }
    }

    /**
     * The person whose cheapest option goes together worst with what the others carry cheapest, of equals the one with the fewest
     * options left; -1 where all are settled.
     */
    private int open(long[] left) {
        double[] weight = new double[left.length];
        for (int p = 0; p < left.length; p++) weight[p] = 1;
        for (AssignTable.Wanted talk : table.wanted())
            if (Long.bitCount(left[talk.a()]) > 1 || Long.bitCount(left[talk.b()]) > 1) {
                double more = together(talk, left) - least(talk.a(), left[talk.a()]) - least(talk.b(), left[talk.b()]);
                weight[talk.a()] += more;
                weight[talk.b()] += more;
            }
        int best = -1;
        for (int p = 0; p < left.length; p++) {
            int count = Long.bitCount(left[p]);
            if (count < 2) continue;
            if (best < 0 || weight[p] / count > weight[best] / Long.bitCount(left[best])) best = p;
        }
        return best;
    }

    private List<Integer> byCost(int person, long left) {
        List<Integer> options = new ArrayList<>();
        for (int o = 0; o < cost[person].length; o++) if ((left >> o & 1) != 0) options.add(o);
        options.sort(Comparator.comparingLong(o -> cost[person][o]));
        return options;
    }

    /** Strikes out options without a match, starting from these talks; false where somebody has none left. */
    private boolean strike(long[] left, List<Integer> talks) {
        boolean[] waits = new boolean[table.wanted().size()];
        java.util.ArrayDeque<Integer> queue = new java.util.ArrayDeque<>(talks);
        for (int t : talks) waits[t] = true;
        while (!queue.isEmpty()) {
            int t = queue.poll();
            waits[t] = false;
            AssignTable.Wanted talk = table.wanted().get(t);
            for (boolean isFirst : new boolean[] {true, false}) {
                int person = isFirst ? talk.a() : talk.b();
                long kept = matched(talk, isFirst, left);
                if (kept == 0) return false;
                if (kept == left[person]) continue;
                left[person] = kept;
                for (int other : talksOf[person])
                    if (other != t && !waits[other]) {
                        waits[other] = true;
                        queue.add(other);
                    }
            }
        }
        return true;
    }

    private long matched(AssignTable.Wanted talk, boolean isFirst, long[] left) {
        long mine = left[isFirst ? talk.a() : talk.b()];
        long theirs = left[isFirst ? talk.b() : talk.a()];
        long kept = 0;
        for (long rest = mine; rest != 0; rest &= rest - 1) {
            int o = Long.numberOfTrailingZeros(rest);
            for (long others = theirs; others != 0; others &= others - 1) {
                int p = Long.numberOfTrailingZeros(others);
                if ((isFirst ? talk.spareDb(o, p) : talk.spareDb(p, o)) >= leastDb) {
                    kept |= 1L << o;
                    break;
                }
            }
        }
        return kept;
    }

    /** The least cost if only the talks of a tree had to be served: those first whose cheapest ends go together worst. */
    private long bound(long[] left) {
        List<AssignTable.Wanted> talks = table.wanted();
        long[] least = new long[left.length];
        for (int p = 0; p < left.length; p++) least[p] = least(p, left[p]);
        long[] more = new long[talks.size()];
        List<Integer> order = new ArrayList<>();
        for (int t = 0; t < more.length; t++) {
            AssignTable.Wanted talk = talks.get(t);
            more[t] = together(talk, left) - least[talk.a()] - least[talk.b()];
            order.add(t);
        }
        order.sort(Comparator.comparingLong((Integer t) -> more[t]).reversed());
        int[] part = IntStream.range(0, left.length).toArray();
        List<List<Integer>> tree = new ArrayList<>();
        for (int p = 0; p < left.length; p++) tree.add(new ArrayList<>());
        for (int t : order) {
            int a = root(part, talks.get(t).a());
            int b = root(part, talks.get(t).b());
            if (a == b) continue;
            part[a] = b;
            tree.get(talks.get(t).a()).add(t);
            tree.get(talks.get(t).b()).add(t);
        }
        long sum = 0;
        for (int p = 0; p < left.length; p++) {
            if (part[p] != p) continue;
            long best = Long.MAX_VALUE;
            for (long one : below(p, -1, tree, left)) best = Math.min(best, one);
            sum += best;
        }
        return sum;
    }

    private static int root(int[] part, int person) {
        int at = person;
        while (part[at] != at) at = part[at];
        return at;
    }

    /** Least cost of a person and all that hang on them in the tree, by the person's option; the largest number where that is out. */
    private long[] below(int person, int from, List<List<Integer>> tree, long[] left) {
        long[] sum = new long[cost[person].length];
        Arrays.fill(sum, Long.MAX_VALUE);
        for (long rest = left[person]; rest != 0; rest &= rest - 1) {
            int o = Long.numberOfTrailingZeros(rest);
            sum[o] = cost[person][o];
        }
        for (int t : tree.get(person)) {
            if (t == from) continue;
            AssignTable.Wanted talk = table.wanted().get(t);
            boolean isFirst = talk.a() == person;
            int child = isFirst ? talk.b() : talk.a();
            long[] theirs = below(child, t, tree, left);
            for (long rest = left[person]; rest != 0; rest &= rest - 1) {
                int o = Long.numberOfTrailingZeros(rest);
                long best = Long.MAX_VALUE;
                for (long others = left[child]; others != 0; others &= others - 1) {
                    int q = Long.numberOfTrailingZeros(others);
                    if ((isFirst ? talk.spareDb(o, q) : talk.spareDb(q, o)) >= leastDb)
                        best = Math.min(best, theirs[q]);
                }
                sum[o] = best == Long.MAX_VALUE || sum[o] == Long.MAX_VALUE ? Long.MAX_VALUE : sum[o] + best;
            }
        }
        return sum;
    }

    private long least(int person, long left) {
        long least = Long.MAX_VALUE;
        for (long rest = left; rest != 0; rest &= rest - 1)
            least = Math.min(least, cost[person][Long.numberOfTrailingZeros(rest)]);
        return least;
    }

    private long together(AssignTable.Wanted talk, long[] left) {
        long least = Long.MAX_VALUE;
        for (long mine = left[talk.a()]; mine != 0; mine &= mine - 1) {
            int a = Long.numberOfTrailingZeros(mine);
            for (long theirs = left[talk.b()]; theirs != 0; theirs &= theirs - 1) {
                int b = Long.numberOfTrailingZeros(theirs);
                if (talk.spareDb(a, b) >= leastDb) least = Math.min(least, cost[talk.a()][a] + cost[talk.b()][b]);
            }
        }
        return least;
    }

    /** The most that the tightest talk can still have to spare. */
    private double tightestDb(long[] left) {
        double tightest = Double.POSITIVE_INFINITY;
        for (AssignTable.Wanted talk : table.wanted()) {
            double most = Double.NEGATIVE_INFINITY;
            for (long mine = left[talk.a()]; mine != 0; mine &= mine - 1)
                for (long theirs = left[talk.b()]; theirs != 0; theirs &= theirs - 1)
                    most = Math.max(
                            most, talk.spareDb(Long.numberOfTrailingZeros(mine), Long.numberOfTrailingZeros(theirs)));
            tightest = Math.min(tightest, most);
        }
        return tightest;
    }
}
