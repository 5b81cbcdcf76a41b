package handreach.cartography;

import handreach.geodesy.Position;

/** The place under a point of a map. */
public final class PixelPlace {
    private PixelPlace() {}

    public static Position of(MapFrame frame, double xPx, double yPx) {
        return new Position(frame.latitudeDeg(yPx), frame.longitudeDeg(xPx));
    }
}
