package handreach.terrain;

import handreach.geodesy.Position;

/** The plane in which the posts of a tile form a rectangular lattice. Safe for several threads. */
interface Frame {
    /** Degrees themselves: x is longitude, y latitude on WGS 84 or on a datum that lies within two metres of it. */
    Frame DEGREES = new Frame() {
        @Override
        public void toPlane(double latitudeDeg, double longitudeDeg, double[] xy) {
            xy[0] = longitudeDeg;
            xy[1] = latitudeDeg;
        }

        @Override
        public Position toPosition(double x, double y) {
            return new Position(Math.max(-90, Math.min(90, y)), x);
        }

        @Override
        public String key() {
            return "degrees";
        }
    };

    /** What a place outside the plane becomes: a pole, which no tile of a plane reaches. */
    Position NOWHERE = new Position(90, 0);

    /** Plane coordinates, x to the east first; NaN where the projection has none. */
    void toPlane(double latitudeDeg, double longitudeDeg, double[] xy);

    /** The position of plane coordinates; {@link #NOWHERE} where the projection has none. */
    Position toPosition(double x, double y);

    /** Equal for frames that give equal coordinates. */
    String key();

    default boolean isDegrees() {
        return this == DEGREES;
    }
}
