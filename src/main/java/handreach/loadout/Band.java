package handreach.loadout;

import handreach.units.Frequency;

/** The three bands that the default figures of carry positions are kept for. */
public enum Band {
    VHF("VHF 136-174 MHz", 136, 174),
    UHF("UHF 400-512 MHz", 400, 512),
    UPPER_UHF("700/800 MHz", 698, 902);

    private final String label;
    private final double lowMhz;
    private final double highMhz;

    Band(String label, double lowMhz, double highMhz) {
        this.label = label;
        this.lowMhz = lowMhz;
        this.highMhz = highMhz;
    }

    public String label() {
        return label;
    }

    /** Whether the default figures were made for this frequency. */
    public boolean covers(Frequency frequency) {
        return frequency.mhz() >= lowMhz && frequency.mhz() <= highMhz;
    }

    /** The band of a frequency; between and beyond the three, the nearest in ratio. */
    public static Band of(Frequency frequency) {
        double mhz = frequency.mhz();
        if (mhz * mhz < VHF.highMhz * UHF.lowMhz) return VHF;
        return mhz * mhz < UHF.highMhz * UPPER_UHF.lowMhz ? UHF : UPPER_UHF;
    }
}
