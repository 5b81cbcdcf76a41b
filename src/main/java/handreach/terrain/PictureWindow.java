package handreach.terrain;

/**
 * A rectangle of degrees cut into pixels, the first at its north-west corner.
 *
 * @param northDeg upper edge
 * @param westDeg left edge
 * @param latitudeStepDeg height of a pixel, above 0
 * @param longitudeStepDeg width of a pixel, above 0
 */
public record PictureWindow(
        double northDeg, double westDeg, double latitudeStepDeg, double longitudeStepDeg, int columns, int rows) {
    double latitudeDeg(double row) {
        return northDeg - row * latitudeStepDeg;
    }

    double longitudeDeg(double column) {
        return westDeg + column * longitudeStepDeg;
    }
}
