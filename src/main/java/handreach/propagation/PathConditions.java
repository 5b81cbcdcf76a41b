package handreach.propagation;

import handreach.input.Range;
import handreach.units.Frequency;
import handreach.units.Polarization;

/** Everything about a path that is neither its ground profile nor its antennas. */
public record PathConditions(
        Frequency frequency,
        Polarization polarization,
        Ground ground,
        Atmosphere atmosphere,
        Climate climate,
        Foliage foliage) {
    /** What a single path is answered for; each model tells by a note where it is not held any more; our suggestion. */
    public static final Range FREQUENCY = new Range("frequency_mhz", 1, 6000, "MHz");

    /** With trees in leaf, as the published curves mean them. */
    public PathConditions(
            Frequency frequency, Polarization polarization, Ground ground, Atmosphere atmosphere, Climate climate) {
        this(frequency, polarization, ground, atmosphere, climate, Foliage.IN_LEAF);
    }

    /** The same with the trees in another state. */
    public PathConditions with(Foliage trees) {
        return new PathConditions(frequency, polarization, ground, atmosphere, climate, trees);
    }
}
