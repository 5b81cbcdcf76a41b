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
        CoverState cover) {
    /** What a single path is answered for; each model tells by a note where it is not held any more; our suggestion. */
    public static final Range FREQUENCY = new Range("frequency_mhz", 1, 6000, "MHz");

    /** With trees in leaf, as the published curves mean them, and woods and towns at the ends. */
    public PathConditions(
            Frequency frequency, Polarization polarization, Ground ground, Atmosphere atmosphere, Climate climate) {
        this(frequency, polarization, ground, atmosphere, climate, CoverState.USUAL);
    }

    /** The same with the trees in another state. */
    public PathConditions with(Foliage trees) {
        return with(new CoverState(trees, standing()));
    }

    /** The same with woods and towns counted elsewhere. */
    public PathConditions with(Standing where) {
        return with(new CoverState(foliage(), where));
    }

    private PathConditions with(CoverState other) {
        return new PathConditions(frequency, polarization, ground, atmosphere, climate, other);
    }

    /** State of the trees. */
    public Foliage foliage() {
        return cover.foliage();
    }

    /** Where the field march counts woods and towns. */
    public Standing standing() {
        return cover.standing();
    }
}
