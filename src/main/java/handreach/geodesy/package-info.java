/**
 * Positions, bearings, geodesic lines on WGS 84, and how people write a place.
 *
 * <p>What it is not: no map projection for drawing, no elevation. Terms: azimuth is degrees clockwise from true north.
 */
package handreach.geodesy;
