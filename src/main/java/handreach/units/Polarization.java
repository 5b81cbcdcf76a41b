package handreach.units;

/** Plane in which the electric field swings. */
public enum Polarization {
    VERTICAL,
    HORIZONTAL
}
