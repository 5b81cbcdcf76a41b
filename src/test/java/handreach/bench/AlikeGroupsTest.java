package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.uncertainty.Holm;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class AlikeGroupsTest {
    private static LevelSession session(Random random, int antennas, int trials) {
        Bench bench = new Bench().header();
        for (int i = 0; i < antennas; i++) {
            double level = -42 + 4 * random.nextDouble();
            for (int t = 0; t < trials; t++)
                bench.level("a" + i, "box", level + 0.7 * random.nextGaussian(), 100 * i + t);
        }
        LevelSession session = new LevelSession(Declarations.none());
        for (Reading r : bench.file().readings())
            session.add(r, r.value(), r.measured().step());
        return session;
    }

    /** Oracle: every subset of the antennas, kept if all its pairs are alike and nothing can be added. */
    @Test
    void agreesWithTryingAllSubsets() {
        Random random = new Random(21);
        int several = 0;
        for (int round = 0; round < 25; round++) {
            LevelSession session = session(random, 7, 4);
            Set<Set<String>> expected = bruteForce(session);
            Set<Set<String>> found = new HashSet<>();
            for (List<String> group : AlikeGroups.of(session)) found.add(Set.copyOf(group));
            assertEquals(expected, found);
            if (expected.size() > 1) several++;
        }
        assertTrue(several > 5);
    }

    private static Set<Set<String>> bruteForce(LevelSession session) {
        List<AntennaReadings> all = session.antennas();
        int n = all.size();
        List<Double> odds = new ArrayList<>();
        for (int i = 0; i < n; i++)
            for (int j = i + 1; j < n; j++)
                odds.add(session.difference(all.get(i), all.get(j))
                        .estimate()
                        .orElseThrow()
                        .twoSidedP());
        List<Double> adjusted = Holm.adjusted(odds);
        boolean[][] alike = new boolean[n][n];
        int k = 0;
        for (int i = 0; i < n; i++)
            for (int j = i + 1; j < n; j++) alike[i][j] = alike[j][i] = adjusted.get(k++) >= 0.05;
        List<Integer> whole = new ArrayList<>();
        for (int set = 1; set < 1 << n; set++) if (Integer.bitCount(set) > 1 && isAlike(set, alike)) whole.add(set);
        Set<Set<String>> groups = new HashSet<>();
        for (int set : whole) {
            if (whole.stream().anyMatch(other -> other != set && (other & set) == set)) continue;
            Set<String> names = new HashSet<>();
            for (int i = 0; i < n; i++)
                if ((set >> i & 1) == 1) names.add(all.get(i).antenna());
            groups.add(names);
        }
        return groups;
    }

    private static boolean isAlike(int set, boolean[][] alike) {
        for (int i = 0; i < alike.length; i++)
            for (int j = i + 1; j < alike.length; j++)
                if ((set >> i & 1) == 1 && (set >> j & 1) == 1 && !alike[i][j]) return false;
        return true;
    }

    @Test
    void noGroupContradictsAVerdictAgainstTheControl() {
        Random random = new Random(31);
        for (int round = 0; round < 40; round++) {
            Bench bench = new Bench().header();
            for (int i = 0; i < 6; i++) {
                double level = -42 + 2.5 * random.nextDouble();
                for (int t = 0; t < 4; t++)
                    bench.level("a" + i, "box", level + 0.4 * random.nextGaussian(), 100 * i + t);
            }
            MountResult mount = bench.against("a0").mounts().get(0);
            for (AntennaResult antenna : mount.antennas())
                assertEquals(
                        antenna.toldApart(),
                        mount.alike().stream().noneMatch(g -> g.contains("a0") && g.contains(antenna.antenna())));
        }
    }

    @Test
    void manyAntennasAreGroupedInRunsOfLevel() {
        List<List<String>> groups = AlikeGroups.of(session(new Random(4), 40, 3));
        assertFalse(groups.isEmpty());
        for (List<String> group : groups) assertTrue(group.size() >= 2);
    }
}
