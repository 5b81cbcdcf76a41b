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
}
