package handreach.report.figure;

import handreach.geodesy.Position;

/**
 * A point on a map.
 *
 * @param position where
 * @param kind which symbol
 * @param label word beside it, may be empty
 */
public record MapPlace(Position position, Kind kind, String label) {
    /** Symbols that stay apart in black and white. */
    public enum Kind {
        BASE,
        PERSON,
        RELAY,
        POINT
    }
}
