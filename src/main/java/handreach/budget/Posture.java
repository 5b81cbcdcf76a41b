package handreach.budget;

import java.util.OptionalDouble;

/**
 * How a person stands to the path.
 *
 * @param pathFromFrontDeg bearing of the path clockwise from the wearer's front; empty when it may be any
 * @param wornSideDeg side the radio is on, clockwise from the front; empty for the usual one of the position
 * @param sideTiltDeg lean of the antenna across the path, clockwise as seen from this end looking to the other
 * @param towardsPathDeg lean of the antenna towards the other end
 */
public record Posture(
        OptionalDouble pathFromFrontDeg, OptionalDouble wornSideDeg, double sideTiltDeg, double towardsPathDeg) {
    /** Upright, any heading. */
    public static final Posture UPRIGHT = new Posture(OptionalDouble.empty(), OptionalDouble.empty(), 0, 0);

    public Posture {
        if (!(Math.abs(sideTiltDeg) <= 90) || !(Math.abs(towardsPathDeg) <= 90))
            throw new IllegalArgumentException("tilt " + sideTiltDeg + ", " + towardsPathDeg);
    }
}
