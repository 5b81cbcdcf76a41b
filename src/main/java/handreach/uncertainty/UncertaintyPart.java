package handreach.uncertainty;

import java.util.Objects;

/**
 * One source of doubt, in the terms of the GUM.
 *
 * @param name what it comes from, in words
 * @param kind found from repeated readings (A) or from other knowledge (B)
 * @param standardUncertainty one standard uncertainty, not negative
 * @param degreesOfFreedom how well it is known; above zero, infinity when exactly
 */
public record UncertaintyPart(String name, Kind kind, double standardUncertainty, double degreesOfFreedom) {
    /** How a standard uncertainty was come by (GUM 2.3.2, 2.3.3). */
    public enum Kind {
        A,
        B
    }

    /** What is taken as the spread of a value of which only the outer limits, or a certificate, are known (GUM 4.3). */
    public enum Shape {
        /** Anywhere between the limits alike. */
        RECTANGULAR(Math.sqrt(3)),
        /** Near the middle more often. */
        TRIANGULAR(Math.sqrt(6)),
        /** Near the limits more often, as mismatch ripple. */
        U_SHAPED(Math.sqrt(2)),
        /** One standard uncertainty already. */
        STANDARD(1);

        private final double divisor;

        Shape(double divisor) {
            this.divisor = divisor;
        }
    }

    public UncertaintyPart {
        Objects.requireNonNull(name);
        Objects.requireNonNull(kind);
        if (!(standardUncertainty >= 0) || Double.isInfinite(standardUncertainty))
            throw new IllegalArgumentException(name + ": standard uncertainty " + standardUncertainty);
        if (!(degreesOfFreedom > 0))
            throw new IllegalArgumentException(name + ": degrees of freedom " + degreesOfFreedom);
    }

    /** Doubt seen in repeated readings. */
    public static UncertaintyPart seen(String name, double standardUncertainty, double degreesOfFreedom) {
        return new UncertaintyPart(name, Kind.A, standardUncertainty, degreesOfFreedom);
    }

    /**
     * Doubt declared as half-width (or standard uncertainty) of a known shape, itself known to a fraction.
     *
     * @shape  scalars in, one part out; pure
     * @unit   half-width in the unit of the value; relative doubt of the uncertainty as a fraction, 0 for exactly known
     * @valid  half-width and relative doubt not negative; outside: IllegalArgumentException
     * @error  rounding only
     * @source JCGM 100:2008 (GUM), 4.3.7, 4.3.9, 4.3.3 and H.1.3.4 (U shape: standard texts, from memory); degrees of freedom
     *     G.4.2, formula G.3
     */
    public static UncertaintyPart declared(String name, double halfWidth, Shape shape, double relativeDoubt) {
        if (!(halfWidth >= 0) || !(relativeDoubt >= 0))
            throw new IllegalArgumentException(name + ": " + halfWidth + ", known to " + relativeDoubt);
        double degrees = relativeDoubt == 0 ? Double.POSITIVE_INFINITY : 0.5 / (relativeDoubt * relativeDoubt);
        return new UncertaintyPart(name, Kind.B, halfWidth / shape.divisor, degrees);
    }
}
