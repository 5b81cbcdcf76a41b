package handreach.units;

/**
 * A power level relative to one milliwatt. Two levels cannot be added: add watts.
 *
 * @param dbm decibels over one milliwatt
 */
public record Dbm(double dbm) {
    public Dbm {
        if (Double.isNaN(dbm)) throw new IllegalArgumentException("a level must be a number");
    }

    /** Level of a power in watts; the power must be above zero. */
    public static Dbm ofWatts(double watts) {
        if (!(watts > 0)) throw new IllegalArgumentException("a power must be above zero watts, not " + watts);
        return new Dbm(10 * Math.log10(watts) + 30);
    }
}
