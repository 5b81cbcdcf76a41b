package handreach.bench;

import handreach.units.Frequency;
import handreach.units.Polarization;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;

/**
 * The place where levels were read: two terminals over flat ground.
 *
 * <p>The reflection formula stands here as well as in {@code propagation}, since a bench knows no path; the two are checked
 * against the same published rows.
 *
 * @param distanceM along the ground
 * @param txHeightM of the radiating centre of the antenna under test
 * @param rxHeightM of the receiving antenna
 * @param polarization of both
 * @param ground between them
 * @param antennaSizeM largest dimension of everything that radiates, counterpoise included, where declared
 */
record TestRange(
        double distanceM,
        double txHeightM,
        double rxHeightM,
        Polarization polarization,
        RangeGround ground,
        OptionalDouble antennaSizeM) {
    public TestRange {
        if (!(distanceM > 0 && txHeightM > 0 && rxHeightM > 0) || Double.isInfinite(distanceM + txHeightM + rxHeightM))
            throw new IllegalArgumentException("range of " + distanceM + ", " + txHeightM + ", " + rxHeightM + " m");
        Objects.requireNonNull(polarization);
        Objects.requireNonNull(ground);
        if (antennaSizeM.isPresent() && !(antennaSizeM.getAsDouble() > 0))
            throw new IllegalArgumentException("antenna of " + antennaSizeM.getAsDouble() + " m");
    }

    /**
     * Least distance at which a reading is a far-field reading.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   size m, result m
     * @valid  size above 0 m
     * @error  a convention, not a quantity: at this distance the phase over the antenna still differs by 22.5°
     * @source IEEE Std 149 (from memory): 2D²/λ for phase, 5D for amplitude, 1.6 λ for the reactive field
     */
    public static double farFieldM(double sizeM, Frequency frequency) {
        if (!(sizeM > 0)) throw new IllegalArgumentException("antenna of " + sizeM + " m");
        double wavelengthM = frequency.wavelengthM();
        return Math.max(2 * sizeM * sizeM / wavelengthM, Math.max(5 * sizeM, 1.6 * wavelengthM));
    }

    /**
     * How much the ground lifts (positive) or lowers the received level against free space.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   result dB, positive strengthens
     * @valid  flat even ground wider than the first Fresnel zone, isotropic patterns; at a perfect null limited to −60 dB
     * @error  within 0.005 dB of the rows of the reference; on real ground ±1 dB and more (roughness, people, vehicles)
     * @source two-ray geometry with Fresnel reflection, ITU-R P.527 and P.526 (from memory); time factor e^(+jωt)
     */
    public double groundEffectDb(Frequency frequency) {
        return groundEffectDb(frequency, txHeightM);
    }

    /**
     * How far readings move when the radiating centre is 0.25 m higher or lower, as with a longer antenna: a bias of the
     * delta, not scatter.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   result dB, not negative
     * @valid  as {@link #groundEffectDb}
     * @error  as {@link #groundEffectDb}
     * @source the larger of two differences of {@link #groundEffectDb}; the shift of 0.25 m is our suggestion
     */
    public double heightSensitivityDb(Frequency frequency) {
        double here = groundEffectDb(frequency);
        double higher = Math.abs(groundEffectDb(frequency, txHeightM + 0.25) - here);
        double lower = Math.abs(groundEffectDb(frequency, Math.max(0.05, txHeightM - 0.25)) - here);
        return Math.max(higher, lower);
    }

    /**
     * Distance at which the ground reflects least for vertical polarisation: the pseudo-Brewster angle.
     *
     * @shape  scalar out; pure
     * @unit   m
     * @valid  vertical polarisation; for horizontal there is no such distance
     * @error  a few per cent: conductivity is left out
     * @source tan of the Brewster angle is 1/√εr, any optics text
     */
    public double quietestDistanceM() {
        return (txHeightM + rxHeightM) * Math.sqrt(ground.permittivity());
    }

    private double groundEffectDb(Frequency frequency, double heightM) {
        double direct = Math.hypot(distanceM, heightM - rxHeightM);
        double mirrored = Math.hypot(distanceM, heightM + rxHeightM);
        double phase = -frequency.waveNumber() * (mirrored - direct);
        Complex ray = new Complex(Math.cos(phase), Math.sin(phase)).multiply(direct / mirrored);
        Complex sum = coefficient(frequency, Math.atan2(heightM + rxHeightM, distanceM))
                .multiply(ray)
                .add(1);
        return 20 * Math.log10(Math.max(1e-3, sum.abs()));
    }

    /** Reflection coefficient of the ground at a grazing angle, radians: Fresnel, ITU-R P.527 (from memory). */
    Complex coefficient(Frequency frequency, double grazing) {
        Complex epsilon = new Complex(ground.permittivity(), -60 * frequency.wavelengthM() * ground.conductivity());
        double sin = Math.sin(grazing);
        double cos = Math.cos(grazing);
        Complex q = epsilon.subtract(cos * cos).sqrt();
        Complex first = polarization == Polarization.VERTICAL ? epsilon.multiply(sin) : new Complex(sin, 0);
        return first.subtract(q).divide(first.add(q));
    }
}
