package handreach.propagation;

import handreach.units.Frequency;

/** How a level spreads from place to place about a prediction; none of it is the error of the prediction. */
public final class Variability {
    private Variability() {}

    /**
     * Standard deviation between the places of one small square: (0.024 f + 0.52) w^0.28, f in GHz.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   side of the square m; result dB
     * @valid  side 50 to 1000 m (from memory); antenna below the clutter, else times {@link #heightShare}
     * @error  the spread itself is known to about 1 dB
     * @source Rec. ITU-R P.1812-6, equation (64); Rec. ITU-R P.1546-6
     */
    public static double locationSpreadDb(Frequency frequency, double squareM) {
        if (!(squareM > 0)) throw new IllegalArgumentException("side of a square " + squareM + " m");
        return (0.024 * frequency.ghz() + 0.52) * Math.pow(squareM, 0.28);
    }

    /**
     * Share u of the location spread that is left at a height: 1 below the clutter, falling to 0 ten metres above it.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   height of the antenna and of the clutter around it, both above ground, m; result 0 to 1
     * @valid  heights from 0
     * @error  exact
     * @source Rec. ITU-R P.1812-6, equation (65)
     */
    public static double heightShare(double heightM, double clutterM) {
        return Math.max(0, Math.min(1, 1 - (heightM - clutterM) / 10));
    }
}
