package handreach.atlas;

import handreach.reach.CellGrid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Two positions with the same loadout are one pair, reckoned once: from the one that comes first in the order of the grid. Blocks stay
 * apart from one another; once they are there, each position is told what those before it have found.
 */
public final class PairsOnce {
    private static final int NOBODY = -1;

    private final CellGrid cells;
    private final List<PositionFigures> rows;
    /** Index of the row of a cell. */
    private final int[] rowOf;
    /** What earlier positions have found of each row that is still to come. */
    private final Earlier[] earlier;

    private PairsOnce(CellGrid cells, List<PositionFigures> rows) {
        this.cells = cells;
        this.rows = rows;
        this.rowOf = new int[cells.count()];
        this.earlier = new Earlier[rows.size()];
        Arrays.fill(rowOf, NOBODY);
        for (int i = 0; i < rows.size(); i++)
            if (rows.get(i).isOfLater()) rowOf[rows.get(i).cell()] = i;
    }

    private static final class Earlier {
        private final BitSet[] reached;
        private int known;

        Earlier(int loadouts) {
            reached = new BitSet[loadouts];
            for (int i = 0; i < loadouts; i++) reached[i] = new BitSet();
        }
    }

    /**
     * Makes rows whole in the list itself, one after the other, so that memory holds each of them once.
     *
     * @shape  rows in the order of their cells in and out, those that are whole already as they were; O(bits)
     * @unit   none
     * @valid  targets that are the grid of the positions, the same loadout in the same way at both ends, both ways wanted; of a position
     *     that is not there, what it alone would have reckoned stays unknown
     * @error  none where a path is the same from either end; samples of the two cuts lie within two millimetres of one another, docs/atlas.md
     * @source reciprocity of the path; definition, docs/atlas.md
     */
    public static void complete(CellGrid cells, List<PositionFigures> rows) {
        PairsOnce pairs = new PairsOnce(cells, rows);
        for (int i = 0; i < rows.size(); i++) if (rows.get(i).isOfLater()) pairs.complete(i);
    }

    private void complete(int i) {
        PositionFigures row = rows.get(i);
        List<LoadoutFigures> loadouts = row.loadouts();
        for (int l = 0; l < loadouts.size(); l++) {
            int loadout = l;
            loadouts.get(l).heard().each(cells, target -> reached(target, loadout, row.cell()));
        }
        loadouts.get(0).heard().eachKnownLater(cells, target -> {
            if (rowOf[target] > i) earlier(rowOf[target]).known++;
        });
        Earlier found = earlier[i] == null ? new Earlier(loadouts.size()) : earlier[i];
        earlier[i] = null;
        List<LoadoutFigures> whole = new ArrayList<>();
        for (int l = 0; l < loadouts.size(); l++)
            whole.add(loadouts.get(l).with(loadouts.get(l).heard().whole(found.reached[l], found.known)));
        rows.set(i, new PositionFigures(row.cell(), row.at(), whole));
    }

    private void reached(int target, int loadout, int by) {
        if (rowOf[target] <= rowOf[by]) return;
        HeardBits.Window window =
                rows.get(rowOf[target]).loadouts().get(loadout).heard().window();
        int bit = window.bit(cells, by);
        if (bit >= 0) earlier(rowOf[target]).reached[loadout].set(bit);
    }

    private Earlier earlier(int row) {
        if (earlier[row] == null)
            earlier[row] = new Earlier(rows.get(row).loadouts().size());
        return earlier[row];
    }
}
