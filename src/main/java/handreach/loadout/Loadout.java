package handreach.loadout;

import handreach.input.Range;

/**
 * One way to carry one radio with one antenna.
 *
 * @param name what the user calls it
 * @param radio the radio
 * @param antenna the antenna
 * @param carry where it is carried, and what that does on the band
 * @param heightM antenna above ground, m
 * @param gain how the antenna's gain is known
 */
public record Loadout(String name, Radio radio, Antenna antenna, CarryLoss carry, double heightM, AntennaGain gain) {
    /** Antenna above ground: from lying in the grass to a mast; our suggestion. */
    public static final Range HEIGHT = new Range("height_m", 0.3, 100, "m");
    /** Antenna from the vertical. */
    public static final Range TILT = new Range("tilt_deg", 0, 90, "degrees");

    public Loadout {
        if (!(heightM > 0 && heightM <= 10_000)) throw new IllegalArgumentException("antenna height " + heightM + " m");
    }
}
