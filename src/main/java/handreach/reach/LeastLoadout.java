package handreach.reach;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * For every cell the least burdensome link that reaches the target odds. Links come in order of burden, the least first; a cell
 * holds the number of the first that reaches it.
 */
public final class LeastLoadout {
    /** No link reaches the cell. */
    public static final int NONE = -1;
    /** The cell is unknown or outside for at least one link. */
    public static final int UNKNOWN = -2;

    private final List<ReachLink> links;
    private final CellGrid grid;
    private final byte[] least;
    private final int[] reached;
    private final int known;
    private final List<ReachEstimate> shares;

    private LeastLoadout(
            List<ReachLink> links, CellGrid grid, byte[] least, int[] reached, int known, List<ReachEstimate> shares) {
        this.links = links;
        this.grid = grid;
        this.least = least;
        this.reached = reached;
        this.known = known;
        this.shares = shares;
    }

    /**
     * Lays the links over one another.
     *
     * @shape  k grids in, one number a cell out; O(k cells), pure
     * @unit   odds 0 to 1
     * @valid  1 to 100 links over one grid, in order of burden; else IllegalArgumentException
     * @error  that of the odds
     * @source definition, docs/definitions.md
     */
    public static LeastLoadout of(List<OddsGrid> inOrderOfBurden, double targetOdds) {
        int k = inOrderOfBurden.size();
        if (k < 1 || k > 100) throw new IllegalArgumentException(k + " links");
        CellGrid grid = inOrderOfBurden.get(0).grid();
        double[] threshold = new double[k];
        List<ShareCount> counts = new ArrayList<>();
        for (int i = 0; i < k; i++) {
            OddsGrid odds = inOrderOfBurden.get(i);
            if (!odds.grid().equals(grid)) throw new IllegalArgumentException("links over different grids");
            threshold[i] = odds.link().thresholdDb(targetOdds);
            counts.add(new ShareCount(odds, targetOdds));
        }
        byte[] least = new byte[grid.count()];
        Arrays.fill(least, (byte) NONE);
        int[] reached = new int[k];
        int known = 0;
        double[] marginDb = new double[grid.columns()];
        for (int row = 0; row < grid.rows(); row++) {
            int first = grid.index(row, 0);
            for (OddsGrid odds : inOrderOfBurden) hide(odds, first, grid.columns(), least);
            for (int i = 0; i < k; i++) {
                inOrderOfBurden.get(i).marginsDb(first, marginDb.length, marginDb);
                counts.get(i).row(marginDb);
                reached[i] += take(marginDb, threshold[i], (byte) i, first, least);
            }
            known += known(first, grid.columns(), least);
        }
        return new LeastLoadout(
                inOrderOfBurden.stream().map(OddsGrid::link).toList(),
                grid,
                least,
                reached,
                known,
                counts.stream().map(ShareCount::estimate).toList());
    }

    // Row by row: the first map of a process is done before a loop over all cells would be compiled.

    /** Marks the cells of a row that a link does not know. */
    private static void hide(OddsGrid odds, int first, int count, byte[] least) {
        for (int cell = first; cell < first + count; cell++) if (!odds.isKnown(cell)) least[cell] = UNKNOWN;
    }

    /** Gives a link the cells of a row that it reaches and no lesser one does; returns how many. */
    private static int take(double[] marginDb, double thresholdDb, byte number, int first, byte[] least) {
        int taken = 0;
        for (int i = 0; i < marginDb.length; i++) {
            if (least[first + i] != NONE || !(marginDb[i] >= thresholdDb)) continue;
            least[first + i] = number;
            taken++;
        }
        return taken;
    }

    private static int known(int first, int count, byte[] least) {
        int known = 0;
        for (int cell = first; cell < first + count; cell++) if (least[cell] != UNKNOWN) known++;
        return known;
    }

    public CellGrid grid() {
        return grid;
    }

    /** Links in order of burden; a cell's number counts from 0 in this list. */
    public List<ReachLink> links() {
        return links;
    }

    /** Number of the least link that reaches the cell, {@link #NONE} or {@link #UNKNOWN}. */
    public int at(int cell) {
        return least[cell];
    }

    /** What a link reaches by itself, as {@link OddsGrid#shareEstimate}: its margins are here anyway. */
    public ReachEstimate share(int link) {
        return shares.get(link);
    }

    /** Share of the known ground for which this link is the least that does the job: what it buys over all lesser ones. */
    public double shareBoughtBy(int link) {
        return known == 0 ? 0 : (double) reached[link] / known;
    }

    /** Share of the known ground that no link reaches. */
    public double shareOfNone() {
        if (known == 0) return 0;
        long sum = 0;
        for (int n : reached) sum += n;
        return (double) (known - sum) / known;
    }
}
