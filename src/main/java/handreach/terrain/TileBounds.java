package handreach.terrain;

import handreach.geodesy.Position;
import java.util.Optional;

/**
 * The rectangle between the outermost posts of a tile, degrees on WGS 84. East is below west where it crosses the date line.
 */
public record TileBounds(double southDeg, double westDeg, double northDeg, double eastDeg) {
    /** Of latitude, at least; the shortest degree of the meridian, at the equator, is 110 574 m. */
    private static final double METRES_A_DEGREE = 110_574;

    public TileBounds {
        if (!(southDeg <= northDeg) || !Double.isFinite(westDeg + eastDeg))
            throw new IllegalArgumentException("bounds " + southDeg + " to " + northDeg);
    }

    public double centreLatitudeDeg() {
        return (southDeg + northDeg) / 2;
    }

    public double centreLongitudeDeg() {
        double span = eastDeg >= westDeg ? eastDeg - westDeg : eastDeg - westDeg + 360;
        double centre = westDeg + span / 2;
        return centre >= 180 ? centre - 360 : centre;
    }

    /** Whether a position lies inside, edges included. */
    public boolean holds(double latitudeDeg, double longitudeDeg) {
        if (!(latitudeDeg >= southDeg && latitudeDeg <= northDeg)) return false;
        return eastDeg >= westDeg
                ? longitudeDeg >= westDeg && longitudeDeg <= eastDeg
                : longitudeDeg >= westDeg || longitudeDeg <= eastDeg;
    }

    /** What two rectangles have in common; nothing where they do not meet. Of two pieces round the earth, the one further west. */
    Optional<TileBounds> overlap(TileBounds other) {
        double south = Math.max(southDeg, other.southDeg);
        double north = Math.min(northDeg, other.northDeg);
        double width = onward(eastDeg - westDeg);
        double otherWidth = onward(other.eastDeg - other.westDeg);
        double shift = onward(other.westDeg - westDeg);
        if (shift > width) shift -= 360;
        double from = Math.max(0, shift);
        double to = Math.min(width, shift + otherWidth);
        if (south > north || from > to) return Optional.empty();
        return Optional.of(new TileBounds(south, turned(westDeg + from), north, turned(westDeg + to)));
    }

    /** Width from west to east, degrees. */
    double widthDeg() {
        return onward(eastDeg - westDeg);
    }

    /** Longitude at a share of the way from west to east. */
    double longitudeDeg(double share) {
        return turned(westDeg + share * widthDeg());
    }

    private static double onward(double degrees) {
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private static double turned(double longitudeDeg) {
        return longitudeDeg > 180 ? longitudeDeg - 360 : longitudeDeg;
    }

    /** The rectangle round a disc on the ground; all longitudes next to a pole. */
    public static TileBounds around(Position centre, double radiusM) {
        double upDeg = radiusM / METRES_A_DEGREE;
        double south = Math.max(-90, centre.latitudeDeg() - upDeg);
        double north = Math.min(90, centre.latitudeDeg() + upDeg);
        double narrowest = Math.cos(Math.toRadians(Math.max(Math.abs(south), Math.abs(north))));
        double acrossDeg = upDeg / Math.max(1e-9, narrowest);
        if (acrossDeg >= 180) return new TileBounds(south, -180, north, 180);
        double west = centre.longitudeDeg() - acrossDeg;
        return new TileBounds(south, west < -180 ? west + 360 : west, north, turned(centre.longitudeDeg() + acrossDeg));
    }

    /** The same rectangle with a margin around it. */
    TileBounds widened(double marginDeg) {
        double west = westDeg - marginDeg;
        double east = eastDeg + marginDeg;
        return new TileBounds(
                southDeg - marginDeg,
                west < -180 ? west + 360 : west,
                northDeg + marginDeg,
                east > 180 ? east - 360 : east);
    }
}
