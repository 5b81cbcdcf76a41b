package handreach.propagation;

import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Noise that comes in through the antenna, in dB above kT0b of a lossless short vertical antenna over good ground. */
public final class ExternalNoise {
    private static final double MAN_MADE_TO_MHZ = 250;
    private static final double QUIET_RURAL_TO_MHZ = 30;

    private ExternalNoise() {}

    /**
     * Median man-made noise F_am = c − d log f, the curve as it stands.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   result dB above kT0b
     * @valid  0.3 to 250 MHz (quiet rural to 30 MHz); beyond, the curve is only carried on
     * @error  median between places; see the spread of {@link NoiseEnvironment}
     * @source Rec. ITU-R P.372-16, section 6, equation (14) and Table 1
     */
    public static double manMadeDb(NoiseEnvironment environment, Frequency frequency) {
        return environment.c - environment.d * Math.log10(frequency.mhz());
    }

    /**
     * Median galactic noise, 52 − 23 log f.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   result dB above kT0b
     * @valid  above the ionosphere's critical frequency (about 10 MHz) to about 100 MHz; beyond, carried on
     * @error  ±2 dB over day and direction
     * @source Rec. ITU-R P.372-16, section 6 (galactic, from memory)
     */
    public static double galacticDb(Frequency frequency) {
        return 52 - 23 * Math.log10(frequency.mhz());
    }

    /**
     * Median external noise for planning: man-made and galactic power added. Above 250 MHz, where the document has no curve, the
     * man-made part is the curve carried on but not below 5 dB in the city, 3 dB in residential and 0 dB in rural surroundings.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   result dB above kT0b
     * @valid  10 to 1000 MHz; what lies outside the document is said by {@link #warnings}
     * @error  places differ by 6 to 8 dB (standard deviation); near switching supplies and vehicles far more
     * @source Rec. ITU-R P.372-16; the floors above 250 MHz are ours
     */
    public static double medianDb(NoiseEnvironment environment, Frequency frequency) {
        double manMade = manMadeDb(environment, frequency);
        if (frequency.mhz() > MAN_MADE_TO_MHZ) manMade = Math.max(manMade, floorDb(environment));
        return 10 * Math.log10(Math.pow(10, manMade / 10) + Math.pow(10, galacticDb(frequency) / 10));
    }

    private static double floorDb(NoiseEnvironment environment) {
        return switch (environment) {
            case CITY -> 5;
            case RESIDENTIAL -> 3;
            case RURAL -> 0;
            case QUIET_RURAL -> Double.NEGATIVE_INFINITY;
        };
    }

    /** One sentence for each way in which a median lies outside the document. */
    public static List<String> warnings(NoiseEnvironment environment, Frequency frequency) {
        List<String> warnings = new ArrayList<>();
        double limit = environment == NoiseEnvironment.QUIET_RURAL ? QUIET_RURAL_TO_MHZ : MAN_MADE_TO_MHZ;
        if (frequency.mhz() > limit)
            warnings.add(String.format(
                    Locale.ROOT,
                    "Man-made noise (%s) has no curve above %.0f MHz in Rec. ITU-R P.372-16; at %.4g MHz %s.",
                    environment.word(),
                    limit,
                    frequency.mhz(),
                    environment == NoiseEnvironment.QUIET_RURAL
                            ? "its curve is carried on, and galactic noise outweighs it"
                            : "the curve is carried on with a floor of ours"));
        return warnings;
    }

    /**
     * By how much site noise worsens a receiver's sensitivity: 10 log[(η fa + (1 − η) + f − 1)/f].
     *
     * @shape  scalars in, scalar out; pure
     * @unit   as {@link #powerDbm}; result dB, negative when the sky is colder than 290 K and the antenna good
     * @valid  lossy parts at 290 K
     * @error  exact within the cascade
     * @source Rec. ITU-R P.372-16, section 2; cascade of noise factors
     */
    public static double degradationDb(double externalDb, double antennaLossDb, double noiseFigureDb) {
        double f = factor(noiseFigureDb);
        return 10 * Math.log10((antennaFactor(externalDb, antennaLossDb) + f - 1) / f);
    }

    /** η fa + (1 − η): noise factor of what the antenna hands to the receiver. */
    private static double antennaFactor(double externalDb, double antennaLossDb) {
        if (!(antennaLossDb >= 0)) throw new IllegalArgumentException("antenna loss " + antennaLossDb + " dB, below 0");
        double efficiency = Math.pow(10, -antennaLossDb / 10);
        return efficiency * Math.pow(10, externalDb / 10) + 1 - efficiency;
    }

    private static double factor(double noiseFigureDb) {
        if (!(noiseFigureDb >= 0))
            throw new IllegalArgumentException("a noise figure is 0 dB or more, not " + noiseFigureDb);
        return Math.pow(10, noiseFigureDb / 10);
    }
}
