package handreach.bench.match;

import handreach.units.Frequency;

/** Lengths to cut to. */
public final class RadiatorLength {
    /** Shortening of a bare straight wire, thin for its length. */
    public static final double BARE = 0.95;

    /** Shortening of an insulated wire: insulation adds 2 to 5 % (common practice, no source). */
    public static final double INSULATED = 0.92;

    private RadiatorLength() {}

    /**
     * Length of a quarter-wave radiator or counterpoise wire.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   MHz; factor none; result mm
     * @valid  frequency above 0; factor above 0 up to 1: {@link #BARE} or {@link #INSULATED}; outside:
     *     IllegalArgumentException
     * @error  2 % for the usual diameters; cut 3 to 5 % long and trim in the mounting of use
     * @source factor times λ/4; 0.94 to 0.96 is what the method of moments gives for 1 to 6 mm wire over perfect ground
     */
    public static double quarterWaveMm(double frequencyMhz, double factor) {
        if (!(factor > 0 && factor <= 1)) throw new IllegalArgumentException("shortening " + factor);
        return factor * new Frequency(frequencyMhz).wavelengthM() / 4 * 1000;
    }

    /**
     * Length of an insulated quarter-wave counterpoise wire.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   MHz; result mm
     * @valid  as {@link #quarterWaveMm}
     * @error  as {@link #quarterWaveMm}, and 2 % for the insulation
     * @source as {@link #quarterWaveMm}
     */
    public static double counterpoiseMm(double frequencyMhz) {
        return quarterWaveMm(frequencyMhz, INSULATED);
    }
}
