package handreach.uncertainty;

import java.util.List;

/** Independent sources of doubt in one value, combined by the GUM. */
public final class CombinedUncertainty {
    private final List<UncertaintyPart> parts;
    private final double standardUncertainty;
    private final double effectiveDegrees;

    private CombinedUncertainty(List<UncertaintyPart> parts, double standardUncertainty, double effectiveDegrees) {
        this.parts = parts;
        this.standardUncertainty = standardUncertainty;
        this.effectiveDegrees = effectiveDegrees;
    }

    /**
     * Combines independent parts, each with sensitivity 1.
     *
     * @shape  n parts in, one combination out; O(n), pure
     * @unit   all parts in the unit of the value
     * @valid  at least one part; correlated parts must be joined into one before
     * @error  rounding only; the degrees of freedom are those of the Welch-Satterthwaite formula, itself an approximation
     * @source JCGM 100:2008 (GUM), 5.1.2 formula 10; G.4.1 formula G.2b
     */
    public static CombinedUncertainty of(List<UncertaintyPart> parts) {
        if (parts.isEmpty()) throw new IllegalArgumentException("no part of uncertainty");
        double squares = 0;
        for (UncertaintyPart part : parts) squares += part.standardUncertainty() * part.standardUncertainty();
        double u = Math.sqrt(squares);
        double inverse = 0;
        for (UncertaintyPart part : parts) {
            double share = u == 0 ? 0 : part.standardUncertainty() / u;
            inverse += share * share * share * share / part.degreesOfFreedom();
        }
        double degrees = inverse == 0 ? Double.POSITIVE_INFINITY : 1 / inverse;
        return new CombinedUncertainty(List.copyOf(parts), u, degrees);
    }

    double standardUncertainty() {
        return standardUncertainty;
    }

    /** Effective degrees of freedom as the formula gives them, seldom a whole number. */
    double effectiveDegrees() {
        return effectiveDegrees;
    }

    /**
     * The value with this doubt. As soon as a declared part (kind B) weighs in, the degrees of freedom are cut to the next
     * lower whole number, as G.4.1 asks; a purely statistical comparison keeps them whole or not, as Welch's test does.
     *
     * @shape  scalar in, one estimate out; O(n) of the parts, pure
     * @unit   that of the parts
     * @valid  every finite value
     * @error  as {@link #of}
     * @source JCGM 100:2008 (GUM), G.4.1
     */
    public Estimate estimate(double value) {
        boolean declared =
                parts.stream().anyMatch(p -> p.kind() == UncertaintyPart.Kind.B && p.standardUncertainty() > 0);
        double degrees = declared ? Math.max(1, Math.floor(effectiveDegrees)) : effectiveDegrees;
        return new Estimate(value, standardUncertainty, degrees);
    }
}
