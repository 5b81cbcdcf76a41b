package handreach.reach;

/** What one link reaches that another does not: the places a bigger antenna buys, and those it loses. */
public final class LoadoutDifference {
    /** What the two links do in a cell. */
    public enum Place {
        UNKNOWN,
        NEITHER,
        BOTH,
        /** The second link reaches it, the first does not. */
        BOUGHT,
        /** The first link reaches it, the second does not: as where a flattened pattern meets steep ground. */
        LOST
    }

    private static final Place[] PLACES = Place.values();

    private final CellGrid grid;
    private final byte[] place;
    private final int[] count;

    private LoadoutDifference(CellGrid grid, byte[] place, int[] count) {
        this.grid = grid;
        this.place = place;
        this.count = count;
    }

    /**
     * Compares two links cell by cell.
     *
     * @shape  two grids in, one place a cell out; O(cells), pure
     * @unit   odds 0 to 1
     * @valid  both over the same grid; else IllegalArgumentException
     * @error  that of the odds; doubt common to both links moves both outlines together
     * @source definition, docs/definitions.md
     */
    public static LoadoutDifference of(OddsGrid first, OddsGrid second, double targetOdds) {
        if (!first.grid().equals(second.grid())) throw new IllegalArgumentException("links over different grids");
        double firstDb = first.link().thresholdDb(targetOdds);
        double secondDb = second.link().thresholdDb(targetOdds);
        byte[] place = new byte[first.grid().count()];
        int[] count = new int[PLACES.length];
        for (int cell = 0; cell < place.length; cell++) {
            Place found = Place.UNKNOWN;
            if (first.isKnown(cell) && second.isKnown(cell)) {
                boolean a = first.marginDb(cell) >= firstDb;
                boolean b = second.marginDb(cell) >= secondDb;
                found = a ? (b ? Place.BOTH : Place.LOST) : (b ? Place.BOUGHT : Place.NEITHER);
            }
            place[cell] = (byte) found.ordinal();
            count[found.ordinal()]++;
        }
        return new LoadoutDifference(first.grid(), place, count);
    }

    public CellGrid grid() {
        return grid;
    }

    public Place at(int cell) {
        return PLACES[place[cell]];
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
    public double share(Place kind) {
        int known = grid.count() - count[Place.UNKNOWN.ordinal()];
        return known == 0 ? 0 : (double) count[kind.ordinal()] / known;
    }
}
