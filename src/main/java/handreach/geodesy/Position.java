package handreach.geodesy;

/**
 * A place on the WGS 84 ellipsoid.
 *
 * @param latitudeDeg degrees north, −90 to 90
 * @param longitudeDeg degrees east, −180 up to but not 180
 */
public record Position(double latitudeDeg, double longitudeDeg) {
    public Position {
        if (!(latitudeDeg >= -90 && latitudeDeg <= 90))
            throw new IllegalArgumentException("latitude " + latitudeDeg + " is not between -90 and 90");
        if (!(Math.abs(longitudeDeg) <= 540)) throw new IllegalArgumentException("longitude " + longitudeDeg);
        while (longitudeDeg >= 180) longitudeDeg -= 360;
        while (longitudeDeg < -180) longitudeDeg += 360;
    }
}
