package handreach.report.draw;

import handreach.cartography.MapFrame;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** Shapes from numbers and from geometries. */
public final class Outline {
    /** Bends smaller than this cannot be seen, px. */
    private static final double FINEST_PX = 0.35;

    private Outline() {}

    /** A line through points given as x, y, x, y …. */
    public static Path2D line(double... xy) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i + 1 < xy.length; i += 2) {
            if (i == 0) path.moveTo(xy[0], xy[1]);
            else path.lineTo(xy[i], xy[i + 1]);
        }
        return path;
    }

    public static Shape disc(double x, double y, double radius) {
        return new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
    }

    public static Rectangle2D box(double x, double y, double width, double height) {
        return new Rectangle2D.Double(x, y, width, height);
    }

    /** The room that a shape takes. */
    public static Envelope room(Shape shape) {
        Rectangle2D box = shape.getBounds2D();
        return new Envelope(box.getMinX(), box.getMaxX(), box.getMinY(), box.getMaxY());
    }

    /** A geometry in degrees on a map whose upper left corner stands at x, y; polygons keep their holes (even-odd). */
    public static Path2D of(Geometry degrees, MapFrame frame, double x, double y) {
        Geometry onMap = degrees.copy();
        onMap.apply((Coordinate c) -> {
            c.setX(x + frame.xPx(c.getX()));
            c.setY(y + frame.yPx(c.getY()));
        });
        onMap.geometryChanged();
        Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        add(path, onMap);
        return path;
    }

    private static void add(Path2D path, Geometry geometry) {
        if (geometry instanceof LineString line) add(path, line);
        else if (geometry instanceof Polygon polygon) {
            if (polygon.isEmpty()) return;
            add(path, polygon.getExteriorRing());
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) add(path, polygon.getInteriorRingN(i));
        } else if (geometry instanceof GeometryCollection)
            for (int i = 0; i < geometry.getNumGeometries(); i++) add(path, geometry.getGeometryN(i));
    }

    private static void add(Path2D path, LineString line) {
        boolean isRing = line.isClosed();
        Coordinate[] points = DouglasPeuckerSimplifier.simplify(line, FINEST_PX).getCoordinates();
        if (points.length < 2) return;
        path.moveTo(points[0].getX(), points[0].getY());
        int last = isRing ? points.length - 1 : points.length;
        for (int i = 1; i < last; i++) path.lineTo(points[i].getX(), points[i].getY());
        if (isRing) path.closePath();
    }
}
