package handreach.cartography;

import org.locationtech.jts.geom.LineString;

/**
 * One line of a graticule.
 *
 * @param label what to write at its ends
 * @param runsNorth whether it runs from south to north, so that its label stands above or below
 * @param line in degrees, x east, y north
 * @param zone zone and band in which the label counts, such as 16S; empty for degrees, which need none
 */
public record GridLine(String label, boolean runsNorth, LineString line, String zone) {}
