package handreach.propagation;

import handreach.input.Range;

/**
 * Refraction of the lower air.
 *
 * @param effectiveRadiusFactor k, effective over true earth radius, above 0
 * @param refractivityGradient ΔN, decrease of refractivity over the lowest kilometre, N-units/km
 * @param surfaceRefractivity N0 at sea level, N-units
 */
public record Atmosphere(double effectiveRadiusFactor, double refractivityGradient, double surfaceRefractivity) {
    /** Mean earth radius of the Recommendations, km. */
    public static final double EARTH_RADIUS_KM = 6371;

    /** Decrease of refractivity over the lowest kilometre: from the worst of rising air to the brink of ducting; our suggestion. */
    public static final Range GRADIENT = new Range("refractivity_gradient", -400, 156.9, "N-units/km");
    /** Effective over true earth radius: the same air, and on to a flat earth, as published examples take it; our suggestion. */
    public static final Range FACTOR = new Range("k_factor", 0.25, 1e6, "");
    /** Refractivity at sea level, from dry cold to humid hot air; our suggestion. */
    public static final Range SURFACE_REFRACTIVITY = new Range("surface_refractivity", 200, 450, "N-units");

    public static final Atmosphere DEFAULT = ofGradient(45, 325);

    public Atmosphere {
        if (!(effectiveRadiusFactor > 0) || !Double.isFinite(effectiveRadiusFactor))
            throw new IllegalArgumentException("effective earth radius factor " + effectiveRadiusFactor);
    }

    /** From ΔN (below 157, where ducting begins) and N0: k = 157/(157 − ΔN), Rec. ITU-R P.1812 equation (6). */
    public static Atmosphere ofGradient(double refractivityGradient, double surfaceRefractivity) {
        if (!(refractivityGradient < 157))
            throw new IllegalArgumentException("ducting gradient " + refractivityGradient);
        return new Atmosphere(157 / (157 - refractivityGradient), refractivityGradient, surfaceRefractivity);
    }

    /** From k itself: ΔN = 157 (1 − 1/k). */
    public static Atmosphere ofFactor(double k, double surfaceRefractivity) {
        return new Atmosphere(k, 157 * (1 - 1 / k), surfaceRefractivity);
    }

    public double effectiveRadiusKm() {
        return EARTH_RADIUS_KM * effectiveRadiusFactor;
    }
}
