package handreach.geodesy;

/** Radii of curvature of the WGS 84 ellipsoid. */
public final class Ellipsoid {
    private static final double SEMI_MAJOR_M = 6_378_137;
    private static final double FLATTENING = 1 / 298.257223563;
    private static final double E2 = FLATTENING * (2 - FLATTENING);

    private Ellipsoid() {}

    /**
     * Radius of curvature in the meridian: a (1 − e²)/(1 − e² sin² φ)^(3/2).
     *
     * @shape  scalar in, scalar out; pure
     * @unit   latitude degrees; result m
     * @valid  every latitude, −90 to 90
     * @error  rounding
     * @source closed form of the WGS 84 ellipsoid (a 6 378 137 m, 1/f 298.257223563; NGA.STND.0036)
     */
    public static double meridionalRadiusM(double latitudeDeg) {
        double sine = Math.sin(Math.toRadians(latitudeDeg));
        return SEMI_MAJOR_M * (1 - E2) / Math.pow(1 - E2 * sine * sine, 1.5);
    }

    /**
     * Radius of curvature across the meridian: a/(1 − e² sin² φ)^(1/2).
     *
     * @shape  scalar in, scalar out; pure
     * @unit   latitude degrees; result m
     * @valid  every latitude, −90 to 90
     * @error  rounding
     * @source as {@link #meridionalRadiusM}
     */
    public static double transverseRadiusM(double latitudeDeg) {
        double sine = Math.sin(Math.toRadians(latitudeDeg));
        return SEMI_MAJOR_M / Math.sqrt(1 - E2 * sine * sine);
    }
}
