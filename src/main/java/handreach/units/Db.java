package handreach.units;

/**
 * A difference or ratio of levels, in decibels. It has no reference of its own: a loss, a mismatch, a difference of two
 * readings. What does have a reference is a {@link Dbm}, a {@link Dbi} or a {@link Dbd}.
 *
 * @param db decibels; whether positive strengthens or weakens is said by whoever carries the value
 */
public record Db(double db) {
    public static final Db ZERO = new Db(0);

    public Db {
        if (Double.isNaN(db)) throw new IllegalArgumentException("decibels must be a number");
    }

    public Db plus(Db other) {
        return new Db(db + other.db);
    }

    public Db minus(Db other) {
        return new Db(db - other.db);
    }

    public Db negated() {
        return new Db(-db);
    }

    /** The power ratio that these decibels stand for. */
    public double powerRatio() {
        return Math.pow(10, db / 10);
    }

    /** Decibels of a power ratio; the ratio must be above zero. */
    public static Db ofPowerRatio(double ratio) {
        if (!(ratio > 0)) throw new IllegalArgumentException("a power ratio must be above zero, not " + ratio);
        return new Db(10 * Math.log10(ratio));
    }
}
