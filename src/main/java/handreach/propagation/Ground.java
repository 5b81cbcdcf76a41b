package handreach.propagation;

import handreach.input.Range;
import handreach.units.Frequency;
import handreach.units.Polarization;
import org.apache.commons.math3.complex.Complex;

/**
 * Electrical constants of the ground.
 *
 * <p>Time factor exp(+jωt), so the complex permittivity has a negative imaginary part.
 *
 * @param permittivity relative permittivity, at least 1
 * @param conductivity S/m, not negative
 */
public record Ground(double permittivity, double conductivity) {
    /** From empty space to twice the permittivity of water; our suggestion. */
    public static final Range PERMITTIVITY = new Range("permittivity", 1, 200, "");
    /** From an insulator to twenty times sea water; our suggestion. */
    public static final Range CONDUCTIVITY = new Range("conductivity", 0, 100, "S/m");

    public static final Ground AVERAGE = new Ground(15, 0.005);

    /** Wave impedance of vacuum over 2π, Ω: 60 in the texts. */
    private static final double SIXTY = 59.9584916;

    public Ground {
        if (!PERMITTIVITY.accepts(permittivity) || !CONDUCTIVITY.accepts(conductivity))
            throw new IllegalArgumentException("ground constants " + permittivity + ", " + conductivity
                    + " S/m; relative permittivity is " + PERMITTIVITY.words() + ", conductivity "
                    + CONDUCTIVITY.words());
        if (permittivity == 1 && conductivity == 0)
            throw new IllegalArgumentException(
                    "ground constants 1, 0 S/m are those of empty space; ground has a permittivity above 1");
    }

    /**
     * Complex relative permittivity ε = εr − j 60 σ λ.
     *
     * @shape  scalar in, complex out; pure
     * @unit   result dimensionless
     * @valid  every frequency; the constants are taken as given, without dispersion
     * @error  59.958 in place of the 60 of the texts, 0.07 %
     * @source Rec. ITU-R P.527, definition of complex relative permittivity
     */
    public Complex relativePermittivity(Frequency frequency) {
        return new Complex(permittivity, -SIXTY * conductivity * frequency.wavelengthM());
    }

    /**
     * Normalised surface impedance Δ at grazing incidence: √(ε−1)/ε vertical, √(ε−1) horizontal.
     *
     * @shape  scalars in, complex out; pure
     * @unit   result relative to the impedance of vacuum
     * @valid  grazing rays; for steeper ones give the sine of the grazing angle
     * @error  as the ground constants
     * @source Norton (1937); Rec. ITU-R P.527, reflection coefficient in impedance form (from memory)
     */
    public Complex surfaceImpedance(Frequency frequency, Polarization polarization) {
        return surfaceImpedance(frequency, polarization, 0);
    }

    /**
     * Normalised surface impedance Δ for a ray at a grazing angle ψ: √(ε − cos²ψ)/ε vertical, √(ε − cos²ψ) horizontal.
     *
     * @shape  scalars in, complex out; pure
     * @unit   sine of the angle between ray and ground, 0 to 1; result relative to the impedance of vacuum
     * @valid  a plane half-space of one material
     * @error  as the ground constants
     * @source Rec. ITU-R P.527, reflection coefficient in impedance form (from memory)
     */
    public Complex surfaceImpedance(Frequency frequency, Polarization polarization, double sinGrazing) {
        Complex permittivityHere = relativePermittivity(frequency);
        Complex root = permittivityHere.subtract(1 - sinGrazing * sinGrazing).sqrt();
        return polarization == Polarization.VERTICAL ? root.divide(permittivityHere) : root;
    }
}
