package handreach.atlas;

import handreach.reach.CellGrid;
import handreach.reach.ReachEstimate;
import handreach.uncertainty.Interval;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.function.IntFunction;

/** A small region laid out on paper: who hears whom is said outright. */
final class Paper {
    final AtlasGrid grid;
    final List<PositionFigures> positions = new ArrayList<>();

    private Paper(AtlasGrid grid) {
        this.grid = grid;
    }

    /** A region of side by side cells of 300 m, all asked. */
    static Paper of(int side, IntFunction<List<Integer>> heard) {
        double high = (side - 0.5) * 300 / 111_000;
        CellGrid cells = CellGrid.over(45, 10, 45 + high, 10 + high * 1.4, 300);
        Paper paper = new Paper(AtlasGrid.of(cells, at -> true));
        HeardBits.Window all = new HeardBits.Window(0, 0, cells.rows(), cells.columns());
        ReachEstimate none = new ReachEstimate(0, new Interval(0, 0));
        for (int cell = 0; cell < cells.count(); cell++) {
            BitSet bits = new BitSet();
            for (int other : heard.apply(cell)) if (other != cell && other < cells.count()) bits.set(other);
            paper.positions.add(new PositionFigures(
                    cell,
                    cells.positionOf(cell),
                    List.of(new LoadoutFigures(
                            none,
                            new LoadoutFigures.Worst(none, 0),
                            none,
                            0,
                            0,
                            HeardBits.of(all, bits, cells.count())))));
        }
        return paper;
    }

    static List<Integer> some(Random random, int of, double share) {
        List<Integer> chosen = new ArrayList<>();
        for (int i = 0; i < of; i++) if (random.nextDouble() < share) chosen.add(i);
        return chosen;
    }

    boolean hears(int from, int to) {
        return positions.get(from).loadouts().get(0).heard().has(grid.cells(), to);
    }
}
