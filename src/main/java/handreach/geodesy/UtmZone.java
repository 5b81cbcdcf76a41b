package handreach.geodesy;

/**
 * One zone of the Universal Transverse Mercator grid on WGS 84, northern or southern.
 *
 * @param number 1 to 60
 * @param isSouth whether northings count from 10 000 km south of the equator
 */
public record UtmZone(int number, boolean isSouth) {
    private static final double SCALE = 0.9996;
    private static final double FALSE_EASTING_M = 500_000;
    private static final double FALSE_NORTHING_M = 10_000_000;

    public UtmZone {
        if (number < 1 || number > 60) throw new IllegalArgumentException("zone " + number);
    }

    /** Whether the grid reaches that far north and south: 80 S to 84 N. */
    public static boolean covers(Position place) {
        return place.latitudeDeg() >= -80 && place.latitudeDeg() <= 84;
    }

    /**
     * The zone that a position belongs to, with the exceptions around south-west Norway and Svalbard.
     *
     * @shape position in, zone out; pure
     * @unit degrees
     * @valid 80 S to 84 N, else IllegalArgumentException
     * @error none
     * @source NGA.STND.0037, Universal Grids, <em>from memory</em>; checked against GeoConvert rows
     */
    public static UtmZone of(Position place) {
        if (!covers(place)) throw new IllegalArgumentException("no UTM at latitude " + place.latitudeDeg());
        double lat = place.latitudeDeg();
        double lon = place.longitudeDeg();
        int zone = (int) Math.floor((lon + 180) / 6) + 1;
        if (lat >= 56 && lat < 64 && lon >= 3 && lon < 12) zone = 32;
        if (lat >= 72 && lon >= 0 && lon < 42) zone = lon < 9 ? 31 : lon < 21 ? 33 : lon < 33 ? 35 : 37;
        return new UtmZone(zone, lat < 0);
    }

    public double centralMeridianDeg() {
        return number * 6 - 183;
    }

    /**
     * Easting and northing of a position, which may lie outside the zone.
     *
     * @shape two numbers in, two numbers into the array; no allocation
     * @unit degrees in; metres out, easting first
     * @valid within 60 degrees of the central meridian
     * @error below 0.01 mm within 10 degrees of it, see {@link TransverseMercator}
     * @source NGA.STND.0037; scale 0.9996, false easting 500 km, false northing 10 000 km in the south
     */
    public void project(double latitudeDeg, double longitudeDeg, double[] eastingNorthingM) {
        double fromMeridian = longitudeDeg - centralMeridianDeg();
        if (fromMeridian > 180) fromMeridian -= 360;
        if (fromMeridian < -180) fromMeridian += 360;
        TransverseMercator.project(latitudeDeg, fromMeridian, eastingNorthingM);
        eastingNorthingM[0] = FALSE_EASTING_M + SCALE * eastingNorthingM[0];
        eastingNorthingM[1] = (isSouth ? FALSE_NORTHING_M : 0) + SCALE * eastingNorthingM[1];
    }

    /**
     * Angle from true to grid north, positive where grid north lies east: tan γ = tan(λ − λ0) sin φ.
     *
     * @shape position in, scalar out; pure
     * @unit degrees
     * @valid within the zone or a neighbour of it
     * @error below 0.001 degrees within 4 degrees of the central meridian, from the grid itself
     * @source by hand for the sphere; the ellipsoid moves it by less than is told
     */
    double convergenceDeg(Position place) {
        double fromMeridian = Math.toRadians(place.longitudeDeg() - centralMeridianDeg());
        return Math.toDegrees(Math.atan(Math.tan(fromMeridian) * Math.sin(Math.toRadians(place.latitudeDeg()))));
    }

    /** The position of an easting and northing; the inverse of {@link #project}, with the same validity and error. */
    public Position position(double eastingM, double northingM) {
        double[] latLon = new double[2];
        TransverseMercator.unproject(
                (eastingM - FALSE_EASTING_M) / SCALE, (northingM - (isSouth ? FALSE_NORTHING_M : 0)) / SCALE, latLon);
        return new Position(latLon[0], centralMeridianDeg() + latLon[1]);
    }
}
