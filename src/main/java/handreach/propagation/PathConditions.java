package handreach.propagation;

import handreach.units.Frequency;
import handreach.units.Polarization;

/** Everything about a path that is neither its ground profile nor its antennas. */
public record PathConditions(
        Frequency frequency, Polarization polarization, Ground ground, Atmosphere atmosphere, Climate climate) {

    public static PathConditions standard(Frequency frequency) {
        return new PathConditions(frequency, Polarization.VERTICAL, Ground.AVERAGE, Atmosphere.DEFAULT, Climate.MEDIAN);
    }
}
