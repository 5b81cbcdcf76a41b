package handreach.units;

/**
 * Gain over an isotropic antenna.
 *
 * @param dbi decibels over isotropic
 */
public record Dbi(double dbi) {
    public Dbi {
        if (Double.isNaN(dbi)) throw new IllegalArgumentException("a gain must be a number");
    }
}
