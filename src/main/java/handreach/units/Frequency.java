package handreach.units;

/**
 * A carrier frequency.
 *
 * @param mhz megahertz, above zero
 */
public record Frequency(double mhz) {
    /** Speed of light in vacuum, m/s (exact, SI). */
    public static final double SPEED_OF_LIGHT = 299_792_458;

    public Frequency {
        if (!(mhz > 0) || Double.isInfinite(mhz))
            throw new IllegalArgumentException("a frequency must be above zero MHz, not " + mhz);
    }

    /** Written out, as its hash is: linking the generated pair costs a cold start some 20 ms. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Frequency that && Double.compare(mhz, that.mhz) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(mhz);
    }

    public double ghz() {
        return mhz / 1000;
    }

    /** Wavelength in vacuum, m. */
    public double wavelengthM() {
        return SPEED_OF_LIGHT / (mhz * 1e6);
    }

    /** Wave number in vacuum, radians per metre. */
    public double waveNumber() {
        return 2 * Math.PI / wavelengthM();
    }
}
