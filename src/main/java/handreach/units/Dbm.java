package handreach.units;

/**
 * A power level relative to one milliwatt. Two levels can be subtracted, which gives a {@link Db}; they cannot be added.
 *
 * @param dbm decibels over one milliwatt
 */
public record Dbm(double dbm) {
    public Dbm {
        if (Double.isNaN(dbm)) throw new IllegalArgumentException("a level must be a number");
    }

    public Dbm plus(Db gain) {
        return new Dbm(dbm + gain.db());
    }

    public Dbm minus(Db loss) {
        return new Dbm(dbm - loss.db());
    }

    public Db minus(Dbm other) {
        return new Db(dbm - other.dbm);
    }

    /** Power in watts. */
    public double watts() {
        return Math.pow(10, (dbm - 30) / 10);
    }

    /** Level of a power in watts; the power must be above zero. */
    public static Dbm ofWatts(double watts) {
        if (!(watts > 0)) throw new IllegalArgumentException("a power must be above zero watts, not " + watts);
        return new Dbm(10 * Math.log10(watts) + 30);
    }
}
