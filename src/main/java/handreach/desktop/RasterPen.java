package handreach.desktop;

import handreach.cartography.MapFrame;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Draws lines of the ground into the pixels of a picture, away from the screen thread. */
final class RasterPen implements AutoCloseable {
    /** Rings smaller than this are specks that no one can follow. */
    private static final double SPECK_PX = 5;

    private final MapFrame frame;
    private final BufferedImage image;
    private final Graphics2D graphics;

    RasterPen(MapFrame frame) {
        this.frame = frame;
        this.image = new BufferedImage(frame.widthPx(), frame.heightPx(), BufferedImage.TYPE_INT_ARGB_PRE);
        this.graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    /** The picture's own pixels, premultiplied. */
    int[] argb() {
        return ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    }

    /** Lines through places given as longitude and latitude, degrees; all at once, which takes a fraction of one by one. */
    void lines(List<Coordinate[]> lines, int argb, float widthPx) {
        Path2D path = new Path2D.Float();
        for (Coordinate[] places : lines) add(path, places);
        stroke(path, argb, widthPx);
    }

    /** The rim of an area in degrees; what lies outside the picture and specks are left out. */
    void rim(Geometry area, int argb, float widthPx) {
        Path2D path = new Path2D.Float();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            Geometry rings = area.getGeometryN(i).getBoundary();
            for (int k = 0; k < rings.getNumGeometries(); k++)
                if (isWorthDrawing(rings.getGeometryN(k).getEnvelopeInternal()))
                    add(path, rings.getGeometryN(k).getCoordinates());
        }
        stroke(path, argb, widthPx);
    }

    private boolean isWorthDrawing(Envelope box) {
        double west = frame.xPx(box.getMinX());
        double east = frame.xPx(box.getMaxX());
        double north = frame.yPx(box.getMaxY());
        double south = frame.yPx(box.getMinY());
        boolean isInView = east >= 0 && west <= frame.widthPx() && south >= 0 && north <= frame.heightPx();
        return isInView && Math.max(east - west, south - north) >= SPECK_PX;
    }

    private void add(Path2D path, Coordinate[] places) {
        for (int i = 0; i < places.length; i++) {
            double x = frame.xPx(places[i].getX());
            double y = frame.yPx(places[i].getY());
            if (i == 0) path.moveTo(x, y);
            else path.lineTo(x, y);
        }
    }

    private void stroke(Path2D path, int argb, float widthPx) {
        graphics.setColor(new Color(argb, true));
        graphics.setStroke(new BasicStroke(widthPx));
        graphics.draw(path);
    }

    @Override
    public void close() {
        graphics.dispose();
    }
}
