package handreach.budget;

import java.util.OptionalDouble;

/**
 * How a person stands to the path.
 *
 * @param pathFromFrontDeg bearing of the path clockwise from the wearer's front; empty when it may be any
 * @param sideTiltDeg lean of the antenna across the path, clockwise as seen from this end looking to the other
 * @param towardsPathDeg lean of the antenna towards the other end
 */
public record Posture(OptionalDouble pathFromFrontDeg, double sideTiltDeg, double towardsPathDeg) {
    /** Upright, any heading. */
    public static final Posture UPRIGHT = new Posture(OptionalDouble.empty(), 0, 0);

    public Posture {
        if (!(Math.abs(sideTiltDeg) <= 90) || !(Math.abs(towardsPathDeg) <= 90))
            throw new IllegalArgumentException("tilt " + sideTiltDeg + ", " + towardsPathDeg);
    }
}
