package handreach.cartography;

import handreach.geodesy.Position;

/**
 * The window of a map: where it is, how large, and which pixel a position falls on.
 *
 * <p>Latitude and longitude are both linear in pixels (equidistant cylindrical, true to scale at the centre), so that the same
 * picture serves a page, a GeoTIFF and a ground overlay without being resampled.
 *
 * @param centre position in the middle
 * @param metresPerPx metres of one pixel at the centre, above 0
 * @param widthPx pixels across, 1 to 20 000
 * @param heightPx pixels down, 1 to 20 000
 */
public record MapFrame(Position centre, double metresPerPx, int widthPx, int heightPx) {
    /** WGS 84, NIMA TR8350.2. */
    private static final double EQUATOR_RADIUS_M = 6_378_137;

    private static final double FLATTENING = 1 / 298.257223563;
    private static final double NEAREST_TO_POLE_DEG = 89;

    public MapFrame {
        if (!(metresPerPx > 0) || Double.isInfinite(metresPerPx))
            throw new IllegalArgumentException(metresPerPx + " metres a pixel");
        if (widthPx < 1 || widthPx > 20_000 || heightPx < 1 || heightPx > 20_000)
            throw new IllegalArgumentException("a map of " + widthPx + " by " + heightPx + " pixels");
        double halfDeg = Math.toDegrees(metresPerPx * heightPx / 2 / EQUATOR_RADIUS_M);
        if (Math.abs(centre.latitudeDeg()) + halfDeg > NEAREST_TO_POLE_DEG)
            throw new IllegalArgumentException("a map that reaches within a degree of a pole");
    }

    /** Whether a map of this radius stays clear of the poles, where its projection ends. */
    public static boolean canHold(Position centre, double radiusM) {
        return Math.abs(centre.latitudeDeg()) + Math.toDegrees(radiusM / EQUATOR_RADIUS_M) < NEAREST_TO_POLE_DEG;
    }

    /**
     * The frame that shows a radius around a position, with the shorter side just holding the circle.
     *
     * @shape  scalars in, one frame out; pure
     * @unit   radius m, size px
     * @valid  not within a degree of a pole; outside: IllegalArgumentException
     * @error  see {@link #xPx}
     * @source arithmetic
     */
    public static MapFrame around(Position centre, double radiusM, int widthPx, int heightPx) {
        return new MapFrame(centre, 2 * radiusM / Math.min(widthPx, heightPx), widthPx, heightPx);
    }

    /**
     * Pixel column of a longitude, 0 at the west edge, growing to the east.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   degrees in, pixels out
     * @valid  every longitude; the nearest way round is taken, so the 180th meridian may lie inside the map
     * @error  exact for positions in the frame; as a distance off the centre's parallel it errs by about tan(latitude) times the
     *         north-south offset over the earth radius: 16 m in 10 km, 10 km north of the centre, at 46°
     * @source equidistant cylindrical projection; radii of the WGS 84 ellipsoid
     */
    public double xPx(double longitudeDeg) {
        return widthPx / 2.0 + wrapped(longitudeDeg - centre.longitudeDeg()) / degreesEastPerPx();
    }

    /**
     * Pixel row of a latitude, 0 at the north edge, growing to the south.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   degrees in, pixels out
     * @valid  every latitude
     * @error  rounding only by the map's own rule; over the ellipsoid some 0.01 % of the distance at 120 km, by hand from the change of
     *     the meridian's radius, growing with the distance
     * @source equidistant cylindrical projection; radii of the WGS 84 ellipsoid
     */
    public double yPx(double latitudeDeg) {
        return heightPx / 2.0 - (latitudeDeg - centre.latitudeDeg()) / degreesNorthPerPx();
    }

    /**
     * Longitude of a pixel column.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   pixels in, degrees out, −180 up to but not 180
     * @valid  columns up to half a turn from the centre
     * @error  rounding only
     * @source inverse of {@link #xPx}
     */
    public double longitudeDeg(double xPx) {
        double east = centre.longitudeDeg() + (xPx - widthPx / 2.0) * degreesEastPerPx();
        return east >= 180 ? east - 360 : east < -180 ? east + 360 : east;
    }

    /**
     * Latitude of a pixel row.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   pixels in, degrees out
     * @valid  rows whose latitude lies between the poles; beyond, a number above 90 comes out
     * @error  rounding only
     * @source inverse of {@link #yPx}
     */
    public double latitudeDeg(double yPx) {
        return centre.latitudeDeg() - (yPx - heightPx / 2.0) * degreesNorthPerPx();
    }

    public boolean contains(Position position) {
        double x = xPx(position.longitudeDeg());
        double y = yPx(position.latitudeDeg());
        return x >= 0 && x <= widthPx && y >= 0 && y <= heightPx;
    }

    /** Degrees of latitude of one pixel. */
    public double degreesNorthPerPx() {
        double s = Math.sin(Math.toRadians(centre.latitudeDeg()));
        double e2 = FLATTENING * (2 - FLATTENING);
        double meridianRadiusM = EQUATOR_RADIUS_M * (1 - e2) / Math.pow(1 - e2 * s * s, 1.5);
        return Math.toDegrees(metresPerPx / meridianRadiusM);
    }

    /** Degrees of longitude of one pixel. */
    public double degreesEastPerPx() {
        double latitude = Math.toRadians(centre.latitudeDeg());
        double s = Math.sin(latitude);
        double e2 = FLATTENING * (2 - FLATTENING);
        double parallelRadiusM = EQUATOR_RADIUS_M / Math.sqrt(1 - e2 * s * s) * Math.cos(latitude);
        return Math.toDegrees(metresPerPx / parallelRadiusM);
    }

    public double northDeg() {
        return latitudeDeg(0);
    }

    public double southDeg() {
        return latitudeDeg(heightPx);
    }

    /** Longitude of the west edge, −180 up to but not 180. */
    public double westDeg() {
        return longitudeDeg(0);
    }

    /** Longitude of the east edge, east of {@link #westDeg} and so above 180 where the map holds the 180th meridian. */
    public double eastDeg() {
        return westDeg() + widthPx * degreesEastPerPx();
    }

    private static double wrapped(double degrees) {
        double d = degrees % 360;
        return d >= 180 ? d - 360 : d < -180 ? d + 360 : d;
    }
}
