/**
 * Hillshade, contours, graticule, scale, colour and places for names as plain arrays and geometries, for whoever draws.
 *
 * <p>What it is not: it paints on no screen and no page, and computes no radio. Terms: a {@link handreach.cartography.MapFrame}
 * is the window of a map with its scale; pixels count from the upper left corner, x to the east, y to the south; geometries are
 * in degrees, x east and y north. Open problem: maps that hold a pole are refused.
 */
package handreach.cartography;
