package handreach.report;

import handreach.cartography.LoadoutMark;

/**
 * What a loadout does on this ground, as one row.
 *
 * @param mark how it is told from the others
 * @param name what the user calls it
 * @param median median over the bearings of the continuous reach
 * @param worst bearing with the shortest continuous reach
 * @param share share of the ground within the radius, in words with its interval
 * @param verdict what this means, in plain words
 */
public record ReachLine(LoadoutMark mark, String name, ReachSpan median, Worst worst, String share, String verdict) {
    /** The shortest reach and the bearing, degrees from true north, it lies on. */
    public record Worst(ReachSpan span, double bearingDeg) {}
}
