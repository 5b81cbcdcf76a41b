package handreach.profile;

import java.util.Locale;

/**
 * A stretch of a path whose ground is not known.
 *
 * @param fromKm last known sample before it, or 0
 * @param toKm first known sample after it, or the end of the path
 */
public record VoidGap(double fromKm, double toKm) {
    public VoidGap {
        if (!(fromKm >= 0) || !(toKm >= fromKm)) throw new IllegalArgumentException("gap " + fromKm + " to " + toKm);
    }

    /** Such as {@code 3.21 to 4.05 km}. */
    public String words() {
        return String.format(Locale.ROOT, "%.2f to %.2f km", fromKm, toKm);
    }
}
