package handreach.reach;

import handreach.geodesy.Position;
import handreach.input.Range;
import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;

/**
 * How far along bearings: exact losses at every sample of radials from one position.
 *
 * @param source where the first antenna stands
 * @param radiusM how far to look, m
 * @param stepDeg degrees between bearings; a whole number of them makes a turn
 * @param conditions frequency, polarisation, ground, air, climate
 * @param model loss model
 */
public record BearingRequest(
        Position source, double radiusM, double stepDeg, PathConditions conditions, LossModel model) {
    /** Steps that can be asked for; our suggestion. */
    public static final Range STEP = new Range("bearing_step_deg", 1, 90, "degrees");
    /** Every 5°, as the tables show. */
    public static final double USUAL_STEP_DEG = 5;

    public BearingRequest {
        if (!(radiusM >= CellsByRadial.NEAREST_M && radiusM <= AreaRequest.LARGEST_RADIUS_M))
            throw new IllegalArgumentException("radius " + radiusM + " m, allowed " + CellsByRadial.NEAREST_M + " to "
                    + AreaRequest.LARGEST_RADIUS_M);
        if (!(stepDeg >= 0.1 && stepDeg <= 90) || !makesTurn(stepDeg))
            throw new IllegalArgumentException("bearings every " + stepDeg + " degrees do not make a turn");
        if (source == null || conditions == null || model == null)
            throw new IllegalArgumentException("a bearing request leaves nothing out");
    }

    /** Whether steps of this many degrees make a whole turn. */
    public static boolean makesTurn(double stepDeg) {
        return Math.abs(360 / stepDeg - Math.rint(360 / stepDeg)) <= 1e-9;
    }

    /** Number of bearings. */
    public int bearings() {
        return (int) Math.rint(360 / stepDeg);
    }

    /** Bearing by number, degrees from true north. */
    public double bearingDeg(int number) {
        return number * stepDeg;
    }
}
