package handreach.desktop;

import handreach.cartography.Hatch;
import handreach.report.draw.HatchLines;
import handreach.report.draw.Pen;
import handreach.report.draw.Picture;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.shape.FillRule;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** Draws the report's figures in the window, by day and by night. */
final class FxPen implements Pen {
    private static final double HALO_PX = 1.6;
    private static final int HALO_COPIES = 8;
    private static final int WHITE = 0xFFFFFF;
    private static final Map<List<Object>, Font> FONTS = new ConcurrentHashMap<>();

    private final GraphicsContext gc;
    private final Palette palette;

    FxPen(GraphicsContext gc, Palette palette) {
        this.gc = gc;
        this.palette = palette;
        gc.setTextBaseline(VPos.BASELINE);
        gc.setLineJoin(StrokeLineJoin.ROUND);
    }

    @Override
    public void draw(Shape shape, ShapeStyle ink) {
        gc.setGlobalAlpha(ink.opacity());
        boolean isFilled = ink.fillRgb() != ShapeStyle.NONE;
        if (isFilled && ink.hatch() != Hatch.NONE) hatch(shape, ink);
        trace(shape);
        if (isFilled && ink.hatch() == Hatch.NONE) {
            gc.setFill(palette.ink(ink.fillRgb()));
            gc.fill();
        }
        if (ink.lineRgb() != ShapeStyle.NONE && ink.widthPx() > 0) {
            gc.setStroke(palette.ink(ink.lineRgb()));
            gc.setLineWidth(ink.widthPx());
            gc.setLineCap(ink.dashPx().isEmpty() ? StrokeLineCap.ROUND : StrokeLineCap.BUTT);
            gc.setLineDashes(
                    ink.dashPx().stream().mapToDouble(Double::doubleValue).toArray());
            gc.stroke();
        }
        gc.setGlobalAlpha(1);
    }

    private void hatch(Shape shape, ShapeStyle ink) {
        clipped(shape, () -> {
            trace(HatchLines.over(shape.getBounds2D(), ink.hatch()));
            gc.setStroke(palette.ink(ink.fillRgb()));
            gc.setLineWidth(HatchLines.WIDTH_PX);
            gc.setLineDashes();
            gc.stroke();
        });
    }

    private void trace(Shape shape) {
        gc.beginPath();
        PathIterator path = shape.getPathIterator(null);
        gc.setFillRule(path.getWindingRule() == PathIterator.WIND_EVEN_ODD ? FillRule.EVEN_ODD : FillRule.NON_ZERO);
        double[] xy = new double[6];
        for (; !path.isDone(); path.next())
            switch (path.currentSegment(xy)) {
                case PathIterator.SEG_MOVETO -> gc.moveTo(xy[0], xy[1]);
                case PathIterator.SEG_LINETO -> gc.lineTo(xy[0], xy[1]);
                case PathIterator.SEG_QUADTO -> gc.quadraticCurveTo(xy[0], xy[1], xy[2], xy[3]);
                case PathIterator.SEG_CUBICTO -> gc.bezierCurveTo(xy[0], xy[1], xy[2], xy[3], xy[4], xy[5]);
                default -> gc.closePath();
            }
    }

    @Override
    public void write(double xPx, double yPx, String text, TextStyle lettering) {
        gc.save();
        gc.translate(xPx, yPx);
        gc.rotate(-lettering.turnDeg());
        gc.setFont(font(lettering));
        gc.setTextAlign(
                switch (lettering.anchor()) {
                    case START -> TextAlignment.LEFT;
                    case MIDDLE -> TextAlignment.CENTER;
                    case END -> TextAlignment.RIGHT;
                });
        String line = Typeface.clean(text);
        if (lettering.hasHalo()) {
            // The pale edge of shifted copies: stroking the outlines of the letters takes ten times as long.
            gc.setFill(palette.ink(WHITE));
            for (int i = 0; i < HALO_COPIES; i++) {
                double turn = 2 * Math.PI * i / HALO_COPIES;
                gc.fillText(line, HALO_PX * Math.cos(turn), HALO_PX * Math.sin(turn));
            }
        }
        gc.setFill(palette.ink(lettering.rgb()));
        gc.fillText(line, 0, 0);
        gc.restore();
    }

    /** Looking a font up takes longer than writing a line with it. */
    private static Font font(TextStyle lettering) {
        FontWeight weight = lettering.isBold() ? FontWeight.BOLD : FontWeight.NORMAL;
        return FONTS.computeIfAbsent(
                List.of(weight, lettering.sizePx()), key -> Font.font(Theme.FAMILY, weight, lettering.sizePx()));
    }

    /** A picture keeps its own colours by day and by night. */
    @Override
    public void place(Picture picture, Rectangle2D window) {
        gc.drawImage(image(picture), window.getX(), window.getY(), window.getWidth(), window.getHeight());
    }

    static Image image(Picture picture) {
        int width = picture.widthPx();
        int height = picture.heightPx();
        WritableImage image = new WritableImage(width, height);
        image.getPixelWriter()
                .setPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), picture.argb(), 0, width);
        return image;
    }

    @Override
    public void clipped(Shape window, Runnable drawing) {
        gc.save();
        trace(window);
        gc.clip();
        drawing.run();
        gc.restore();
    }

    @Override
    public void moved(AffineTransform move, Runnable drawing) {
        gc.save();
        gc.transform(
                move.getScaleX(),
                move.getShearY(),
                move.getShearX(),
                move.getScaleY(),
                move.getTranslateX(),
                move.getTranslateY());
        drawing.run();
        gc.restore();
    }

    /** The words for those who cannot see it are told by the node that shows the figure. */
    @Override
    public void named(String name, Runnable drawing) {
        drawing.run();
    }
}
