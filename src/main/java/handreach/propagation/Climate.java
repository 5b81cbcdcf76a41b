package handreach.propagation;

import handreach.input.Range;

/**
 * What only the statistical Recommendations ask for.
 *
 * @param timePercent share of the time the loss is not exceeded, 1 to 50 %
 * @param locationPercent share of the places the loss is not exceeded, 1 to 99 %
 * @param latitudeDeg latitude of the path centre
 * @param coastTxKm distance of the first terminal to the sea along the path, km
 * @param coastRxKm distance of the last terminal to the sea along the path, km
 */
public record Climate(
        double timePercent, double locationPercent, double latitudeDeg, double coastTxKm, double coastRxKm) {
    /** Rec. ITU-R P.1812, range of application. */
    public static final Range TIME = new Range("time_percent", 1, 50, "%");
    /** Rec. ITU-R P.1812, range of application. */
    public static final Range LOCATION = new Range("location_percent", 1, 99, "%");

    public static final Range LATITUDE = new Range("latitude", -90, 90, "degrees");
    /** From the shore to half-way round the earth. */
    public static final Range COAST = new Range("coast_km", 0, 20_000, "km");

    public static final Climate MEDIAN = new Climate(50, 50, 45, 500, 500);
}
