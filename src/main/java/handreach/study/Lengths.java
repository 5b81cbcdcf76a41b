package handreach.study;

import java.util.Locale;

/** Lengths over ground as people read them: kilometres and metres, or miles and feet. */
public final class Lengths {
    private static final double METRES_PER_MILE = 1609.344;
    private static final double METRES_PER_FOOT = 0.3048;

    private Lengths() {}

    /** Such as {@code 2.9 km}, {@code 140 m}, {@code 1.8 mi}, {@code 450 ft}. */
    public static String words(double metres, boolean imperial) {
        if (imperial)
            return metres >= METRES_PER_MILE / 2
                    ? String.format(Locale.ROOT, "%.1f mi", metres / METRES_PER_MILE)
                    : String.format(Locale.ROOT, "%.0f ft", 10 * Math.rint(metres / METRES_PER_FOOT / 10));
        return metres >= 950
                ? String.format(Locale.ROOT, "%.1f km", metres / 1000)
                : String.format(Locale.ROOT, "%.0f m", 10 * Math.rint(metres / 10));
    }
}
