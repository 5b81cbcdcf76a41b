package handreach.geodesy;

import handreach.input.Range;

/**
 * A place on the WGS 84 ellipsoid.
 *
 * @param latitudeDeg degrees north, −90 to 90
 * @param longitudeDeg degrees east, −180 up to but not 180
 */
public record Position(double latitudeDeg, double longitudeDeg) {
    /** As a file may write it. */
    public static final Range LATITUDE = new Range("latitude", -90, 90, "degrees");
    /** As a file may write it. */
    public static final Range LONGITUDE = new Range("longitude", -180, 180, "degrees");

    public Position {
        if (!(latitudeDeg >= -90 && latitudeDeg <= 90))
            throw new IllegalArgumentException("latitude " + latitudeDeg + " is not between -90 and 90");
        if (!(Math.abs(longitudeDeg) <= 540)) throw new IllegalArgumentException("longitude " + longitudeDeg);
        while (longitudeDeg >= 180) longitudeDeg -= 360;
        while (longitudeDeg < -180) longitudeDeg += 360;
    }

    /** Written out, as its hash is: linking the generated pair costs a cold start some 20 ms. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Position that
                && Double.compare(latitudeDeg, that.latitudeDeg) == 0
                && Double.compare(longitudeDeg, that.longitudeDeg) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(latitudeDeg) + Double.hashCode(longitudeDeg);
    }
}
