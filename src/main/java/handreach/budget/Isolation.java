package handreach.budget;

import handreach.units.Dbm;
import handreach.units.Frequency;
import java.util.OptionalInt;

/** What keeps a relay's transmitter out of a receiver beside it. Isolation and losses in dB, positive. */
public final class Isolation {
    /** What spacing alone can be counted on to give, dB; beyond it other ways round (case, cable, scatter) decide. */
    public static final double SPACING_LIMIT_DB = 70;

    private Isolation() {}

    /**
     * Isolation that keeps a receiver from being blocked.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   transmitter power and sensitivity dBm, blocking ratio dB; result dB
     * @valid  every finite value
     * @error  3 dB, as blocking ratios are class figures (84 dB for EN 300 086, from memory)
     * @source Ptx − (S + blocking ratio), definition of the blocking ratio
     */
    public static double neededAgainstBlockingDb(Dbm power, Dbm sensitivity, double blockingRatioDb) {
        return power.dbm() - (sensitivity.dbm() + blockingRatioDb);
    }

    /**
     * Isolation that brings a transmitter's noise 6 dB below that of the receiver (1 dB of desense).
     *
     * @shape  scalars in, scalar out; pure
     * @unit   transmitter noise dBm/Hz at the receive frequency, bandwidth kHz, noise figure dB; result dB
     * @valid  bandwidth above 0, otherwise IllegalArgumentException
     * @error  none beyond that of its inputs
     * @source N + 10 log B − (kTB + NF − 6), thermal noise at 290 K
     */
    public static double neededAgainstNoiseDb(
            double noiseDbmPerHz, double bandwidthKhz, double thermalNoiseDbm, double noiseFigureDb) {
        if (!(bandwidthKhz > 0)) throw new IllegalArgumentException("bandwidth " + bandwidthKhz + " kHz");
        return noiseDbmPerHz + 10 * Math.log10(bandwidthKhz * 1000) - (thermalNoiseDbm + noiseFigureDb - 6);
    }

    /**
     * How much interfering noise at the antenna socket raises the receiver's own.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   noise from outside and the receiver's own (kTB + NF), both dBm in the same bandwidth; result dB
     * @valid  every finite value
     * @error  none beyond that of its inputs
     * @source sum of independent noise powers
     */
    public static double desenseDb(Dbm interferingNoise, Dbm ownNoise) {
        return 10 * Math.log10(1 + interferingNoise.minus(ownNoise).powerRatio());
    }

    /**
     * Isolation of two upright dipoles one above the other.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   spacing m from centre to centre; result dB
     * @valid  spacing from half a wavelength up; count on no more than {@link #SPACING_LIMIT_DB}
     * @error  3 dB or so
     * @source 28 + 40 log(s/λ), seen in public manuals, original source not found
     */
    public static double verticalDb(double spacingM, Frequency frequency) {
        return 28 + 40 * Math.log10(ratio(spacingM, frequency));
    }

    /**
     * Isolation of two upright antennas side by side.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   spacing m, sum of both gains dBi; result dB
     * @valid  far field of both; count on no more than {@link #SPACING_LIMIT_DB}
     * @error  3 dB or so
     * @source 22 + 20 log(d/λ) − (Gt + Gr), free space, seen in public manuals, original source not found
     */
    public static double horizontalDb(double spacingM, Frequency frequency, double gainsDbi) {
        return 22 + 20 * Math.log10(ratio(spacingM, frequency)) - gainsDbi;
    }

    /** Spacing that {@link #verticalDb} asks for, m; no promise beyond its limit. */
    public static double verticalSpacingM(double isolationDb, Frequency frequency) {
        return frequency.wavelengthM() * Math.pow(10, (isolationDb - 28) / 40);
    }

    /** Spacing that {@link #horizontalDb} asks for, m; no promise beyond its limit. */
    public static double horizontalSpacingM(double isolationDb, Frequency frequency, double gainsDbi) {
        return frequency.wavelengthM() * Math.pow(10, (isolationDb + gainsDbi - 22) / 20);
    }

    private static double ratio(double spacingM, Frequency frequency) {
        if (!(spacingM > 0)) throw new IllegalArgumentException("spacing " + spacingM + " m");
        return spacingM / frequency.wavelengthM();
    }

    /**
     * Which harmonic of a transmitter falls on a receiver beside it: the trap of cross-band relays.
     *
     * @shape  scalars in, at most one order out; pure
     * @unit   frequencies; half width of the receiver's passband kHz
     * @valid  harmonics 2 to 7
     * @error  none
     * @source whole multiples of the carrier
     */
    public static OptionalInt harmonicOn(Frequency transmitter, Frequency receiver, double halfWidthKhz) {
        for (int order = 2; order <= 7; order++) {
            double apartKhz = Math.abs(order * transmitter.mhz() - receiver.mhz()) * 1000;
            if (apartKhz <= order * halfWidthKhz) return OptionalInt.of(order);
        }
        return OptionalInt.empty();
    }
}
