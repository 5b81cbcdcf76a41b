package handreach.report.figure;

import handreach.report.draw.LegendEntry;
import handreach.report.draw.ShapeStyle;
import org.locationtech.jts.geom.Geometry;

/**
 * Lines on a map: hops, tracks, edges of sectors.
 *
 * @param shape lines or areas in degrees, x east, y north
 * @param kind what it is, which the key says once
 */
public record MapWay(Geometry shape, Kind kind) {
    /**
     * What lines of one look mean.
     *
     * @param name as the key has it
     * @param ink how they are drawn
     */
    public record Kind(String name, ShapeStyle ink) {
        LegendEntry entry() {
            return LegendEntry.line(ink, name);
        }
    }
}
