package handreach.report;

/**
 * Reach along one bearing.
 *
 * @param bearingDeg degrees clockwise from true north
 * @param distanceKm reach, km
 * @param lowKm lower end of its interval, km
 * @param highKm upper end of its interval, km
 * @param isKnown false where ground without heights hides the answer
 */
public record RosePoint(double bearingDeg, double distanceKm, double lowKm, double highKm, boolean isKnown) {
    public RosePoint {
        if (!(lowKm >= 0 && lowKm <= distanceKm && distanceKm <= highKm) || Double.isInfinite(highKm))
            throw new IllegalArgumentException("reach " + distanceKm + " km, interval " + lowKm + " to " + highKm);
    }
}
