package handreach.report.figure;

import java.util.Optional;
import java.util.OptionalDouble;

/** Points of a rose on paper. */
public final class RosePoints {
    private RosePoints() {}

    /** Over ground whose heights are all known. */
    public static RosePoint known(double bearingDeg, double distanceKm, double lowKm, double highKm) {
        return new RosePoint(bearingDeg, distanceKm, lowKm, highKm, true, OptionalDouble.empty(), Optional.empty());
    }

    /** Ended by missing heights just there. */
    public static RosePoint endedByUnknown(double bearingDeg, double distanceKm) {
        return new RosePoint(
                bearingDeg, distanceKm, distanceKm, distanceKm, false, OptionalDouble.of(distanceKm), Optional.empty());
    }

    /** Over known ground, with copy again beyond a gap on a share of the ground, as far as another place. */
    public static RosePoint reachedAgain(double bearingDeg, double distanceKm, double againKm, double share) {
        return new RosePoint(
                bearingDeg,
                distanceKm,
                distanceKm,
                distanceKm,
                true,
                OptionalDouble.empty(),
                Optional.of(new RosePoint.Again(againKm, share)));
    }

    /** Ended by a gap, before heights end farther out. */
    public static RosePoint deadBeforeUnknown(double bearingDeg, double distanceKm, double unknownBeyondKm) {
        return new RosePoint(
                bearingDeg,
                distanceKm,
                distanceKm,
                distanceKm,
                true,
                OptionalDouble.of(unknownBeyondKm),
                Optional.empty());
    }
}
