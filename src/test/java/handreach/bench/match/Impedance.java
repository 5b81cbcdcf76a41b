package handreach.bench.match;

import org.apache.commons.math3.complex.Complex;

/** The match of an impedance on a line, Γ = (Z − Z0)/(Z + Z0) of any line textbook: what sweeps are held against. */
final class Impedance {
    private Impedance() {}

    static Match match(Complex ohm, double lineOhm) {
        double magnitude = ohm.subtract(lineOhm).divide(ohm.add(lineOhm)).abs();
        return Match.ofReflection(Math.min(Match.MOST_REFLECTION, magnitude));
    }
}
