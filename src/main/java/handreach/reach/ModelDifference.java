package handreach.reach;

import handreach.propagation.FreeSpace;
import handreach.propagation.march.CoveredMarch;

/** Where a map by the march and one by another model tell two stories of the same ground. */
public final class ModelDifference {
    /**
     * Losses farther apart than this differ, dB: two standard deviations of a loss measured over open ground against either model
     * (docs/field-comparison.md, rounded), and four times the power.
     */
    public static final double FELT_DB = 6;

    /** What the two say of a cell. */
    public enum Kind {
        /** One of them says nothing. */
        UNKNOWN,
        /** Both are beyond the excess at which bare ground no longer describes the place. */
        LOST,
        ALIKE,
        /** The march loses more. */
        MORE,
        /** The march loses less. */
        LESS
    }

    private static final Kind[] KINDS = Kind.values();

    private final LossGrid march;
    private final LossGrid other;
    private final byte[] kind;
    private final int[] count = new int[KINDS.length];

    private ModelDifference(LossGrid march, LossGrid other) {
        this.march = march;
        this.other = other;
        this.kind = new byte[grid().count()];
        AreaRequest asked = march.request();
        CellsByRadial.RowReader reader = new CellsByRadial.RowReader(
                grid(), AzimuthalFrame.of(asked.source(), Math.max(asked.radiusM(), 2 * CellsByRadial.NEAREST_M)));
        int cell = 0;
        for (int row = 0; row < grid().rows(); row++) {
            reader.row(row);
            for (int column = 0; column < grid().columns(); column++, cell++) {
                Kind found = reader.isWithin(column) ? kind(cell, reader.distanceM()) : Kind.UNKNOWN;
                kind[cell] = (byte) found.ordinal();
                count[found.ordinal()]++;
            }
        }
    }

    private Kind kind(int cell, double distanceM) {
        if (!march.isKnown(cell) || !other.isKnown(cell)) return Kind.UNKNOWN;
        double freeDb = FreeSpace.lossDb(
                march.request().conditions().frequency(), Math.max(CellsByRadial.NEAREST_M, distanceM) / 1000);
        if (Math.min(march.lossDb(cell), other.lossDb(cell)) > freeDb + CoveredMarch.LOST_DB) return Kind.LOST;
        double db = db(cell);
        return db > FELT_DB ? Kind.MORE : db < -FELT_DB ? Kind.LESS : Kind.ALIKE;
    }

    /**
     * Compares two maps cell by cell.
     *
     * @shape  two grids in, one kind a cell out; O(cells), pure
     * @unit   dB
     * @valid  both from the same place over the same grid and for the same heights; else IllegalArgumentException
     * @error  that of both engines between their radials, some 0.5 to 1 dB rms each, up to some dB in single cells
     * @source definition; lost as in docs/full-wave.md
     */
    static ModelDifference of(LossGrid march, LossGrid other) {
        AreaRequest asked = march.request();
        if (!asked.grid().equals(other.grid())
                || !asked.source().equals(other.request().source())
                || !asked.terminals().equals(other.request().terminals()))
            throw new IllegalArgumentException("two maps of different questions");
        return new ModelDifference(march, other);
    }

    /** The same with the other map made now, by a sweep. */
    public static ModelDifference of(
            LossGrid march, AreaRequest other, AreaGround ground, int threads, Progress progress) {
        LossGrid swept = new SweepArea(threads).withoutMeasuring().losses(other, ground, progress);
        return of(march, swept);
    }

    public CellGrid grid() {
        return march.grid();
    }

    /** Name of the model held against the march. */
    public String other() {
        return other.request().model().name();
    }

    /** Loss by the march less that by the other, dB; of a cell that both know. */
    public double db(int cell) {
        return march.lossDb(cell) - other.lossDb(cell);
    }

    /** Whether both know the cell and not both say that it is lost. */
    public boolean isCompared(int cell) {
        return kind[cell] > Kind.LOST.ordinal();
    }

    public Kind at(int cell) {
        return KINDS[kind[cell]];
    }

    /**
     * Share of the known ground of a kind.
     *
     * @shape  one kind in, scalar out; pure
     * @unit   0 to 1
     * @valid  every kind of known ground; 0 where no ground is known
     * @error  none in the count; a cell is counted whole
     * @source count of cells
     */
    public double share(Kind kind) {
        int known = grid().count() - count[Kind.UNKNOWN.ordinal()];
        return known == 0 ? 0 : (double) count[kind.ordinal()] / known;
    }

    /**
     * Ground of a kind.
     *
     * @shape  one kind in, scalar out; pure
     * @unit   m²
     * @valid  every kind
     * @error  none in the count; a cell is counted whole
     * @source count of cells
     */
    public double areaM2(Kind kind) {
        return count[kind.ordinal()] * grid().cellM() * grid().cellM();
    }
}
