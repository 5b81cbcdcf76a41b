package handreach.terrain;

/**
 * The rectangle between the outermost posts of a tile, degrees on WGS 84. East is below west where it crosses the date line.
 */
public record TileBounds(double southDeg, double westDeg, double northDeg, double eastDeg) {
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
