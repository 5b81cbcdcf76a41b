package handreach.reach;

import handreach.geodesy.Position;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;

/**
 * The polygons that a plan draws round its area: ground outside is neither counted nor drawn. How far a link reaches along a bearing
 * does not depend on it. Safe for several threads.
 */
public final class DrawnArea {
    private final IndexedPointInAreaLocator inside;

    /** Of polygons in degrees, x is longitude. */
    public DrawnArea(Geometry polygons) {
        inside = new IndexedPointInAreaLocator(polygons);
        // The index is built at the first question, which several threads would ask at once.
        inside.locate(new Coordinate(0, 0));
    }

    /** Whether a place lies within, its edge included. */
    public boolean holds(Position at) {
        return inside.locate(new Coordinate(at.longitudeDeg(), at.latitudeDeg())) != Location.EXTERIOR;
    }
}
