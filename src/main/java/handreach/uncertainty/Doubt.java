package handreach.uncertainty;

/**
 * What is not known about a decibel value, kept in its two kinds to the end: doubt that is the same everywhere (it becomes an
 * interval on the reach) and spread between places (it becomes odds of copy). The two are combined only where an output says so.
 *
 * @param commonDb standard uncertainty common to all places, dB, not negative
 * @param spreadDb standard deviation between places, dB, not negative
 */
public record Doubt(double commonDb, double spreadDb) {
    public static final Doubt NONE = new Doubt(0, 0);

    public Doubt {
        if (!(commonDb >= 0) || !(spreadDb >= 0) || Double.isInfinite(commonDb + spreadDb))
            throw new IllegalArgumentException("doubt " + commonDb + ", spread " + spreadDb);
    }

    public static Doubt common(double commonDb) {
        return new Doubt(commonDb, 0);
    }

    public static Doubt spread(double spreadDb) {
        return new Doubt(0, spreadDb);
    }

    /** Doubt of a sum of independent values: each kind adds in squares (GUM 5.1.2). */
    public Doubt plus(Doubt other) {
        return new Doubt(Math.hypot(commonDb, other.commonDb), Math.hypot(spreadDb, other.spreadDb));
    }
}
