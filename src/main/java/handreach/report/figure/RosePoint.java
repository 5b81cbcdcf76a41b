package handreach.report.figure;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reach along one bearing.
 *
 * @param bearingDeg degrees from true north
 * @param distanceKm reach, km
 * @param lowKm lower end of its interval, km
 * @param highKm upper end of its interval, km
 * @param isKnown false where ground without heights ended it, so that it is at least this
 * @param unknownBeyondKm from where on heights are missing, km; empty where all are known
 * @param again what is reached again beyond a gap; empty where nothing is
 */
public record RosePoint(
        double bearingDeg,
        double distanceKm,
        double lowKm,
        double highKm,
        boolean isKnown,
        OptionalDouble unknownBeyondKm,
        Optional<Again> again) {
    /**
     * Ground beyond the first gap.
     *
     * @param farthestKm farthest place that is reached, km
     * @param share share of the known ground beyond the continuous reach that is reached, 0 to 1
     */
    public record Again(double farthestKm, double share) {}

    public RosePoint {
        if (!(lowKm >= 0 && lowKm <= distanceKm && distanceKm <= highKm) || Double.isInfinite(highKm))
            throw new IllegalArgumentException("reach " + distanceKm + " km, interval " + lowKm + " to " + highKm);
        if (!isKnown && unknownBeyondKm.isEmpty())
            throw new IllegalArgumentException("ended by unknown ground that begins nowhere");
    }

    /** The farthest place that is reached at all, km. */
    public double farthestKm() {
        return again.map(Again::farthestKm).orElse(distanceKm);
    }
}
