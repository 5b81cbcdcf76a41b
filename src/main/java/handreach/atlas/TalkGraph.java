package handreach.atlas;

import handreach.reach.CellGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Who can talk to whom over any number of others, with one loadout on all: parts between which no talk is possible, and positions
 * whose loss cuts a part in two. Positions are those of the grid; a talk must work from both ends.
 */
public final class TalkGraph {
    /** The cell is no known position of the region. */
    public static final int NOBODY = -1;

    /**
     * A position that holds a part together.
     *
     * @param cell of the grid
     * @param cutOff positions that lose touch with the largest rest when it falls out
     */
    public record Bridge(int cell, int cutOff) {}

    private final int[] part;
    private final List<Integer> sizes;
    private final List<Bridge> bridges;

    private TalkGraph(int[] part, List<Integer> sizes, List<Bridge> bridges) {
        this.part = part;
        this.sizes = List.copyOf(sizes);
        this.bridges = List.copyOf(bridges);
    }

    /**
     * Parts and bridges over all positions.
     *
     * @shape  positions in, graph out; O(talks)
     * @unit   none
     * @valid  targets that are the grid of the positions itself
     * @error  none beyond that of the bits
     * @source R. E. Tarjan, SIAM Journal on Computing 1 (1972) 146, from memory
     */
    public static TalkGraph of(CellGrid grid, List<PositionFigures> positions, int loadout) {
        return new Search(grid, positions, loadout).graph();
    }

    /** Part of a cell, 0 for the largest; {@link #NOBODY} where nobody stands. */
    public int partOf(int cell) {
        return part[cell];
    }

    /** Number of positions in each part, the largest first. */
    public List<Integer> sizes() {
        return sizes;
    }

    /** Positions whose loss cuts others off, the gravest first. */
    public List<Bridge> bridges() {
        return bridges;
    }

    /** Depth first, by hand: a region is deeper than a stack. */
    private static final class Search {
        private final CellGrid grid;
        private final HeardBits[] heard;
        private final int[] order;
        private final int[] low;
        private final int[] parent;
        private final int[] next;
        private final int[] size;
        private final int[] root;
        private final int[] largestCut;
        private final int[] sumCut;
        private int count;

        Search(CellGrid grid, List<PositionFigures> positions, int loadout) {
            int n = grid.count();
            this.grid = grid;
            this.heard = new HeardBits[n];
            this.order = new int[n];
            this.low = new int[n];
            this.parent = new int[n];
            this.next = new int[n];
            this.size = new int[n];
            this.root = new int[n];
            this.largestCut = new int[n];
            this.sumCut = new int[n];
            for (PositionFigures one : positions)
                if (one.isKnown())
                    heard[one.cell()] = one.loadouts().get(loadout).heard();
            Arrays.fill(root, NOBODY);
        }

        TalkGraph graph() {
            List<Integer> roots = new ArrayList<>();
            for (int cell = 0; cell < heard.length; cell++)
                if (heard[cell] != null && order[cell] == 0) {
                    roots.add(cell);
                    visit(cell);
                }
            roots.sort(Comparator.comparingInt((Integer r) -> -size[r]).thenComparingInt(r -> r));
            int[] rank = new int[heard.length];
            for (int i = 0; i < roots.size(); i++) rank[roots.get(i)] = i;
            List<Bridge> bridges = new ArrayList<>();
            int[] part = new int[heard.length];
            for (int cell = 0; cell < part.length; cell++) {
                part[cell] = root[cell] < 0 ? NOBODY : rank[root[cell]];
                if (sumCut[cell] == 0) continue;
                int others = size[root[cell]] - 1;
                int rest = others - sumCut[cell];
                int cutOff = others - Math.max(rest, largestCut[cell]);
                if (cutOff > 0) bridges.add(new Bridge(cell, cutOff));
            }
            bridges.sort(Comparator.comparingInt((Bridge b) -> -b.cutOff()).thenComparingInt(Bridge::cell));
            return new TalkGraph(part, roots.stream().map(r -> size[r]).toList(), bridges);
        }

        private void visit(int start) {
            parent[start] = -1;
            enter(start, start);
            int at = start;
            while (at >= 0) {
                int to = nextTalk(at);
                if (to < 0) {
                    int up = parent[at];
                    if (up >= 0) leave(at, up);
                    at = up;
                } else if (order[to] == 0) {
                    parent[to] = at;
                    enter(to, start);
                    at = to;
                } else if (to != parent[at]) low[at] = Math.min(low[at], order[to]);
            }
        }

        private void enter(int cell, int start) {
            order[cell] = ++count;
            low[cell] = order[cell];
            size[cell] = 1;
            root[cell] = start;
        }

        private void leave(int child, int up) {
            low[up] = Math.min(low[up], low[child]);
            size[up] += size[child];
            if (low[child] < order[up]) return;
            sumCut[up] += size[child];
            largestCut[up] = Math.max(largestCut[up], size[child]);
        }

        /** The next position that a cell talks with, both ways; −1 when all have been seen. */
        private int nextTalk(int cell) {
            while (next[cell] < heard.length) {
                int to = heard[cell].next(grid, next[cell]);
                if (to < 0) {
                    next[cell] = heard.length;
                    return -1;
                }
                next[cell] = to + 1;
                if (heard[to] != null && heard[to].has(grid, cell)) return to;
            }
            return -1;
        }
    }
}
