package handreach.geodesy;

/** Directions in words. */
public final class Compass {
    private static final String[] WORDS = {
        "north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"
    };

    private Compass() {}

    /** The nearest of the eight points, such as {@code north-east}; the azimuth may be any finite angle in degrees. */
    public static String word(double azimuthDeg) {
        if (!Double.isFinite(azimuthDeg)) throw new IllegalArgumentException("azimuth " + azimuthDeg);
        return WORDS[(int) Math.floorMod(Math.round(azimuthDeg / 45), 8L)];
    }
}
