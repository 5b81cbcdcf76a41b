package handreach.relay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import org.junit.jupiter.api.Test;

class HikingTimeTest {
    @Test
    void agreesWithTheFiguresThatItsAuthorGives() {
        // Tobler 1993: about 5 km/h on the flat, 6 km/h at its fastest, downhill at a slope of 5 %
        assertEquals(5.037, HikingTime.speedKmh(0), 0.001);
        assertEquals(6, HikingTime.speedKmh(-0.05), 1e-12);
    }

    @Test
    void uphillIsSlowerThanTheSameDownhill() {
        for (double slope = 0.01; slope < 1; slope += 0.01)
            assertTrue(HikingTime.speedKmh(slope) < HikingTime.speedKmh(-slope));
    }

    @Test
    void aKilometreOnTheFlatOffThePathTakesTwentyMinutes() {
        // by hand: 1 km / (0.6 × 5.037 km/h) = 19.85 minutes; on a path 11.91
        int side = 21;
        double[] flat = new double[side * side];
        BitSet known = new BitSet();
        known.set(0, side * side);
        double[] off = HikingTime.minutes(flat, known, new BitSet(), side, 50, 0);
        assertEquals(19.85, off[side - 1], 0.01);
        assertEquals(11.91, HikingTime.minutes(flat, known, known, side, 50, 0)[side - 1], 0.01);
        // 16 neighbours: at most 2.8 % longer than the straight way
        for (int cell = 1; cell < off.length; cell++) {
            double straight = 19.85 * 50 * Math.hypot(cell / side, cell % side) / 1000;
            assertTrue(off[cell] >= straight - 0.01 && off[cell] <= 1.028 * straight + 0.01);
        }
    }

    @Test
    void nobodyWalksThroughAVoidOrUpACliff() {
        int side = 9;
        double[] height = new double[side * side];
        BitSet known = new BitSet();
        known.set(0, side * side);
        for (int r = 0; r < side; r++) {
            height[r * side + 3] = 1000;
            height[r * side + 4] = 1000;
        }
        assertTrue(Double.isInfinite(HikingTime.minutes(height, known, new BitSet(), side, 50, 0)[side - 1]));
        java.util.Arrays.fill(height, 0);
        for (int r = 0; r < side; r++) {
            known.clear(r * side + 3);
            known.clear(r * side + 4);
        }
        assertTrue(Double.isInfinite(HikingTime.minutes(height, known, new BitSet(), side, 50, 0)[side - 1]));
    }

    @Test
    void agreesWithThePlainSlowWay() {
        // oracle: relax every step until nothing changes
        int side = 12;
        java.util.Random random = new java.util.Random(5);
        double[] height = random.doubles(side * side, 0, 20).toArray();
        BitSet known = new BitSet();
        known.set(0, side * side);
        double[] quick = HikingTime.minutes(height, known, new BitSet(), side, 40, 17);
        double[] slow = new double[side * side];
        java.util.Arrays.fill(slow, Double.POSITIVE_INFINITY);
        slow[17] = 0;
        for (boolean moved = true; moved; ) {
            moved = false;
            for (int from = 0; from < slow.length; from++)
                for (int to = 0; to < slow.length; to++) {
                    int dr = Math.abs(from / side - to / side);
                    int dc = Math.abs(from % side - to % side);
                    boolean isStep = dr + dc > 0 && dr <= 2 && dc <= 2 && (dr + dc == 3 || Math.max(dr, dc) == 1);
                    if (!isStep) continue;
                    double run = 40 * Math.hypot(dr, dc);
                    double slope = (height[to] - height[from]) / run;
                    if (Math.abs(slope) > 1) continue;
                    double time = slow[from] + run * 60 / 1000 / (0.6 * 6 * Math.exp(-3.5 * Math.abs(slope + 0.05)));
                    if (time < slow[to] - 1e-12) {
                        slow[to] = time;
                        moved = true;
                    }
                }
        }
        for (int cell = 0; cell < slow.length; cell++) assertEquals(slow[cell], quick[cell], 1e-9);
    }
}
