package handreach.atlas;

import handreach.reach.CellGrid;
import java.util.BitSet;
import java.util.function.IntConsumer;

/** Which targets one position reaches: one bit a target of the window within its radius. Immutable once handed out. */
public final class HeardBits {
    /** No target at all. */
    static final HeardBits NONE = new HeardBits(new Window(0, 0, 0, 0), new BitSet(), 0);

    /**
     * The part of the grid of targets that bits stand for.
     *
     * @param row first row
     * @param column first column
     * @param rows how many
     * @param columns how many
     */
    public record Window(int row, int column, int rows, int columns) {}

    private final Window window;
    private final BitSet reached;
    private final int known;

    private HeardBits(Window window, BitSet reached, int known) {
        this.window = window;
        this.reached = reached;
        this.known = known;
    }

    /**
     * Bits as they are kept.
     *
     * @param bytes eight targets a byte, row by row, the first in the lowest bit
     * @param known targets of the window to which the loss is known
     */
    public static HeardBits of(Window window, byte[] bytes, int known) {
        BitSet bits = BitSet.valueOf(bytes);
        if (bits.length() > window.rows() * window.columns())
            throw new IllegalArgumentException("more bits than targets");
        return new HeardBits(window, bits, known);
    }

    static HeardBits of(Window window, BitSet reached, int known) {
        return new HeardBits(window, reached, known);
    }

    public Window window() {
        return window;
    }

    /** Eight targets a byte, as {@link #of(Window, byte[], int)} takes them. */
    public byte[] bytes() {
        return reached.toByteArray();
    }

    /** Number of targets reached. */
    public int count() {
        return reached.cardinality();
    }

    /** Number of targets within the radius and the region to which the loss is known. */
    public int known() {
        return known;
    }

    /** Whether a target is reached, by its index in the grid of all targets. */
    boolean has(CellGrid targets, int target) {
        int row = targets.rowOf(target) - window.row;
        int column = targets.columnOf(target) - window.column;
        return row >= 0
                && row < window.rows
                && column >= 0
                && column < window.columns
                && reached.get(row * window.columns + column);
    }

    /** First target reached from an index of the grid of all targets on; −1 where there is none. */
    int next(CellGrid targets, int from) {
        int row = Math.max(0, targets.rowOf(from) - window.row);
        int column = targets.columnOf(from) - window.column;
        if (targets.rowOf(from) < window.row) column = 0;
        int start = row * window.columns + Math.min(Math.max(column, 0), window.columns);
        int found = reached.nextSetBit(start);
        return found < 0 ? -1 : global(targets, found);
    }

    private int global(CellGrid targets, int bit) {
        return targets.index(window.row + bit / window.columns, window.column + bit % window.columns);
    }

    /** Every target reached, by its index in the grid of all targets. */
    void each(CellGrid targets, IntConsumer target) {
        for (int bit = reached.nextSetBit(0); bit >= 0; bit = reached.nextSetBit(bit + 1))
            target.accept(global(targets, bit));
    }
}
