package handreach.atlas;

import handreach.reach.CellGrid;
import java.util.BitSet;
import java.util.function.IntConsumer;

/**
 * Which targets one position reaches: one bit a target of the window within its radius, or of those targets alone that come after the
 * position in the order of the grid ({@link PairsOnce}). Immutable once handed out.
 */
public final class HeardBits {
    /** No target at all. */
    static final HeardBits NONE = new HeardBits(new Window(0, 0, 0, 0), new BitSet(), 0, null);
    /** No target, and none after the position. */
    static final HeardBits NONE_LATER = ofLater(NONE.window, new BitSet(), new BitSet());

    /**
     * The part of the grid of targets that bits stand for.
     *
     * @param row first row
     * @param column first column
     * @param rows how many
     * @param columns how many
     */
    public record Window(int row, int column, int rows, int columns) {
        /** Number of the bit of a target, by its index in the grid of all targets; −1 where it lies outside. */
        int bit(CellGrid targets, int target) {
            int down = targets.rowOf(target) - row;
            int along = targets.columnOf(target) - column;
            return down >= 0 && down < rows && along >= 0 && along < columns ? down * columns + along : -1;
        }
    }

    private final Window window;
    private final BitSet reached;
    private final int known;
    /** Which of the later targets are known, where the bits tell of those alone; null where they tell of all. */
    private final BitSet knownLater;

    private HeardBits(Window window, BitSet reached, int known, BitSet knownLater) {
        this.window = window;
        this.reached = reached;
        this.known = known;
        this.knownLater = knownLater;
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
        return of(window, bits, known);
    }

    static HeardBits of(Window window, BitSet reached, int known) {
        return new HeardBits(window, reached, known, null);
    }

    /** The same of the later targets alone, with those of them to which the loss is known; loadouts may share these. */
    public static HeardBits ofLater(Window window, BitSet reached, BitSet known) {
        if (Math.max(reached.length(), known.length()) > window.rows() * window.columns())
            throw new IllegalArgumentException("more bits than targets");
        return new HeardBits(window, reached, known.cardinality(), known);
    }

    /** Whether the bits tell of later targets alone. */
    public boolean isOfLater() {
        return knownLater != null;
    }

    /** Bits of the later targets to which the loss is known, eight a byte. */
    public byte[] knownLaterBytes() {
        return knownLater.toByteArray();
    }

    /** The bits of all targets, with what those before have found. */
    HeardBits whole(BitSet reachedEarlier, int knownEarlier) {
        BitSet all = (BitSet) reached.clone();
        all.or(reachedEarlier);
        return of(window, all, known + knownEarlier);
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
        int bit = window.bit(targets, target);
        return bit >= 0 && reached.get(bit);
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
        each(reached, targets, target);
    }

    /** Every later target to which the loss is known. */
    void eachKnownLater(CellGrid targets, IntConsumer target) {
        each(knownLater, targets, target);
    }

    private void each(BitSet bits, CellGrid targets, IntConsumer target) {
        for (int bit = bits.nextSetBit(0); bit >= 0; bit = bits.nextSetBit(bit + 1))
            target.accept(global(targets, bit));
    }
}
