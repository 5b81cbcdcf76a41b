package handreach.loadout;

import handreach.units.Frequency;
import java.util.Optional;

/**
 * An antenna as a thing to carry.
 *
 * @param name what the user calls it
 * @param radiator its kind
 * @param lengthM electrical length of the radiator, m; end to end for a dipole
 * @param counterpoise whether a quarter-wave wire hangs from its base
 * @param burden what it costs to carry
 * @param ownPattern the user's own pattern, used as it is
 */
public record Antenna(
        String name,
        Radiator radiator,
        double lengthM,
        boolean counterpoise,
        Burden burden,
        Optional<ElevationPattern> ownPattern) {
    public Antenna {
        if (!(lengthM > 0 && lengthM <= 100)) throw new IllegalArgumentException("antenna length " + lengthM + " m");
    }

    /** Its pattern in free space, as carried in this position; what counts is its shape. */
    public ElevationPattern pattern(Frequency frequency, Carry carry) {
        if (ownPattern.isPresent()) return ownPattern.get();
        return ElevationPattern.of(radiator, lengthM / frequency.wavelengthM(), mountFor(carry), frequency);
    }

    private PatternMount mountFor(Carry carry) {
        if (radiator == Radiator.HALF_WAVE_DIPOLE) return PatternMount.FREE_SPACE;
        return counterpoise || carry == Carry.MAST ? PatternMount.CHASSIS_COUNTERPOISE : PatternMount.CHASSIS;
    }
}
