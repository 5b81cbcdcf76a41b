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
}
