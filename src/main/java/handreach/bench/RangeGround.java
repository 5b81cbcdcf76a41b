package handreach.bench;

/**
 * Ground under a test range.
 *
 * @param permittivity relative permittivity, from 1 up
 * @param conductivity siemens per metre, not negative
 */
record RangeGround(double permittivity, double conductivity) {
    /** Ground of medium quality, as in the check rows of the two-ray formula (ITU-R P.527, from memory). */
    public static final RangeGround AVERAGE = new RangeGround(15, 0.005);

    public static final RangeGround DRY = new RangeGround(4, 0.001);
    public static final RangeGround WET = new RangeGround(30, 0.01);

    public RangeGround {
        if (!(permittivity >= 1 && permittivity < 1000) || !(conductivity >= 0 && conductivity < 100))
            throw new IllegalArgumentException("ground of " + permittivity + ", " + conductivity + " S/m");
    }
}
