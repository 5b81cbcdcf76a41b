package handreach.uncertainty;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Odds of chance made stricter when several comparisons are looked at together. */
public final class Holm {
    private Holm() {}

    /**
     * Adjusted odds, in the order given; compare each with the level for the whole family.
     *
     * @shape  n in, n out; O(n log n), pure
     * @unit   odds 0 to 1
     * @valid  every input from 0 to 1; outside: IllegalArgumentException
     * @error  rounding only
     * @source Holm, Scandinavian Journal of Statistics 6 (1979) 65
     */
    public static List<Double> adjusted(List<Double> odds) {
        for (double p : odds) if (!(p >= 0 && p <= 1)) throw new IllegalArgumentException("odds " + p);
        int n = odds.size();
        List<Integer> order = IntStream.range(0, n)
                .boxed()
                .sorted(Comparator.comparing(odds::get))
                .toList();
        List<Double> result = new ArrayList<>(Collections.nCopies(n, 0.0));
        double highest = 0;
        for (int rank = 0; rank < n; rank++) {
            highest = Math.max(highest, Math.min(1, (n - rank) * odds.get(order.get(rank))));
            result.set(order.get(rank), highest);
        }
        return List.copyOf(result);
    }
}
