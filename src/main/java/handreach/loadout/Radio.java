package handreach.loadout;

import handreach.units.Dbm;

/**
 * A radio, as its data sheet or the bench states it.
 *
 * @param name what the user calls it
 * @param power transmitter power at the antenna socket
 * @param sensitivity reference sensitivity: 12 dB SINAD for analog, 5 % bit errors for digital
 * @param modulation voice mode
 */
public record Radio(String name, Dbm power, Dbm sensitivity, Modulation modulation) {
    /** Reference sensitivities that are believed, dBm: from some decibels under the noise of a noiseless receiver to a deaf one. */
    public static final double BEST_SENSITIVITY_DBM = -135;

    public static final double WORST_SENSITIVITY_DBM = -60;

    public Radio {
        if (!(power.dbm() >= -30 && power.dbm() <= 70)) throw new IllegalArgumentException("power " + power);
        if (!(sensitivity.dbm() >= BEST_SENSITIVITY_DBM && sensitivity.dbm() <= WORST_SENSITIVITY_DBM))
            throw new IllegalArgumentException("sensitivity " + sensitivity);
    }

    /**
     * Noise figure that the stated sensitivity implies.
     *
     * @shape  scalar out; pure
     * @unit   dB
     * @valid  not below 0: a sensitivity better than a noiseless receiver's counts as noiseless
     * @error  1 dB, that of Cs/N (from memory)
     * @source NF = S − Cs/N − kTB; TIA TSB-88 terms
     */
    public double noiseFigureDb() {
        return Math.max(0, sensitivity.dbm() - modulation.staticDb() - modulation.thermalNoiseDbm());
    }

    /** Whether the stated sensitivity is better than a noiseless receiver could have. */
    public boolean isTooGoodToBeTrue() {
        return sensitivity.dbm() - modulation.staticDb() - modulation.thermalNoiseDbm() < 0;
    }

    /**
     * Level above reference sensitivity that a grade of copy needs, without site noise.
     *
     * @shape  table lookup; pure
     * @unit   dB
     * @valid  every grade
     * @error  as {@link Modulation#neededDb}
     * @source Cf/N − Cs/N, TIA TSB-88
     */
    public double qualityDb(CopyQuality quality, Fading fading) {
        return modulation.neededDb(quality, fading) - modulation.staticDb();
    }
}
