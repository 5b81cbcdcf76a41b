package handreach.cartography;

import org.locationtech.jts.geom.LineString;

/**
 * One piece of a line of equal height.
 *
 * @param levelM height, m
 * @param isIndex whether it is one of the heavier lines that carry a number
 * @param line in degrees, x east, y north; closed, or ended by the edge of the map or a void
 */
public record Contour(double levelM, boolean isIndex, LineString line) {}
