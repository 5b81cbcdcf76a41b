package handreach.bench.match;

/**
 * How much too long or too short a radiator is for a channel.
 *
 * @param tunedMhz where it is tuned now
 * @param channelMhz where it should be
 */
public record Trim(double tunedMhz, double channelMhz) {
    /** Beyond this the rule of length times frequency is not to be trusted. */
    public static final double MOST_PERCENT = 10;

    public Trim {
        if (!(tunedMhz > 0) || !(channelMhz > 0))
            throw new IllegalArgumentException("trim from " + tunedMhz + " to " + channelMhz + " MHz");
    }

    /**
     * Excess length.
     *
     * @shape  scalar out; pure
     * @unit   per cent of the present length; positive is too long, negative too short
     * @valid  straight whips trimmed by up to some 10 %; a helical moves more with each millimetre
     * @error  0.1 % of the length, against method-of-moments resonances of over-long quarter-wave whips
     * @source length times resonant frequency is constant: ΔL/L = −Δf/f
     */
    public double tooLongPercent() {
        return 100 * (1 - tunedMhz / channelMhz);
    }

    /**
     * Excess length of a straight quarter-wave whip over a good ground plane or counterpoise.
     *
     * @shape  scalar out; pure
     * @unit   mm; positive is too long: cut; negative is too short: lengthen
     * @valid  as {@link #tooLongPercent}; twice this for a half-wave radiator
     * @error  as {@link #tooLongPercent}, and ±2 % of the difference for thickness (factor 0.95 taken)
     * @source as {@link #tooLongPercent} and {@link RadiatorLength}
     */
    public double tooLongMm() {
        return RadiatorLength.quarterWaveMm(tunedMhz, RadiatorLength.BARE)
                - RadiatorLength.quarterWaveMm(channelMhz, RadiatorLength.BARE);
    }
}
