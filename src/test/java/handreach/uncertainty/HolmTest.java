package handreach.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HolmTest {
    /** By hand, smallest first: 4·0.005, 3·0.01, 2·0.03, then 0.04 lifted to the 0.06 before it. */
    @Test
    void fourOddsByHand() {
        List<Double> found = Holm.adjusted(List.of(0.01, 0.04, 0.03, 0.005));
        assertEquals(0.03, found.get(0), 1e-15);
        assertEquals(0.06, found.get(1), 1e-15);
        assertEquals(0.06, found.get(2), 1e-15);
        assertEquals(0.02, found.get(3), 1e-15);
    }

    @Test
    void oneComparisonStaysAsItIs() {
        assertEquals(List.of(0.03), Holm.adjusted(List.of(0.03)));
        assertEquals(List.of(), Holm.adjusted(List.of()));
    }

    /** The step-down rule as Holm put it: reject in order as long as p(i) ≤ α/(n − i + 1). */
    @Test
    void agreesWithTheStepDownRule() {
        Random random = new Random(7);
        for (int round = 0; round < 500; round++) {
            int n = 1 + random.nextInt(9);
            List<Double> odds = random.doubles(n).map(x -> x * x * x).boxed().toList();
            List<Double> adjusted = Holm.adjusted(odds);
            for (double level : new double[] {0.01, 0.05, 0.2}) {
                List<Double> sorted = odds.stream().sorted().toList();
                int rejected = 0;
                while (rejected < n && sorted.get(rejected) <= level / (n - rejected)) rejected++;
                double highest = rejected == 0 ? -1 : sorted.get(rejected - 1);
                for (int i = 0; i < n; i++) assertEquals(odds.get(i) <= highest, adjusted.get(i) <= level);
            }
        }
    }

    @Test
    void neverMoreLenientThanAlone() {
        List<Double> odds = List.of(0.2, 0.001, 0.7, 0.04);
        List<Double> adjusted = Holm.adjusted(odds);
        for (int i = 0; i < 4; i++) assertTrue(adjusted.get(i) >= odds.get(i) && adjusted.get(i) <= 1);
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Holm.adjusted(List.of(0.5, Double.NaN)));
        assertThrows(IllegalArgumentException.class, () -> Holm.adjusted(List.of(1.5)));
    }
}
