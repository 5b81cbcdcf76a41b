package handreach.loadout;

import handreach.input.Range;
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
    /** Powers from a milliwatt to the largest that amateurs may use anywhere; our suggestion. */
    public static final Range POWER = new Range("power_w", 0.001, 1500, "W");
    /** Reference sensitivities that are believed: from some decibels under the noise of a noiseless receiver to a deaf one. */
    public static final Range SENSITIVITY = new Range("sensitivity_dbm", -135, -60, "dBm");

    public static final Range NOISE_FIGURE = new Range("noise_figure_db", 0, 40, "dB");

    public Radio {
        if (!(power.dbm() >= -30 && power.dbm() <= 70)) throw new IllegalArgumentException("power " + power);
        if (!SENSITIVITY.accepts(sensitivity.dbm())) throw new IllegalArgumentException("sensitivity " + sensitivity);
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
