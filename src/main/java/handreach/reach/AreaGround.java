package handreach.reach;

import handreach.terrain.Elevation;

/**
 * The ground of an area as engines read it.
 *
 * @param elevation heights, or honest voids
 */
public record AreaGround(Elevation elevation) {
    public AreaGround {
        if (elevation == null) throw new IllegalArgumentException("no elevation");
    }
}
