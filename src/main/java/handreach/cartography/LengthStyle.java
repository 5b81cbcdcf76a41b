package handreach.cartography;

import java.util.Locale;

/** How the user wants lengths written. Reckoning is always metric. */
public enum LengthStyle {
    METRIC("km", 1000, "m", 1),
    /** International mile and foot, exact by definition (1959). */
    MILES("mi", 1609.344, "ft", 0.3048);

    private final String longUnit;
    private final double longM;
    private final String shortUnit;
    private final double shortM;

    LengthStyle(String longUnit, double longM, String shortUnit, double shortM) {
        this.longUnit = longUnit;
        this.longM = longM;
        this.shortUnit = shortUnit;
        this.shortM = shortM;
    }

    public String longUnit() {
        return longUnit;
    }

    public String shortUnit() {
        return shortUnit;
    }

    public double longUnitM() {
        return longM;
    }

    public double shortUnitM() {
        return shortM;
    }

    /** A way on the map, one decimal, with its unit: {@code 2.9 km}. */
    public String distanceText(double distanceKm) {
        return distanceNumber(distanceKm) + " " + longUnit;
    }

    /** A way on the map without its unit, one decimal. */
    public String distanceNumber(double distanceKm) {
        return String.format(Locale.ROOT, "%.1f", distanceKm * 1000 / longM).replace('-', '\u2212');
    }

    /** A height or a short length, whole units: {@code 1240 m}. */
    public String heightText(double heightM) {
        return String.format(Locale.ROOT, "%d %s", Math.round(heightM / shortM), shortUnit)
                .replace('-', '\u2212');
    }
}
