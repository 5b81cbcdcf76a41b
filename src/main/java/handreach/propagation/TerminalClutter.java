package handreach.propagation;

import handreach.terrain.Cover;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Loss of a terminal below the roofs or tree tops around it, on top of a loss computed to their height.
 *
 * <p>Never together with clutter heights in the profile: the profile then already screens the ends.
 */
public final class TerminalClutter {
    /** Width of street without local knowledge, m. */
    public static final double STREET_WIDTH_M = 27;

    private TerminalClutter() {}

    /**
     * Representative height R of the surroundings.
     *
     * @shape  constant
     * @unit   m above ground
     * @valid  without local knowledge; prefer it
     * @error  a factor of 2
     * @source Rec. ITU-R P.2108-1, Table 3
     */
    public static double representativeHeightM(Cover cover) {
        return switch (cover) {
            case OPEN, WATER, SUBURBAN -> 10;
            case URBAN, WOODLAND -> 15;
            case DENSE_URBAN -> 20;
        };
    }

    /**
     * Height-gain loss of one terminal; 0 at or above the height R.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   antenna height and R above ground m, street width m; result dB
     * @valid  30 MHz to 3 GHz; open ground and water: plane-earth height gain in disguise, not to be added to a model with a ground
     *     reflection
     * @error  0.05 dB against published rows
     * @source Rec. ITU-R P.2108-1, section 3.1, equations (2a) and (2b)
     */
    public static double lossDb(
            Frequency frequency, Cover cover, double heightM, double clutterM, double streetWidthM) {
        if (!(heightM > 0) || !(clutterM >= 0) || !(streetWidthM > 0))
            throw new IllegalArgumentException(
                    "antenna " + heightM + " m, surroundings " + clutterM + " m, street " + streetWidthM + " m");
        if (heightM >= clutterM) return 0;
        double f = frequency.ghz();
        if (cover == Cover.OPEN || cover == Cover.WATER)
            return -(21.8 + 6.2 * Math.log10(f)) * Math.log10(heightM / clutterM);
        double difference = clutterM - heightM;
        double angleDeg = Math.toDegrees(Math.atan(difference / streetWidthM));
        double nu = 0.342 * Math.sqrt(f) * Math.sqrt(difference * angleDeg);
        return Math.max(0, KnifeEdge.lossDb(nu) - 6.03);
    }

    /** One sentence when the height-gain loss is asked for outside 30 MHz to 3 GHz. */
    public static List<String> warnings(Frequency frequency) {
        List<String> warnings = new ArrayList<>();
        if (frequency.mhz() < 30 || frequency.mhz() > 3000)
            warnings.add(String.format(
                    Locale.ROOT,
                    "Terminal clutter is stated for 30 to 3000 MHz (Rec. ITU-R P.2108-1 section 3.1); it is carried on to %.4g MHz.",
                    frequency.mhz()));
        return warnings;
    }
}
