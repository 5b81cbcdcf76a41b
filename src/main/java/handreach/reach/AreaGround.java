package handreach.reach;

import handreach.terrain.Cover;
import handreach.terrain.Elevation;
import java.util.Arrays;

/**
 * The ground of an area as engines read it.
 *
 * @param elevation heights, or honest voids
 */
public record AreaGround(Elevation elevation) {
    public AreaGround {
        if (elevation == null) throw new IllegalArgumentException("no elevation");
    }

    /** What stands at many positions, by the ordinal of {@link Cover}. */
    void covers(double[] latitudeDeg, double[] longitudeDeg, int count, byte[] cover) {
        Arrays.fill(cover, 0, count, (byte) Cover.OPEN.ordinal());
    }
}
