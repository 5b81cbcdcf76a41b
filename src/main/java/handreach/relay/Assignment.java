package handreach.relay;

import java.util.List;
import java.util.Optional;

/**
 * Who carries what with the least burden in all, so that every wanted talk that can be served is served.
 *
 * @param best the least burden; of equals, the one that changes least of the plan, then the one whose tightest talk has most to spare;
 *     empty where talks that could be served one by one cannot be served together, or where none can
 * @param next the best of those in which at least one person has another burden; empty where there is none
 * @param oneMore the best if every talk had one decibel more; empty where there is none even then
 * @param hopeless talks that no choice serves, as pairs of people, and what they lack at best
 * @param together where not all the others can be served at once: the tightest of them in the choice that lacks least
 */
public record Assignment(
        Optional<Choice> best,
        Optional<Choice> next,
        Optional<Choice> oneMore,
        List<Short> hopeless,
        Optional<Short> together) {
    /** One decibel, for the question what it would save. */
    private static final double ONE_DB = 1;

    /**
     * One way to do it.
     *
     * @param options number of the option of each person
     * @param burden sum over the people
     * @param talks what every two people who must talk have to spare, the tightest first
     */
    public record Choice(List<Integer> options, double burden, List<Short> talks) {
        public Choice {
            options = List.copyOf(options);
            talks = List.copyOf(talks);
        }

        /** The talk with the least to spare. */
        public Optional<Short> tightest() {
            return talks.stream().findFirst();
        }
    }

    /**
     * What two people have to spare.
     *
     * @param a number of the first
     * @param b number of the second
     * @param optionA what the first carries
     * @param optionB what the second carries
     * @param spareDb of the weakest of their talks, dB above what is wanted; below 0 it is what they lack
     */
    public record Short(int a, int b, int optionA, int optionB, double spareDb) {}

    public Assignment {
        hopeless = List.copyOf(hopeless);
    }

    /**
     * Finds it exactly.
     *
     * @shape  people with options and talks in, one assignment out; a search that is exponential at worst and cut short by bounds:
     *     12 people with 8 options each take well below a second
     * @unit   burden without unit, decibels
     * @valid  any table
     * @error  none: every choice is either tried or shown to be no better; burdens that differ by less than a millionth are alike
     * @source branch and bound over arc-consistent options (Mackworth 1977, AC-3); bounds in {@link AssignSearch}
     */
    public static Assignment of(AssignTable table) {
        List<Short> hopeless = table.wanted().stream()
                .filter(one -> one.mostDb() < 0)
                .map(Assignment::best)
                .toList();
        AssignTable rest = table.withoutHopeless();
        if (rest.wanted().isEmpty() && !hopeless.isEmpty())
            return new Assignment(Optional.empty(), Optional.empty(), Optional.empty(), hopeless, Optional.empty());
        Optional<Choice> best = new AssignSearch(rest, 0, Optional.empty()).best();
        if (best.isEmpty())
            return new Assignment(
                    best, best, Optional.empty(), hopeless, leastLacking(rest).flatMap(Choice::tightest));
        return new Assignment(
                best,
                new AssignSearch(rest, 0, best).best(),
                new AssignSearch(rest, ONE_DB, Optional.empty()).best(),
                hopeless,
                Optional.empty());
    }

    private static Short best(AssignTable.Wanted talk) {
        Short best = new Short(talk.a(), talk.b(), 0, 0, Double.NEGATIVE_INFINITY);
        for (int a = 0; a < talk.spareDb().length; a++)
            for (int b = 0; b < talk.spareDb()[a].length; b++)
                if (talk.spareDb(a, b) > best.spareDb()) best = new Short(talk.a(), talk.b(), a, b, talk.spareDb(a, b));
        return best;
    }

    /** The choice in which the talk that lacks most lacks least, by halving what may be lacking. */
    private static Optional<Choice> leastLacking(AssignTable table) {
        double[] lacks = table.wanted().stream()
                .flatMap(talk -> java.util.Arrays.stream(talk.spareDb()))
                .flatMapToDouble(java.util.Arrays::stream)
                .filter(spare -> spare < 0 && Double.isFinite(spare))
                .map(spare -> -spare)
                .sorted()
                .distinct()
                .toArray();
        int low = 0;
        int high = lacks.length - 1;
        Optional<Choice> found = Optional.empty();
        while (low <= high) {
            int middle = (low + high) >>> 1;
            Optional<Choice> choice = new AssignSearch(table, lacks[middle], Optional.empty()).best();
            if (choice.isPresent()) {
                found = choice;
                high = middle - 1;
            } else low = middle + 1;
        }
        return found;
    }
}
