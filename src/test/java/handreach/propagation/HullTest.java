package handreach.propagation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The one hull and the one search in blocks, against plain searches over every sample. */
class HullTest {
    /** Heights are drawn at random, so that no two slopes tie; what is left is rounding. */
    private static final double ROUNDING = 1e-9;

    @Test
    void theHullIsWhatNoLineBetweenTwoSamplesPassesOver() { // oracle: every pair of neighbours asked
        for (int seed = 1; seed <= 60; seed++) {
            Ground ground = Ground.of(seed, 3 + seed % 40);
            int[] plain = IntStream.range(0, ground.n())
                    .filter(i -> !ground.isUnderALine(i))
                    .toArray();
            assertArrayEquals(plain, Hull.of(ground.x, ground.z), "seed " + seed);
        }
    }

    @Test
    void aReceiverSeesWhatRisesSteepest() { // oracle: every sample's line to the receiver
        for (int seed = 1; seed <= 60; seed++) {
            Ground ground = Ground.of(seed, 3 + 7 * seed);
            Hull hull = new Hull(2);
            int last = ground.n() - 1;
            for (int i = 0; i < last; i++) hull.push(ground.x[i], ground.z[i], i);
            double rx = ground.x[last];
            double rz = ground.z[last];
            int seen = hull.tangent(rx, rz);
            double steepest = Double.NEGATIVE_INFINITY;
            double highest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < last; i++) {
                steepest = Math.max(steepest, (ground.z[i] - rz) / (rx - ground.x[i]));
                highest = Math.max(highest, ground.z[i] - 0.3 * ground.x[i]);
            }
            assertEquals(steepest, (hull.z(seen) - rz) / (rx - hull.x(seen)), ROUNDING, "seed " + seed);
            int top = hull.highestAbove(0.3);
            assertEquals(highest, hull.z(top) - 0.3 * hull.x(top), ROUNDING, "seed " + seed);
        }
    }

    @Test
    void aHullStretchedOverBlocksIsTheSeenPartOfTheHullLaidPointByPoint() {
        for (int seed = 1; seed <= 200; seed++) {
            Ground ground = Ground.of(seed, 4 + 3 * seed);
            int last = ground.n() - 1;
            double tip = ground.z[0] + 5;
            double far = ground.z[last] + 3;
            Hull laid = new Hull(8);
            laid.start(ground.x[0], tip, 0);
            for (int i = 1; i < last; i++) laid.push(ground.x[i], ground.z[i], i);
            Hull stretched = new Hull(8);
            stretched.start(ground.x[0], tip, 0);
            stretched.stretch(ground.blocks(), last, ground.x[last], far);
            int tangent = laid.tangent(ground.x[last], far);
            assertEquals(tangent, stretched.tangent(ground.x[last], far), "seed " + seed);
            for (int k = 0; k <= tangent; k++) {
                assertEquals(laid.x(k), stretched.x(k), "seed " + seed);
                assertEquals(laid.z(k), stretched.z(k), "seed " + seed);
                assertEquals(laid.slope(k), stretched.slope(k), "seed " + seed);
            }
        }
    }

    @Test
    void passingOverBlocksFindsTheWorstUnderTheRay() { // oracle: all samples looked at
        for (int seed = 1; seed <= 200; seed++) {
            Ground ground = Ground.of(seed, 3 + 3 * seed);
            int last = ground.n() - 1;
            double d = ground.x[last];
            double tip = 60 * new Random(seed).nextDouble();
            double slope = -tip / d;
            double least = -40;
            double plain = least;
            for (int i = 1; i < last; i++) {
                double c = ground.z[i] - tip - slope * ground.x[i];
                plain = Math.max(plain, c * Math.abs(c) / (ground.x[i] * (d - ground.x[i])));
            }
            assertEquals(plain, ground.blocks().worstUnderRay(last, tip, slope, d, least), ROUNDING, "seed " + seed);
        }
    }

    @Test
    void halvingOverLevelGroundFindsWhatLookingAtEverySampleFinds() {
        Random random = new Random(3);
        for (int path = 0; path < 400; path++) {
            int n = 2 + random.nextInt(300);
            double step = 0.01 + 0.2 * random.nextDouble();
            double[] x = IntStream.range(0, n).mapToDouble(i -> step * i).toArray();
            double h1 = 0.5 + 80 * random.nextDouble();
            double h2 = 0.5 + 80 * random.nextDouble();
            double earthKm = 6000 + 4000 * random.nextDouble();
            assertEquals(
                    Bullington.nu(x, new double[n], h1, h2, earthKm, 2),
                    Bullington.levelNu(x, n - 2, x[n - 1], h1, h2, earthKm, 2),
                    ROUNDING,
                    n + " samples, " + h1 + " and " + h2 + " m");
        }
    }

    /** Rough ground at uneven steps. */
    private record Ground(double[] x, double[] z) {
        static Ground of(int seed, int n) {
            Random random = new Random(seed);
            double[] x = new double[n];
            double[] z = new double[n];
            for (int i = 0; i < n; i++) {
                x[i] = i == 0 ? 0 : x[i - 1] + 0.5 + random.nextDouble();
                z[i] = (i == 0 ? 0 : 0.9 * z[i - 1]) + 4 * random.nextGaussian();
            }
            return new Ground(x, z);
        }

        int n() {
            return x.length;
        }

        BlockedGround blocks() {
            BlockedGround blocks = new BlockedGround(x, z);
            for (int i = 1; i < n(); i++) blocks.take(i);
            return blocks;
        }

        boolean isUnderALine(int i) {
            for (int a = 0; a < i; a++)
                for (int b = i + 1; b < n(); b++)
                    if (z[i] < (z[a] * (x[b] - x[i]) + z[b] * (x[i] - x[a])) / (x[b] - x[a])) return true;
            return false;
        }
    }
}
