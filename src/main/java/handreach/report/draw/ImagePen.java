package handreach.report.draw;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;

/** Draws a figure into a raster. Letters are drawn as outlines, so no installed font is needed. */
final class ImagePen implements Pen {
    private final Graphics2D graphics;

    private ImagePen(Graphics2D graphics) {
        this.graphics = graphics;
    }

    static BufferedImage image(Figure figure, double scale) {
        int width = (int) Math.ceil(figure.widthPx() * scale);
        int height = (int) Math.ceil(figure.heightPx() * scale);
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width, height);
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        graphics.scale(scale, scale);
        figure.draw(new ImagePen(graphics));
        graphics.dispose();
        return image;
    }

    @Override
    public void draw(Shape shape, ShapeStyle ink) {
        Composite before = graphics.getComposite();
        if (ink.opacity() < 1) graphics.setComposite(AlphaComposite.SrcOver.derive((float) ink.opacity()));
        if (ink.fillRgb() != ShapeStyle.NONE) {
            graphics.setColor(new Color(ink.fillRgb()));
            if (ink.hatch() == handreach.cartography.Hatch.NONE) graphics.fill(shape);
            else hatch(shape, ink);
        }
        if (ink.lineRgb() != ShapeStyle.NONE && ink.widthPx() > 0) {
            graphics.setColor(new Color(ink.lineRgb()));
            graphics.setStroke(stroke(ink.widthPx(), ink.dashPx()));
            graphics.draw(shape);
        }
        graphics.setComposite(before);
    }

    private void hatch(Shape shape, ShapeStyle ink) {
        Shape clip = graphics.getClip();
        graphics.clip(shape);
        graphics.setStroke(new BasicStroke((float) HatchLines.WIDTH_PX));
        graphics.draw(HatchLines.over(shape.getBounds2D(), ink.hatch()));
        graphics.setClip(clip);
    }

    private static BasicStroke stroke(double widthPx, List<Double> dashPx) {
        if (dashPx.isEmpty())
            return new BasicStroke((float) widthPx, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10);
        float[] dash = new float[dashPx.size()];
        for (int i = 0; i < dash.length; i++) dash[i] = dashPx.get(i).floatValue();
        return new BasicStroke((float) widthPx, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dash, 0);
    }

    @Override
    public void write(double xPx, double yPx, String text, TextStyle lettering) {
        Typeface face = Typeface.of(lettering.isBold());
        AffineTransform move = AffineTransform.getTranslateInstance(xPx, yPx);
        move.rotate(-Math.toRadians(lettering.turnDeg()));
        move.translate(-anchorShare(lettering) * face.widthPx(text, lettering.sizePx()), 0);
        Path2D outline = face.outline(text, lettering.sizePx());
        outline.transform(move);
        if (lettering.hasHalo()) {
            graphics.setColor(Color.WHITE);
            graphics.setStroke(new BasicStroke(3.2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            graphics.draw(outline);
        }
        graphics.setColor(new Color(lettering.rgb()));
        graphics.fill(outline);
    }

    static double anchorShare(TextStyle lettering) {
        return switch (lettering.anchor()) {
            case START -> 0;
            case MIDDLE -> 0.5;
            case END -> 1;
        };
    }

    @Override
    public void place(Picture picture, Rectangle2D window) {
        graphics.drawImage(
                picture.image(),
                new AffineTransform(
                        window.getWidth() / picture.widthPx(),
                        0,
                        0,
                        window.getHeight() / picture.heightPx(),
                        window.getX(),
                        window.getY()),
                null);
    }

    @Override
    public void clipped(Shape window, Runnable drawing) {
        Shape clip = graphics.getClip();
        graphics.clip(window);
        drawing.run();
        graphics.setClip(clip);
    }

    @Override
    public void moved(AffineTransform move, Runnable drawing) {
        AffineTransform before = graphics.getTransform();
        graphics.transform(move);
        drawing.run();
        graphics.setTransform(before);
    }

    @Override
    public void named(String name, Runnable drawing) {
        drawing.run();
    }
}
