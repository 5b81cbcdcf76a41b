package handreach.atlas;

import handreach.reach.CellGrid;
import java.util.List;

/** By how many positions each target is heard with one loadout. Immutable. */
public final class HeardBy {
    private final int[] counts;

    private HeardBy(int[] counts) {
        this.counts = counts;
    }

    /**
     * Counts over all positions.
     *
     * @shape  positions in, one count a target out; O(bits)
     * @unit   number of positions
     * @valid  positions reckoned over these targets; those on unknown ground count for nothing
     * @error  none beyond that of the bits
     * @source definition, docs/atlas.md
     */
    public static HeardBy of(CellGrid targets, List<PositionFigures> positions, int loadout) {
        int[] counts = new int[targets.count()];
        for (PositionFigures one : positions)
            if (one.isKnown()) one.loadouts().get(loadout).heard().each(targets, target -> counts[target]++);
        return new HeardBy(counts);
    }

    /** Number of positions that reach a target. */
    public int at(int target) {
        return counts[target];
    }
}
