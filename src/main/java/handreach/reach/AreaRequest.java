package handreach.reach;

import handreach.geodesy.Position;
import handreach.input.Range;
import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;

/**
 * What an area is asked for: the loss from one position to every cell of a grid. The source may lie anywhere within the
 * radius; several positions that ask over one grid can be laid on one another cell by cell.
 *
 * @param source where the first antenna stands
 * @param grid cells in which the second antenna stands, at their centres
 * @param radiusM cells farther from the source than this are left outside, m
 * @param terminals antenna heights above ground, first at the source, then in the cell
 * @param conditions frequency, polarisation, ground, air, climate
 * @param model loss model
 */
public record AreaRequest(
        Position source,
        CellGrid grid,
        double radiusM,
        Terminals terminals,
        PathConditions conditions,
        LossModel model) {
    /**
     * Radius that can be asked for: within the least, hardly a hill stands between two people (our suggestion); beyond the largest,
     * the house has no model for antennas near the ground.
     */
    public static final Range RADIUS = new Range("radius_km", 0.2, 120, "km");
    /** Farthest cell an engine computes, m. */
    public static final double LARGEST_RADIUS_M = 1000 * RADIUS.high();
    /** Sides of a cell that can be asked for; our suggestion. */
    public static final Range CELL = new Range("cell_m", 5, 2000, "m");

    public AreaRequest {
        if (!(radiusM > 0 && radiusM <= LARGEST_RADIUS_M))
            throw new IllegalArgumentException("radius " + radiusM + " m, allowed up to " + LARGEST_RADIUS_M);
        if (source == null || grid == null || terminals == null || conditions == null || model == null)
            throw new IllegalArgumentException("an area request leaves nothing out");
    }

    public AreaRequest with(Terminals heights) {
        return new AreaRequest(source, grid, radiusM, heights, conditions, model);
    }
}
