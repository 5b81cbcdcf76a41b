package handreach.report.figure;

import handreach.geodesy.Position;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A point on a map.
 *
 * @param position where
 * @param kind which symbol
 * @param label word beside it, may be empty
 * @param facing which way somebody faces there, where it is known
 */
public record MapPlace(Position position, Kind kind, String label, Optional<Facing> facing) {
    /**
     * Which way somebody faces.
     *
     * @param headingDeg clockwise from true north, degrees
     * @param betterDeg which way to face instead, where turning pays
     */
    public record Facing(double headingDeg, OptionalDouble betterDeg) {}

    public MapPlace(Position position, Kind kind, String label) {
        this(position, kind, label, Optional.empty());
    }

    /** Symbols that stay apart in black and white. */
    public enum Kind {
        BASE("base"),
        PERSON("somebody at a place"),
        RELAY("relay"),
        /** A further place where a relay could stand. */
        SITE("further site for a relay"),
        /** One of the points that stand for a route or a sector. */
        SPREAD("point of a route or sector"),
        POINT("point");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** As a key names it. */
        String words() {
            return words;
        }
    }
}
