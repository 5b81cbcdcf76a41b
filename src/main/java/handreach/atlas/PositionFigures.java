package handreach.atlas;

import handreach.geodesy.Position;
import java.util.List;

/**
 * What the loadouts do at one position.
 *
 * @param cell of the grid of positions
 * @param at where
 * @param loadouts in the order in which they were asked for; none where the ground under the position is unknown
 */
public record PositionFigures(int cell, Position at, List<LoadoutFigures> loadouts) {
    /** No loadout serves. */
    public static final int NONE = -1;

    public PositionFigures {
        loadouts = List.copyOf(loadouts);
    }

    /** Whether the ground under the position is known. */
    public boolean isKnown() {
        return !loadouts.isEmpty();
    }

    /** Whether its bits tell of later targets alone, until {@link PairsOnce} makes them whole. */
    public boolean isOfLater() {
        return isKnown() && loadouts.get(0).heard().isOfLater();
    }

    /**
     * The first of the loadouts in an order of burden, the least first, whose median reach serves.
     *
     * @shape  order in, number of the loadout out, or {@link #NONE}; pure
     * @unit   servesM m
     * @valid  positions on known ground; elsewhere {@link #NONE}
     * @error  that of the median
     * @source definition, docs/atlas.md
     */
    public int least(List<Integer> byBurden, double servesM) {
        if (!isKnown()) return NONE;
        for (int loadout : byBurden) if (loadouts.get(loadout).medianM().value() >= servesM) return loadout;
        return NONE;
    }
}
