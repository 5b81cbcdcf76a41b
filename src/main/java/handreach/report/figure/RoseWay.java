package handreach.report.figure;

import org.locationtech.jts.geom.Geometry;

/**
 * A route or sector on a rose.
 *
 * @param label word beside it, may be empty
 * @param shape lines or areas in degrees, x east, y north
 */
public record RoseWay(String label, Geometry shape) {
    boolean isArea() {
        return shape.getDimension() == 2;
    }
}
