package handreach.loadout;

import handreach.input.Keyword;
import handreach.units.Dbm;
import java.util.List;

/**
 * Voice modes with the carrier-to-noise ratio that each grade of copy needs in the receiver's noise bandwidth. Values of TIA
 * TSB-88-B/.1, Annex A, Table A-1, from memory; those of grade 2, and all standing ones, are our extrapolation.
 */
public enum Modulation {
    FM_25("fm-25", "analog FM, 25 kHz channel", 12.6, 4, new double[] {12, 17, 20, 27}, true),
    FM_12_5("fm-12.5", "analog FM, 12.5 kHz channel", 7.8, 7, new double[] {18, 23, 26, 33}, true),
    C4FM("c4fm", "C4FM digital voice, 12.5 kHz channel", 5.5, 5.4, new double[] {13.5, 15.2, 16.2, 20.0}, false),
    TDMA("tdma", "two-slot TDMA digital voice, 12.5 kHz channel", 7, 5.3, new double[] {12.6, 14.3, 15.6, 19.4}, false);

    /** How files and options name them; narrow FM is the channel of 12.5 kHz (common practice, no source). */
    public static final Keyword<Modulation> KEYWORD =
            Keyword.of(List.of(values()), Modulation::word).also("nfm", FM_12_5);

    /** What a person standing still is given to find a place out of a fade, dB; our suggestion. */
    private static final double STANDING_DB = 6;

    /** Static steps of the digital modes above reference sensitivity, by grade, dB; our extrapolation. */
    private static final double[] DIGITAL_STEPS_DB = {0.8, 1.5, 2, 3};

    private final String word;
    private final String label;
    private final double noiseBandwidthKhz;
    private final double staticDb;
    private final double[] fadedDb;
    private final boolean analog;

    Modulation(String word, String label, double noiseBandwidthKhz, double staticDb, double[] fadedDb, boolean analog) {
        this.word = word;
        this.label = label;
        this.noiseBandwidthKhz = noiseBandwidthKhz;
        this.staticDb = staticDb;
        this.fadedDb = fadedDb;
        this.analog = analog;
    }

    public String word() {
        return word;
    }

    public String label() {
        return label;
    }

    /** Carrier to noise at reference sensitivity, steady signal, dB. */
    public double staticDb() {
        return staticDb;
    }

    /** Thermal noise at 290 K in the noise bandwidth, dBm. */
    public double thermalNoiseDbm() {
        return Dbm.THERMAL_PER_HZ + 10 * Math.log10(noiseBandwidthKhz * 1000);
    }

    /**
     * Carrier-to-noise ratio that a grade of copy needs.
     *
     * @shape  a table lookup; pure
     * @unit   dB in the noise bandwidth
     * @valid  every grade; standing: static need at that grade plus 6 dB, never above the walking need
     * @error  walking 1 dB; grade 2 and standing 3 dB, being extrapolated
     * @source TIA TSB-88-B/.1 Annex A Table A-1 (from memory); standing: our suggestion, one decibel a decibel of SINAD for analog
     */
    public double neededDb(CopyQuality quality, Fading fading) {
        double faded = fadedDb[quality.ordinal()];
        if (fading == Fading.WALKING) return faded;
        double step = analog ? quality.sinadDb() - CopyQuality.DAQ_2.sinadDb() : DIGITAL_STEPS_DB[quality.ordinal()];
        return Math.min(faded, staticDb + step + STANDING_DB);
    }
}
