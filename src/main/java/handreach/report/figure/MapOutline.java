package handreach.report.figure;

import handreach.cartography.LoadoutMark;
import org.locationtech.jts.geom.Geometry;

/**
 * The edge of an area on a map.
 *
 * @param mark how it is told from the others
 * @param name what it is the edge of
 * @param area in degrees, x east, y north; holes kept
 */
public record MapOutline(LoadoutMark mark, String name, Geometry area) {}
