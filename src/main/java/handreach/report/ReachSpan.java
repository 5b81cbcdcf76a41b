package handreach.report;

import handreach.units.Lengths;

/**
 * A reach with its interval from the doubt common to all places.
 *
 * @param distanceKm estimate, km
 * @param lowKm lower end of the interval, km
 * @param highKm upper end of the interval, km
 * @param isAtLeast whether it ended at the edge of what was looked at, so that it is at least this
 */
public record ReachSpan(double distanceKm, double lowKm, double highKm, boolean isAtLeast) {
    public ReachSpan {
        if (!(lowKm >= 0 && lowKm <= distanceKm && distanceKm <= highKm) || Double.isInfinite(highKm))
            throw new IllegalArgumentException("reach " + distanceKm + " km, interval " + lowKm + " to " + highKm);
    }

    /** {@code 2.9 km (2.1 to 3.8 km)}. */
    public String text(Lengths style) {
        return (isAtLeast ? "at least " : "") + style.text(1000 * distanceKm) + " ("
                + style.range(1000 * lowKm, 1000 * highKm) + ")";
    }
}
