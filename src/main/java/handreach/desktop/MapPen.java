package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** Draws on the map in pixels: lines with a pale edge, symbols, words. */
final class MapPen {
    private static final double WORDS_PX = 13;
    private static final double HALO_PX = 3.4;

    private final GraphicsContext gc;
    private final MapFrame frame;
    private final Look look;

    MapPen(GraphicsContext gc, MapFrame frame, Look look) {
        this.gc = gc;
        this.frame = frame;
        this.look = look;
        gc.setLineCap(StrokeLineCap.ROUND);
        gc.setLineJoin(StrokeLineJoin.ROUND);
        gc.setTextBaseline(VPos.CENTER);
    }

    Look look() {
        return look;
    }

    double x(Position at) {
        return frame.xPx(at.longitudeDeg());
    }

    double y(Position at) {
        return frame.yPx(at.latitudeDeg());
    }

    /** A line through pixels, x and y in turn, with or without the pale edge. */
    void line(Color colour, double widthPx, boolean hasHalo, List<Double> dashPx, double... xy) {
        gc.save();
        gc.setLineDashes(dashPx.stream().mapToDouble(Double::doubleValue).toArray());
        if (hasHalo) {
            gc.setStroke(look.halo());
            gc.setGlobalAlpha(0.75);
            gc.setLineWidth(widthPx + 2.4);
            stroke(xy);
            gc.setGlobalAlpha(1);
        }
        gc.setStroke(colour);
        gc.setLineWidth(widthPx);
        stroke(xy);
        gc.restore();
    }

    private void stroke(double... xy) {
        gc.beginPath();
        gc.moveTo(xy[0], xy[1]);
        for (int i = 2; i + 1 < xy.length; i += 2) gc.lineTo(xy[i], xy[i + 1]);
        gc.stroke();
    }

    /** Words whose left end, or middle, stands at a pixel. */
    void words(String text, double x, double y, TextAlignment alignment, boolean isBold, Color colour) {
        gc.save();
        gc.setFont(Font.font(Theme.FAMILY, isBold ? FontWeight.BOLD : FontWeight.NORMAL, WORDS_PX));
        gc.setTextAlign(alignment);
        gc.setStroke(look.halo());
        gc.setLineWidth(HALO_PX);
        gc.strokeText(text, x, y);
        gc.setFill(colour);
        gc.fillText(text, x, y);
        gc.restore();
    }

    /** A closed shape through pixels, filled, with a pale edge outside and an ink edge. */
    void shape(Color fill, double... xy) {
        int n = xy.length / 2;
        double[] xs = new double[n];
        double[] ys = new double[n];
        for (int i = 0; i < n; i++) {
            xs[i] = xy[2 * i];
            ys[i] = xy[2 * i + 1];
        }
        gc.save();
        gc.setStroke(look.halo());
        gc.setLineWidth(5);
        gc.strokePolygon(xs, ys, n);
        gc.setFill(fill);
        gc.fillPolygon(xs, ys, n);
        gc.setStroke(look.ink());
        gc.setLineWidth(1.6);
        gc.strokePolygon(xs, ys, n);
        gc.restore();
    }

    /** A disc with a pale edge outside and an ink edge. */
    void disc(Color fill, double x, double y, double radiusPx) {
        gc.save();
        gc.setFill(look.halo());
        double edge = radiusPx + 2;
        gc.fillOval(x - edge, y - edge, 2 * edge, 2 * edge);
        gc.setFill(fill);
        gc.fillOval(x - radiusPx, y - radiusPx, 2 * radiusPx, 2 * radiusPx);
        gc.setStroke(look.ink());
        gc.setLineWidth(1.6);
        gc.strokeOval(x - radiusPx, y - radiusPx, 2 * radiusPx, 2 * radiusPx);
        gc.restore();
    }

    /** An open ring. */
    void ring(Color colour, double x, double y, double radiusPx, double widthPx) {
        gc.save();
        gc.setStroke(colour);
        gc.setLineWidth(widthPx);
        gc.strokeOval(x - radiusPx, y - radiusPx, 2 * radiusPx, 2 * radiusPx);
        gc.restore();
    }

    void box(Color fill, double x, double y, double width, double height) {
        gc.setFill(fill);
        gc.fillRect(x, y, width, height);
    }
}
