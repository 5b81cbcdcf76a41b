package handreach.atlas;

import handreach.input.Range;
import handreach.reach.CellGrid;
import java.io.Serializable;

/**
 * What an atlas is asked for, in plain numbers, so that it can be handed from one machine to another.
 *
 * @param box the box round the region
 * @param gridM from position to position, m
 * @param targetsM from target to target, m
 * @param reach what is asked of each position
 */
public record AtlasQuestion(Box box, double gridM, double targetsM, Reach reach) implements Serializable {
    /** Grids that can be asked for; our suggestion. */
    public static final Range GRID = new Range("grid", 30, 20_000, "m");

    private static final long serialVersionUID = 1L;

    /** Edges, degrees. */
    public record Box(double southDeg, double westDeg, double northDeg, double eastDeg) implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    /**
     * What is asked of each position.
     *
     * @param radiusM how far to look, m
     * @param bearingStepDeg degrees between bearings
     * @param odds wanted share of places with copy, 0 to 1
     * @param servesM median reach from which a loadout is taken to serve, m
     */
    public record Reach(double radiusM, double bearingStepDeg, double odds, double servesM) implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    /** All positions of the box, those outside the region too. */
    public CellGrid positions() {
        return CellGrid.over(box.southDeg, box.westDeg, box.northDeg, box.eastDeg, gridM);
    }

    /** All targets of the box; the very grid of the positions where both are as fine. */
    public CellGrid targets() {
        return CellGrid.over(box.southDeg, box.westDeg, box.northDeg, box.eastDeg, targetsM);
    }
}
