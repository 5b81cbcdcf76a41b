package handreach.units;

/**
 * Gain over a half-wave dipole in free space.
 *
 * @param dbd decibels over the dipole
 */
public record Dbd(double dbd) {
    /** Gain of the half-wave dipole over isotropic as rounded in ITU-R BS.561 (from memory); 2.151 for sinusoidal current. */
    public static final double DIPOLE_DBI = 2.15;

    public Dbd {
        if (Double.isNaN(dbd)) throw new IllegalArgumentException("a gain must be a number");
    }

    public Db minus(Dbd other) {
        return new Db(dbd - other.dbd);
    }

    /** The same gain over isotropic. */
    public Dbi toDbi() {
        return new Dbi(dbd + DIPOLE_DBI);
    }
}
