package handreach.relay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class AssignmentTest {
    private static final double ROUNDING = 1e-9;

    /** Talks by the sum of what both ends are worth less what the path needs: nearly so in the field. */
    private static AssignTable table(Random random, int people, int options, boolean isStar, double noiseDb) {
        AssignTable.Builder builder = new AssignTable.Builder();
        double[] burden = new double[options];
        double[] worthDb = new double[options];
        for (int o = 0; o < options; o++) {
            burden[o] = Math.floor(random.nextDouble() * 6) + 1;
            worthDb[o] = 1.5 * burden[o] + 4 * random.nextDouble();
        }
        for (int p = 0; p < people; p++) builder.person(burden, random.nextInt(options));
        for (int a = 0; a < people; a++)
            for (int b = a + 1; b < people; b++) {
                if (isStar && a > 0) continue;
                double needDb = 4 + 14 * random.nextDouble();
                double[][] spareDb = new double[options][options];
                for (double[] row : spareDb)
                    for (int o = 0; o < options; o++) row[o] = noiseDb * random.nextGaussian() - needDb;
                for (int i = 0; i < options; i++)
                    for (int j = 0; j < options; j++) spareDb[i][j] += worthDb[i] + worthDb[j];
                builder.talk(a, b, spareDb);
            }
        return builder.table();
    }

    /** Loadouts without any order, as no field has them: told, not searched for hours. */
    @Test
    void aSearchWithoutEndIsGivenUp() {
        AssignTable unordered = table(new Random(4), 40, 20, false, 9);
        AssignSearch search = new AssignSearch(unordered, 0, Optional.empty(), 2_000_000);
        assertThrows(TooManyChoices.class, search::best);
    }

    /** Every choice there is, the plain way. */
    private static List<int[]> all(AssignTable table) {
        List<int[]> all = new ArrayList<>(List.of(new int[table.people()]));
        for (int p = 0; p < table.people(); p++) {
            List<int[]> next = new ArrayList<>();
            for (int[] one : all)
                for (int o = 0; o < table.options(p); o++) {
                    int[] more = one.clone();
                    more[p] = o;
                    next.add(more);
                }
            all = next;
        }
        return all;
    }

    private static boolean serves(AssignTable table, int[] choice, double lackDb) {
        return table.wanted().stream().allMatch(talk -> talk.spareDb(choice[talk.a()], choice[talk.b()]) >= -lackDb);
    }

    private static double burden(AssignTable table, int[] choice) {
        return IntStream.range(0, choice.length)
                .mapToDouble(p -> table.burden(p, choice[p]))
                .sum();
    }

    private static int changes(AssignTable table, int[] choice) {
        return IntStream.range(0, choice.length)
                .map(p -> table.change(p, choice[p]))
                .sum();
    }

    private static double tightestDb(AssignTable table, int[] choice) {
        return table.wanted().stream()
                .mapToDouble(talk -> talk.spareDb(choice[talk.a()], choice[talk.b()]))
                .min()
                .orElseThrow();
    }

    private static Optional<int[]> exhaustive(AssignTable table, double lackDb, int[] unlike) {
        return all(table).stream()
                .filter(choice -> serves(table, choice, lackDb))
                .filter(choice -> unlike == null
                        || IntStream.range(0, choice.length)
                                .anyMatch(p -> table.burden(p, choice[p]) != table.burden(p, unlike[p])))
                .min(Comparator.comparingDouble((int[] choice) -> burden(table, choice))
                        .thenComparingInt(choice -> changes(table, choice))
                        .thenComparingDouble(choice -> -tightestDb(table, choice)));
    }

    private static void assertSame(AssignTable table, Optional<int[]> wanted, Optional<Assignment.Choice> found) {
        assertEquals(wanted.isPresent(), found.isPresent());
        if (wanted.isEmpty()) return;
        int[] choice =
                found.get().options().stream().mapToInt(Integer::intValue).toArray();
        assertEquals(burden(table, wanted.get()), found.get().burden(), ROUNDING);
        assertEquals(burden(table, wanted.get()), burden(table, choice), ROUNDING);
        assertEquals(changes(table, wanted.get()), changes(table, choice));
        assertEquals(
                tightestDb(table, wanted.get()),
                found.get().tightest().orElseThrow().spareDb(),
                ROUNDING);
    }

    @Test
    void agreesWithEveryChoiceTriedOnSmallCases() {
        int served = 0;
        int refused = 0;
        int saves = 0;
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            AssignTable table = table(
                    random,
                    2 + random.nextInt(4),
                    2 + random.nextInt(3),
                    random.nextBoolean(),
                    3 * random.nextDouble());
            AssignTable rest = table.withoutHopeless();
            Assignment found = Assignment.of(table);
            long hopeless = table.wanted().size() - rest.wanted().size();
            assertEquals(hopeless, found.hopeless().size(), "seed " + seed);
            if (rest.wanted().isEmpty()) {
                assertTrue(found.best().isEmpty());
                continue;
            }
            Optional<int[]> best = exhaustive(rest, 0, null);
            assertSame(rest, best, found.best());
            if (best.isEmpty()) {
                refused++;
                double lacks = -all(rest).stream()
                        .mapToDouble(choice -> tightestDb(rest, choice))
                        .max()
                        .orElseThrow();
                assertEquals(-lacks, found.together().orElseThrow().spareDb(), ROUNDING, "seed " + seed);
                continue;
            }
            served++;
            assertSame(rest, exhaustive(rest, 0, best.get()), found.next());
            Optional<int[]> more = exhaustive(rest, 1, null);
            assertSame(rest, more, found.oneMore());
            if (found.oneMore().get().burden() < found.best().get().burden()) saves++;
        }
        assertTrue(served > 100 && refused > 1 && saves > 20, served + ", " + refused + ", " + saves);
    }

    @Test
    void aDozenPeopleWithEightLoadoutsAreSettledInTime() {
        for (boolean isStar : new boolean[] {true, false})
            for (int seed = 0; seed < 6; seed++) {
                AssignTable table = table(new Random(seed), 12, 8, isStar, 1.5);
                assertTimeout(Duration.ofSeconds(5), () -> Assignment.of(table));
            }
    }

    /** One strong end serves a talk: the middle of a star takes the long whip, and nobody else has to. */
    @Test
    void theMiddleOfAStarCarriesForAll() {
        AssignTable.Builder builder = new AssignTable.Builder();
        for (int p = 0; p < 5; p++) builder.person(new double[] {1, 3}, 0);
        for (int b = 1; b < 5; b++) builder.talk(0, b, new double[][] {{-2, 2}, {2, 6}});
        Assignment found = Assignment.of(builder.table());
        assertEquals(List.of(1, 0, 0, 0, 0), found.best().orElseThrow().options());
        assertEquals(7, found.best().get().burden());
        // the next best adds one whip at the rim
        assertEquals(9, found.next().orElseThrow().burden());
    }

    @Test
    void aTalkThatNothingServesIsNamedAndTheRestIsAnswered() {
        AssignTable.Builder builder = new AssignTable.Builder();
        for (int p = 0; p < 3; p++) builder.person(new double[] {1, 3}, 0);
        builder.talk(0, 1, new double[][] {{-9, -7}, {-6, -4}});
        builder.talk(0, 2, new double[][] {{-1, 1}, {1, 3}});
        Assignment found = Assignment.of(builder.table());
        assertEquals(List.of(new Assignment.Short(0, 1, 1, 1, -4)), found.hopeless());
        assertEquals(5, found.best().orElseThrow().burden());
        assertFalse(found.best().get().options().equals(List.of(0, 0, 0)));
        assertEquals(3, found.oneMore().orElseThrow().burden(), "one decibel more saves the whip");
    }
}
