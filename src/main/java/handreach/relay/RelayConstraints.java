package handreach.relay;

import handreach.geodesy.Position;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;

/**
 * Where a relay may stand. No line power is assumed anywhere.
 *
 * @param inside it stands within these polygons, degrees, x east
 * @param outside and not within these
 * @param maxSlopeDeg steepest ground
 * @param nearTrack not farther from a track
 * @param walk not longer on foot
 * @param minSeparationM least distance between two relays, and between a site and its second best; 0 for the usual
 */
public record RelayConstraints(
        Optional<Geometry> inside,
        Optional<Geometry> outside,
        OptionalDouble maxSlopeDeg,
        Optional<NearTrack> nearTrack,
        Optional<Walk> walk,
        double minSeparationM) {
    /** Anywhere. */
    public static final RelayConstraints NONE = new RelayConstraints(
            Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty(), 0);

    public RelayConstraints {
        if (!(minSeparationM >= 0)) throw new IllegalArgumentException("separation " + minSeparationM);
    }

    /**
     * Tracks or roads, and how far from one a relay may stand.
     *
     * @param lines each a row of positions
     * @param maxDistanceM m
     */
    public record NearTrack(List<List<Position>> lines, double maxDistanceM) {
        public NearTrack {
            lines = lines.stream().map(List::copyOf).toList();
        }
    }

    /**
     * Where people start on foot, and how long they may walk.
     *
     * @param start where
     * @param maxMinutes one way; infinite where only the time is asked
     */
    public record Walk(Position start, double maxMinutes) {}
}
