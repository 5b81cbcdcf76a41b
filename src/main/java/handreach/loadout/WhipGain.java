package handreach.loadout;

import handreach.units.Frequency;
import java.util.OptionalDouble;

/**
 * Gain of kinds of whips over a short helical without a wire at the same place, both matched there: on the bare box and at a body.
 * Computed for this project, as {@link BodyTable}. Below 250 MHz the radio's case, hand and arm are the other half of every short
 * antenna, and the body loads the short helical most; a half-wave and what is longer carries its own current clear of the person.
 */
final class WhipGain {
    /** Where the pair stands: columns of the tables. */
    enum Place {
        BOX("on the bare radio"),
        FACE("in the hand at the face"),
        CHEST("on the chest"),
        SHOULDER_MIC("on the speaker-microphone"),
        HIP_SWIVEL("at the hip"),
        HIP_TIGHT("tight at the hip");

        private final String words;

        Place(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }

        /** Where a carry position is; inside a vehicle the radio is held at the face. */
        static Place of(Carry carry) {
            return switch (carry) {
                case FACE, VEHICLE -> FACE;
                case CHEST -> CHEST;
                case SHOULDER_MIC -> SHOULDER_MIC;
                case HIP_SWIVEL -> HIP_SWIVEL;
                case HIP_TIGHT -> HIP_TIGHT;
                case MAST, ROOF -> BOX;
            };
        }
    }

    /** Columns end here; above, kinds differ by less than 1 dB more at the body than on the box, and no column is used. */
    private static final double VHF_ENDS_MHZ = 300;

    private static final double UHF_ENDS_MHZ = 600;

    private static final double NONE = Double.NaN;
    private static final double[] HELICAL = {0, 0, 0, 0, 0, 0};
    /** By place, 150 MHz: helical with wire, quarter-wave, quarter-wave with wire, end-fed half-wave, five-eighths. */
    private static final double[][] VHF = {
        {3.7, 3.5, 6.0, 3.3, 6.7, 7.3},
        {4.1, 6.4, 8.1, 7.5, 5.7, 4.7},
        {4.5, 7.5, 9.2, 7.2, 8.0, 8.3},
        {4.3, 12.1, 14.1, NONE, 10.7, 11.5},
        {3.2, 11.7, 15.6, NONE, 11.2, 12.7}
    };
    /** The same, 450 MHz. */
    private static final double[][] UHF = {
        {0.3, 0.3, 0.8, 1.5, 1.8, 1.9},
        {1.0, 1.4, 2.4, 2.0, 2.0, 2.3},
        {0.4, 0.8, 1.0, 2.3, 1.6, 1.7},
        {1.4, 5.0, 4.4, NONE, 2.2, 2.8},
        {-1.4, 2.8, 2.3, NONE, -3.3, -3.7}
    };

    private WhipGain() {}

    /** Whether there are columns for a frequency. */
    static boolean covers(Frequency frequency) {
        return frequency.mhz() >= BodyTable.LOWEST_MHZ && frequency.mhz() <= UHF_ENDS_MHZ;
    }

    static boolean isVhf(Frequency frequency) {
        return frequency.mhz() < VHF_ENDS_MHZ;
    }

    /**
     * Gain of a kind over the short helical without wire at the same place, power mean over headings.
     *
     * @shape  lookup in a table of 6 kinds by 6 places by 2 bands; pure
     * @unit   dB, positive where the kind is stronger
     * @valid  short helical and quarter-wave with or without the wire, end-fed half-wave and five-eighths without; columns of 150 MHz from 100 to
     *     300 MHz, of 450 MHz to 600 MHz; elsewhere, and for the long whips on a speaker-microphone, nothing
     * @error  2 dB on VHF, 1.2 dB on UHF, and a quarter of what body and box differ by, our suggestion; no measurement
     * @source computed for this project by finite differences in time (FDTD); the standard posture
     */
    static OptionalDouble overHelicalDb(Radiator kind, boolean wire, Place place, Frequency frequency) {
        if (!covers(frequency)) return OptionalDouble.empty();
        double[] row = row(kind, wire, isVhf(frequency) ? VHF : UHF);
        if (row.length == 0 || Double.isNaN(row[place.ordinal()])) return OptionalDouble.empty();
        return OptionalDouble.of(row[place.ordinal()]);
    }

    private static double[] row(Radiator kind, boolean wire, double[][] table) {
        return switch (kind) {
            case SHORT_HELICAL -> wire ? table[0] : HELICAL;
            case QUARTER_WAVE -> table[wire ? 2 : 1];
            case HALF_WAVE_END_FED -> wire ? new double[0] : table[3];
            case FIVE_EIGHTHS -> wire ? new double[0] : table[4];
            case HALF_WAVE_DIPOLE, MONOPOLE -> new double[0];
        };
    }
}
