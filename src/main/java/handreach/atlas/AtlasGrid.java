package handreach.atlas;

import handreach.geodesy.Position;
import handreach.reach.CellGrid;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/** The cells of a grid that lie within a region, in blocks along a space-filling curve. Immutable. */
public final class AtlasGrid {
    /** Positions along the side of a block: few enough that a stopped run loses little, many enough that one window of ground pays. */
    private static final int SIDE = 8;

    private final CellGrid cells;
    private final BitSet asked;
    private final List<AtlasBlock> blocks;

    private AtlasGrid(CellGrid cells, BitSet asked, List<AtlasBlock> blocks) {
        this.cells = cells;
        this.asked = asked;
        this.blocks = List.copyOf(blocks);
    }

    /** The cells whose centres lie within the region. */
    public static AtlasGrid of(CellGrid cells, Predicate<Position> region) {
        BitSet asked = new BitSet(cells.count());
        for (int cell = 0; cell < cells.count(); cell++) if (region.test(cells.positionOf(cell))) asked.set(cell);
        return new AtlasGrid(cells, asked, blocks(cells, asked));
    }

    private static List<AtlasBlock> blocks(CellGrid cells, BitSet asked) {
        List<AtlasBlock> all = new ArrayList<>();
        for (int row = 0; row < cells.rows(); row += SIDE)
            for (int column = 0; column < cells.columns(); column += SIDE) {
                AtlasBlock block = new AtlasBlock(
                        -1, row, column, Math.min(SIDE, cells.rows() - row), Math.min(SIDE, cells.columns() - column));
                if (!cellsOf(cells, asked, block).isEmpty()) all.add(block);
            }
        int blocksAcross = Math.max(cells.rows(), cells.columns()) / SIDE + 1;
        int side = Integer.highestOneBit(Math.max(1, blocksAcross - 1)) * 2;
        all.sort(Comparator.comparingLong(b -> HilbertCurve.index(side, b.column() / SIDE, b.row() / SIDE)));
        List<AtlasBlock> numbered = new ArrayList<>();
        for (AtlasBlock b : all)
            numbered.add(new AtlasBlock(numbered.size(), b.row(), b.column(), b.rows(), b.columns()));
        return numbered;
    }

    public CellGrid cells() {
        return cells;
    }

    /** Whether a cell lies within the region. */
    public boolean isAsked(int cell) {
        return asked.get(cell);
    }

    /** Number of cells within the region. */
    public int count() {
        return asked.cardinality();
    }

    /** Blocks that hold a cell of the region, in the order in which they are best reckoned. */
    public List<AtlasBlock> blocks() {
        return blocks;
    }

    /** The cells of a block that lie within the region, row by row. */
    public List<Integer> cellsOf(AtlasBlock block) {
        return cellsOf(cells, asked, block);
    }

    private static List<Integer> cellsOf(CellGrid cells, BitSet asked, AtlasBlock block) {
        List<Integer> found = new ArrayList<>();
        for (int row = block.row(); row < block.row() + block.rows(); row++)
            for (int column = block.column(); column < block.column() + block.columns(); column++)
                if (asked.get(cells.index(row, column))) found.add(cells.index(row, column));
        return found;
    }

    /** Ground that a cell stands for, km². */
    public double areaKm2(int cell) {
        double highM = cells.cellM();
        double middleDeg = (cells.northDeg() + cells.southDeg()) / 2;
        double wide =
                Math.cos(Math.toRadians(cells.latitudeOf(cells.rowOf(cell)))) / Math.cos(Math.toRadians(middleDeg));
        return highM * highM * wide / 1e6;
    }
}
