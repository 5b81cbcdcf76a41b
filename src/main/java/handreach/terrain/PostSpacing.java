package handreach.terrain;

/**
 * How far apart the posts of a tile stand.
 *
 * @param northSouth along a column, in the tile's own unit
 * @param eastWest along a row, in the tile's own unit
 * @param unit {@code arc-seconds}, or the unit of the map projection
 * @param smallerM the smaller of the two on the ground, m, at the centre of the tile
 */
public record PostSpacing(double northSouth, double eastWest, String unit, double smallerM) {
    public PostSpacing {
        if (!(northSouth > 0) || !(eastWest > 0) || !(smallerM > 0))
            throw new IllegalArgumentException("spacing " + northSouth + " by " + eastWest + " " + unit);
    }
}
