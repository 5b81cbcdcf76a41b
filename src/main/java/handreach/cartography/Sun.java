package handreach.cartography;

/**
 * Where the light of a hillshade comes from.
 *
 * @param azimuthDeg degrees clockwise from north that the light comes from
 * @param altitudeDeg degrees above the horizon, 0 to 90
 */
record Sun(double azimuthDeg, double altitudeDeg) {
    /** From the upper left of the sheet, where eyes expect it: common practice in relief shading. */
    public static final Sun USUAL = new Sun(315, 45);

    public Sun {
        if (!Double.isFinite(azimuthDeg) || !(altitudeDeg >= 0 && altitudeDeg <= 90))
            throw new IllegalArgumentException("sun at " + azimuthDeg + ", " + altitudeDeg + " degrees");
    }
}
