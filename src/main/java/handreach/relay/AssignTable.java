package handreach.relay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Who may carry what, what it costs, and what every wanted talk has to spare with each choice: all that an assignment needs to know,
 * as plain arrays. People and options are numbers. Immutable once built.
 */
public final class AssignTable {
    /** Options of one person are kept as the bits of one word. */
    public static final int MOST_OPTIONS = 62;

    private final double[][] burden;
    private final int[][] change;
    private final List<Wanted> wanted;

    /**
     * Talks that two people must have.
     *
     * @param a number of the first
     * @param b number of the second
     * @param spareDb by the option of the first, then of the second: how far the weakest of their talks is above what is wanted, dB;
     *     below 0 it falls short, minus infinity over unknown ground
     */
    record Wanted(int a, int b, double[][] spareDb) {
        double spareDb(int optionA, int optionB) {
            return spareDb[optionA][optionB];
        }

        /** The most that any choice leaves to spare. */
        double mostDb() {
            double most = Double.NEGATIVE_INFINITY;
            for (double[] row : spareDb) for (double one : row) most = Math.max(most, one);
            return most;
        }
    }

    private AssignTable(double[][] burden, int[][] change, List<Wanted> wanted) {
        this.burden = burden;
        this.change = change;
        this.wanted = List.copyOf(wanted);
    }

    /** Puts a table together, person by person, then talk by talk. */
    public static final class Builder {
        private final List<double[]> burden = new ArrayList<>();
        private final List<int[]> change = new ArrayList<>();
        private final List<Wanted> wanted = new ArrayList<>();

        /**
         * One more person.
         *
         * @param burdens of each option, from 0
         * @param planned the option that the plan has; -1 where it is not among them
         */
        public void person(double[] burdens, int planned) {
            if (burdens.length == 0 || burdens.length > MOST_OPTIONS)
                throw new IllegalArgumentException(burdens.length + " options");
            for (double one : burdens) if (!(one >= 0)) throw new IllegalArgumentException("burden " + one);
            int[] changes = new int[burdens.length];
            for (int o = 0; o < changes.length; o++) changes[o] = o == planned ? 0 : 1;
            burden.add(burdens.clone());
            change.add(changes);
        }

        /** What the talks of two people have to spare, by the option of the first, then of the second; both are there already. */
        public void talk(int a, int b, double[][] spareDb) {
            if (a < 0 || b <= a || b >= burden.size()) throw new IllegalArgumentException(a + " with " + b);
            if (spareDb.length != burden.get(a).length) throw new IllegalArgumentException(spareDb.length + " rows");
            double[][] copy = new double[spareDb.length][];
            for (int o = 0; o < copy.length; o++) {
                if (spareDb[o].length != burden.get(b).length)
                    throw new IllegalArgumentException(spareDb[o].length + " columns");
                copy[o] = spareDb[o].clone();
            }
            wanted.add(new Wanted(a, b, copy));
        }

        public AssignTable table() {
            return new AssignTable(burden.toArray(double[][]::new), change.toArray(int[][]::new), wanted);
        }
    }

    /** The same without the talks that no choice serves. */
    AssignTable withoutHopeless() {
        return new AssignTable(
                burden, change, wanted.stream().filter(one -> one.mostDb() >= 0).toList());
    }

    /** What certain options, one a person, come to. */
    public Assignment.Choice choice(List<Integer> options) {
        double sum = 0;
        for (int p = 0; p < options.size(); p++) sum += burden[p][options.get(p)];
        List<Assignment.Short> talks = wanted.stream()
                .map(talk -> new Assignment.Short(
                        talk.a(),
                        talk.b(),
                        options.get(talk.a()),
                        options.get(talk.b()),
                        talk.spareDb(options.get(talk.a()), options.get(talk.b()))))
                .sorted(Comparator.comparingDouble(Assignment.Short::spareDb))
                .toList();
        return new Assignment.Choice(options, sum, talks);
    }

    int people() {
        return burden.length;
    }

    int options(int person) {
        return burden[person].length;
    }

    double burden(int person, int option) {
        return burden[person][option];
    }

    /** 1 where the option is not what the plan has. */
    int change(int person, int option) {
        return change[person][option];
    }

    List<Wanted> wanted() {
        return wanted;
    }
}
