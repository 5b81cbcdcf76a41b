package handreach.atlas;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.reach.CellGrid;
import handreach.reach.ReachEstimate;
import handreach.uncertainty.Interval;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Pairs said outright, cut in two, and put together again. */
class PairsOnceTest {
    private static final int LOADOUTS = 2;
    private static final ReachEstimate NONE = new ReachEstimate(0, new Interval(0, 0));

    private final Random random = new Random(23);
    private final CellGrid cells = CellGrid.over(45, 10, 45.03, 10.05, 300);
    /** Positions whose ground is not known. */
    private final Set<Integer> unknown = new TreeSet<>();

    private final boolean[][] known = new boolean[cells.count()][cells.count()];
    private final boolean[][][] reached = new boolean[LOADOUTS][cells.count()][cells.count()];

    PairsOnceTest() {
        for (int i = 0; i < 9; i++) unknown.add(random.nextInt(cells.count()));
        for (int a = 0; a < cells.count(); a++)
            for (int b = a + 1; b < cells.count(); b++) {
                if (unknown.contains(a) || unknown.contains(b) || !isNear(a, b) || random.nextInt(10) == 0) continue;
                known[a][b] = known[b][a] = true;
                for (boolean[][] one : reached) one[a][b] = one[b][a] = random.nextBoolean();
            }
    }

    private boolean isNear(int a, int b) {
        return Math.hypot(cells.rowOf(a) - cells.rowOf(b), cells.columnOf(a) - cells.columnOf(b)) <= 4;
    }

    private HeardBits.Window window(int cell) {
        int row = Math.max(0, cells.rowOf(cell) - 4);
        int column = Math.max(0, cells.columnOf(cell) - 4);
        return new HeardBits.Window(
                row,
                column,
                Math.min(cells.rows(), cells.rowOf(cell) + 5) - row,
                Math.min(cells.columns(), cells.columnOf(cell) + 5) - column);
    }

    /** What a position finds by itself: of all targets, or of those after it; none of it where the other's row is missing from either end. */
    private PositionFigures row(int cell, boolean isOfLater, Set<Integer> missing) {
        List<LoadoutFigures> figures = new ArrayList<>();
        for (int loadout = 0; loadout < LOADOUTS && !unknown.contains(cell); loadout++) {
            BitSet bits = new BitSet();
            BitSet there = new BitSet();
            for (int to = 0; to < cells.count(); to++) {
                if (!known[cell][to] || isOfLater && to < cell || to < cell && missing.contains(to)) continue;
                there.set(window(cell).bit(cells, to));
                if (reached[loadout][cell][to]) bits.set(window(cell).bit(cells, to));
            }
            figures.add(new LoadoutFigures(
                    NONE,
                    new LoadoutFigures.Worst(NONE, 0),
                    NONE,
                    0,
                    0,
                    isOfLater
                            ? HeardBits.ofLater(window(cell), bits, there)
                            : HeardBits.of(window(cell), bits, there.cardinality())));
        }
        return new PositionFigures(cell, cells.positionOf(cell), figures);
    }

    private List<PositionFigures> rows(boolean isOfLater, Set<Integer> missing) {
        List<PositionFigures> rows = new ArrayList<>();
        for (int cell = 0; cell < cells.count(); cell++)
            if (!missing.contains(cell)) rows.add(row(cell, isOfLater, missing));
        return rows;
    }

    private void requireSame(Set<Integer> missing) {
        List<PositionFigures> found = rows(true, missing);
        PairsOnce.complete(cells, found);
        List<PositionFigures> outright = rows(false, missing);
        assertEquals(outright.size(), found.size());
        int earlier = 0;
        for (int i = 0; i < found.size(); i++) {
            assertFalse(found.get(i).isOfLater());
            assertEquals(outright.get(i).cell(), found.get(i).cell());
            assertEquals(
                    outright.get(i).loadouts().size(), found.get(i).loadouts().size());
            for (int l = 0; l < found.get(i).loadouts().size(); l++) {
                HeardBits want = outright.get(i).loadouts().get(l).heard();
                HeardBits have = found.get(i).loadouts().get(l).heard();
                assertEquals(want.window(), have.window());
                assertArrayEquals(want.bytes(), have.bytes());
                assertEquals(want.known(), have.known());
                if (want.count() > 0 && want.next(cells, 0) < found.get(i).cell()) earlier++;
            }
        }
        assertTrue(earlier > 100, earlier + " positions hear of earlier ones");
    }

    @Test
    void wholeRowsAreWhatBothEndsWouldHaveSaid() {
        requireSame(Set.of());
    }

    /** A block that failed takes with it what it alone would have reckoned, and no more; the others keep what they found themselves. */
    @Test
    void ofPositionsThatAreMissingNothingIsMadeUp() {
        Set<Integer> missing = new TreeSet<>();
        for (int cell = 0; cell < cells.count(); cell++)
            if (cells.rowOf(cell) / 3 == 1 && cells.columnOf(cell) / 3 == 1) missing.add(cell);
        assertEquals(9, missing.size());
        requireSame(missing);
    }

    @Test
    void rowsThatAreWholeStayAsTheyAre() {
        List<PositionFigures> rows = rows(false, Set.of());
        List<PositionFigures> before = List.copyOf(rows);
        PairsOnce.complete(cells, rows);
        for (int i = 0; i < rows.size(); i++) assertEquals(before.get(i), rows.get(i));
    }
}
