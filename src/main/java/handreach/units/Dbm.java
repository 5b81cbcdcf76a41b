package handreach.units;

/**
 * A power level relative to one milliwatt. Two levels cannot be added: add watts.
 *
 * @param dbm decibels over one milliwatt
 */
public record Dbm(double dbm) {
    /** Thermal noise at 290 K in 1 Hz, dBm: Boltzmann's constant, as the SI fixes it, times the temperature. */
    public static final double THERMAL_PER_HZ = 10 * Math.log10(1.380649e-23 * 290) + 30;

    public Dbm {
        if (Double.isNaN(dbm)) throw new IllegalArgumentException("a level must be a number");
    }

    /** Level of a power in watts; the power must be above zero. */
    public static Dbm ofWatts(double watts) {
        if (!(watts > 0)) throw new IllegalArgumentException("a power must be above zero watts, not " + watts);
        return new Dbm(10 * Math.log10(watts) + 30);
    }
}
