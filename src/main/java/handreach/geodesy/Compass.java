package handreach.geodesy;

import handreach.input.Range;

/** Directions in words. */
public final class Compass {
    /** Where somebody faces, clockwise from true north. */
    public static final Range HEADING = new Range("heading_deg", 0, 360, "degrees");

    private static final String[] WORDS = {
        "north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"
    };

    private static final String[] LETTERS = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};

    private Compass() {}

    /** The nearest of the eight points, such as {@code north-east}; the azimuth may be any finite angle in degrees. */
    public static String word(double azimuthDeg) {
        return WORDS[point(azimuthDeg)];
    }

    /** The same in letters, for columns: {@code NE}. */
    public static String letters(double azimuthDeg) {
        return LETTERS[point(azimuthDeg)];
    }

    private static int point(double azimuthDeg) {
        if (!Double.isFinite(azimuthDeg)) throw new IllegalArgumentException("azimuth " + azimuthDeg);
        return (int) Math.floorMod(Math.round(azimuthDeg / 45), 8L);
    }
}
