package handreach.relay;

import java.util.Arrays;
import java.util.BitSet;

/** How long it takes to walk from a start to every cell of a grid. */
final class HikingTime {
    /** Off a path walkers keep this share of the speed. */
    static final double OFF_PATH = 0.6;
    /** Steeper than this, rise over run, nobody is sent on foot; our suggestion. */
    static final double STEEPEST = 1;

    private static final int[][] STEPS = {
        {-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-1, -1}, {-1, 1}, {1, -1}, {1, 1},
        {-2, -1}, {-2, 1}, {2, -1}, {2, 1}, {-1, -2}, {-1, 2}, {1, -2}, {1, 2}
    };

    private HikingTime() {}

    /**
     * Speed of a walker on a path.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   slope as rise over run, positive uphill; km/h
     * @valid  every finite slope
     * @error  30 % between walkers, more with loads, snow or bush (common practice, no source)
     * @source W. Tobler, Three presentations on geographical analysis and modeling, NCGIA Technical Report 93-1 (1993):
     *     6 exp(−3.5 |S + 0.05|), off a path times 0.6
     */
    public static double speedKmh(double slope) {
        return 6 * Math.exp(-3.5 * Math.abs(slope + 0.05));
    }

    /**
     * Least time from one cell to all others.
     *
     * @shape  grid of heights in, minutes a cell out, infinite where nobody gets; O(n log n)
     * @unit   heights m, side of a cell m; minutes one way, without rests
     * @valid  cells without height are not entered, nor slopes above 45 degrees; cells on a path are walked at full speed
     * @error  steps to 16 neighbours make a straight way up to 2.8 % too long
     * @source shortest paths over a grid, Dijkstra; {@link #speedKmh}
     */
    static double[] minutes(double[] heightM, BitSet known, BitSet onPath, int columns, double cellM, int start) {
        int count = heightM.length;
        double[] minutes = new double[count];
        Arrays.fill(minutes, Double.POSITIVE_INFINITY);
        if (!known.get(start)) return minutes;
        Queue queue = new Queue(count);
        minutes[start] = 0;
        queue.push(0, start);
        int rows = count / columns;
        while (!queue.isEmpty()) {
            double reached = queue.leastKey();
            int cell = queue.pop();
            if (reached > minutes[cell]) continue;
            int row = cell / columns;
            int column = cell % columns;
            for (int[] step : STEPS) {
                int r = row + step[0];
                int c = column + step[1];
                if (r < 0 || r >= rows || c < 0 || c >= columns) continue;
                int next = r * columns + c;
                if (!known.get(next)) continue;
                double runM = cellM * Math.hypot(step[0], step[1]);
                double slope = (heightM[next] - heightM[cell]) / runM;
                if (Math.abs(slope) > STEEPEST) continue;
                double factor = onPath.get(cell) && onPath.get(next) ? 1 : OFF_PATH;
                double time = reached + runM / 1000 / (speedKmh(slope) * factor) * 60;
                if (time < minutes[next]) {
                    minutes[next] = time;
                    queue.push(time, next);
                }
            }
        }
        return minutes;
    }

    /** A heap of numbered cells by time; boxed queues are too slow for a third of a million cells. */
    private static final class Queue {
        private double[] key;
        private int[] item;
        private int size;

        Queue(int expected) {
            key = new double[Math.max(16, expected)];
            item = new int[Math.max(16, expected)];
        }

        boolean isEmpty() {
            return size == 0;
        }

        double leastKey() {
            return key[0];
        }

        void push(double time, int cell) {
            if (size == key.length) {
                key = Arrays.copyOf(key, 2 * size);
                item = Arrays.copyOf(item, 2 * size);
            }
            int at = size++;
            while (at > 0) {
                int parent = (at - 1) / 2;
                if (key[parent] <= time) break;
                key[at] = key[parent];
                item[at] = item[parent];
                at = parent;
            }
            key[at] = time;
            item[at] = cell;
        }

        int pop() {
            int top = item[0];
            double time = key[--size];
            int cell = item[size];
            int at = 0;
            while (2 * at + 1 < size) {
                int child = 2 * at + 1;
                if (child + 1 < size && key[child + 1] < key[child]) child++;
                if (key[child] >= time) break;
                key[at] = key[child];
                item[at] = item[child];
                at = child;
            }
            key[at] = time;
            item[at] = cell;
            return top;
        }
    }
}
