package handreach.report.figure;

import java.util.OptionalDouble;

/** Points of a rose on paper. */
public final class RosePoints {
    private RosePoints() {}

    /** Over ground whose heights are all known. */
    public static RosePoint known(double bearingDeg, double distanceKm, double lowKm, double highKm) {
        return new RosePoint(
                bearingDeg, distanceKm, lowKm, highKm, true, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** Ended by missing heights just there. */
    public static RosePoint endedByUnknown(double bearingDeg, double distanceKm) {
        return new RosePoint(
                bearingDeg,
                distanceKm,
                distanceKm,
                distanceKm,
                false,
                OptionalDouble.of(distanceKm),
                OptionalDouble.empty());
    }

    /** Over known ground, with copy again beyond a gap as far as another place. */
    public static RosePoint reachedAgain(double bearingDeg, double distanceKm, double againKm) {
        return new RosePoint(
                bearingDeg,
                distanceKm,
                distanceKm,
                distanceKm,
                true,
                OptionalDouble.empty(),
                OptionalDouble.of(againKm));
    }
}
