package handreach.propagation;

/**
 * Electrical constants of the ground.
 *
 * @param permittivity relative permittivity, at least 1
 * @param conductivity S/m, not negative
 */
public record Ground(double permittivity, double conductivity) {
    public static final Ground AVERAGE = new Ground(15, 0.005);

    public Ground {
        if (!(permittivity >= 1 && permittivity <= 200) || !(conductivity >= 0 && conductivity <= 100))
            throw new IllegalArgumentException("ground constants " + permittivity + ", " + conductivity + " S/m");
    }
}
