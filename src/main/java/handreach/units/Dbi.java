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

    public Dbi plus(Db more) {
        return new Dbi(dbi + more.db());
    }

    public Db minus(Dbi other) {
        return new Db(dbi - other.dbi);
    }

    /** The same gain over a half-wave dipole. */
    public Dbd toDbd() {
        return new Dbd(dbi - Dbd.DIPOLE_DBI);
    }
}
