package handreach.terrain;

import handreach.geodesy.Position;
import handreach.geodesy.UtmZone;

/** UTM on WGS 84 or a datum that lies within two metres of it; needs no projection library. */
record UtmFrame(UtmZone zone) implements Frame {
    /** From the false easting: a country that uses one zone for all of its width stays within. Our suggestion. */
    private static final double FARTHEST_ACROSS_M = 2_500_000;

    private static final double FALSE_EASTING_M = 500_000;
    private static final double FALSE_NORTHING_M = 10_000_000;
    /** From the equator; the poles lie at 9 997 965 m. */
    private static final double FARTHEST_UP_M = 10_000_000;

    /** Whether an easting and a northing can be meant. */
    boolean holds(double x, double y) {
        return Math.abs(x - FALSE_EASTING_M) <= FARTHEST_ACROSS_M
                && Math.abs(y - (zone.isSouth() ? FALSE_NORTHING_M : 0)) <= FARTHEST_UP_M;
    }

    @Override
    public void toPlane(double latitudeDeg, double longitudeDeg, double[] xy) {
        zone.project(latitudeDeg, longitudeDeg, xy);
    }

    @Override
    public Position toPosition(double x, double y) {
        return holds(x, y) ? zone.position(x, y) : Frame.NOWHERE;
    }

    @Override
    public String key() {
        return "utm " + zone.number() + (zone.isSouth() ? "S" : "N");
    }
}
