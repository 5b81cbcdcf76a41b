package handreach.geodesy;

/** Radii of curvature of the WGS 84 ellipsoid. */
public final class Ellipsoid {
    private static final double SEMI_MAJOR_M = 6_378_137;
    private static final double FLATTENING = 1 / 298.257223563;
    private static final double E2 = FLATTENING * (2 - FLATTENING);

    private Ellipsoid() {}

    /** Radius of the meridian at a latitude, m: a (1 − e²)/(1 − e² sin² φ)^(3/2). */
    public static double meridionalRadiusM(double latitudeDeg) {
        double sine = Math.sin(Math.toRadians(latitudeDeg));
        return SEMI_MAJOR_M * (1 - E2) / Math.pow(1 - E2 * sine * sine, 1.5);
    }

    /** Radius across the meridian at a latitude, m: a/(1 − e² sin² φ)^(1/2). */
    public static double transverseRadiusM(double latitudeDeg) {
        double sine = Math.sin(Math.toRadians(latitudeDeg));
        return SEMI_MAJOR_M / Math.sqrt(1 - E2 * sine * sine);
    }
}
