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
 * @param isKindStated whether somebody said what kind it is; if not, the radiator is only taken for granted
 */
public record Antenna(
        String name,
        Radiator radiator,
        double lengthM,
        boolean counterpoise,
        Burden burden,
        Optional<ElevationPattern> ownPattern,
        boolean isKindStated) {
    public Antenna {
        if (!(lengthM > 0 && lengthM <= 100)) throw new IllegalArgumentException("antenna length " + lengthM + " m");
    }

    /** An antenna of a stated kind. */
    public Antenna(
            String name,
            Radiator radiator,
            double lengthM,
            boolean counterpoise,
            Burden burden,
            Optional<ElevationPattern> ownPattern) {
        this(name, radiator, lengthM, counterpoise, burden, ownPattern, true);
    }

    /** The kind that it works as at a frequency; nothing where nobody stated one or its length says otherwise. */
    Optional<Radiator> kind(Frequency frequency) {
        boolean fits = radiator.isUsual(lengthM / frequency.wavelengthM());
        return isKindStated && fits ? Optional.of(radiator) : Optional.empty();
    }

    /** Its pattern in free space, as carried in this position; what counts is its shape. */
    public ElevationPattern pattern(Frequency frequency, Carry carry) {
        if (ownPattern.isPresent()) return ownPattern.get();
        return ElevationPattern.of(radiator, lengthM / frequency.wavelengthM(), mountFor(carry), frequency);
    }

    private PatternMount mountFor(Carry carry) {
        if (radiator == Radiator.HALF_WAVE_DIPOLE) return PatternMount.FREE_SPACE;
        return counterpoise || !carry.isAtBody() ? PatternMount.CHASSIS_COUNTERPOISE : PatternMount.CHASSIS;
    }
}
