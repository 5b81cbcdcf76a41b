package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.uncertainty.Estimate;
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
        LevelSession session = new LevelSession(Bench.declaringNothing());
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
            for (List<String> group : AlikeGroups.of(session, List.of())) found.add(Set.copyOf(group));
            assertEquals(expected, found);
            if (expected.size() > 1) several++;
        }
        assertTrue(several > 5);
    }

    private static Set<Set<String>> bruteForce(LevelSession session) {
        List<AntennaReadings> all = session.antennas();
        int n = all.size();
        double squares = 0;
        int degrees = 0;
        for (AntennaReadings one : all) {
            squares +=
                    (one.n() - 1) * Math.pow(one.summary().standardDeviationDb().getAsDouble(), 2);
            degrees += one.n() - 1;
        }
        List<Double> odds = new ArrayList<>();
        for (int i = 0; i < n; i++)
            for (int j = i + 1; j < n; j++) {
                double error = Math.sqrt(squares
                        / degrees
                        * (1.0 / all.get(i).n() + 1.0 / all.get(j).n()));
                odds.add(new Estimate(all.get(i).mean() - all.get(j).mean(), error, degrees).twoSidedP());
            }
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

    /**
     * Lost trials leave two antennas four turns in common, and the others scatter so widely that the two could not be told apart by
     * that; yet one is told apart above the control, the other below it, so they are not alike.
     */
    @Test
    void antennasOnOppositeSidesOfTheControlAreNeverAlike() {
        Bench bench = new Bench().header();
        double[] noise = {0.3, -0.4, 0.1, -0.2, 0.4, -0.3, 0.2, -0.1};
        for (int t = 0; t < 6; t++) {
            bench.level("helical", "hand", -42 + noise[t], t + 1);
            if (t != 5) bench.level("tape", "hand", -41.2 + noise[t] + 0.2 * noise[t + 1], t + 1);
            if (t != 0) bench.level("stub", "hand", -42.9 + noise[t] + 0.2 * noise[t + 2], t + 1);
            for (int k = 0; k < 10; k++)
                bench.level("x" + k, "hand", -46 - 0.1 * k + 6 * noise[(t * (k + 2)) % 8], t + 1);
        }
        MountResult mount = bench.against("helical").mounts().get(0);
        assertTrue(mount.antenna("tape").orElseThrow().toldApart());
        assertTrue(mount.antenna("stub").orElseThrow().toldApart());
        for (List<String> group : mount.alike()) assertFalse(group.contains("tape") && group.contains("stub"));
    }

    /** Of three that differ from a fourth by nearly the same, the one in the middle is not the only one told apart. */
    @Test
    void equalTrialsAndAGreaterDifferenceAreNeverLessToldApart() {
        Random random = new Random(8);
        int groups = 0;
        for (int round = 0; round < 60; round++) {
            Bench bench = new Bench().header();
            for (int t = 1; t <= 5; t++)
                for (int k = 0; k < 9; k++)
                    bench.level("a" + k, "hand", -42 + 0.5 * k + (0.2 + 0.1 * k) * random.nextGaussian(), t);
            MountResult mount = bench.against("a0").mounts().get(0);
            List<String> names =
                    mount.antennas().stream().map(AntennaResult::antenna).toList();
            for (int i = 0; i < names.size(); i++)
                for (int j = i + 1; j + 1 < names.size(); j++)
                    if (!isAlike(mount, names.get(i), names.get(j)))
                        assertFalse(
                                isAlike(mount, names.get(i), names.get(j + 1)),
                                names.get(i) + " " + names.get(j) + " " + mount.alike());
                    else groups++;
        }
        assertTrue(groups > 100);
    }

    private static boolean isAlike(MountResult mount, String one, String other) {
        return mount.alike().stream().anyMatch(g -> g.contains(one) && g.contains(other));
    }

    @Test
    void manyAntennasAreGroupedInRunsOfLevel() {
        List<List<String>> groups = AlikeGroups.of(session(new Random(4), 40, 3), List.of());
        assertFalse(groups.isEmpty());
        for (List<String> group : groups) assertTrue(group.size() >= 2);
    }
}
