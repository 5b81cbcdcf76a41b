package handreach.report.draw;

import handreach.cartography.Hatch;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Matrix;

/** Draws figures on one page of a PDF: paths stay paths, words stay words. */
public final class PdfPen implements Pen {
    private final PDDocument document;
    private final PDPageContentStream out;
    private final PdfFaces faces;
    private final Map<Double, PDExtendedGraphicsState> opacities = new HashMap<>();
    private final PdfTags tags;
    private AffineTransform toPage;
    private boolean isInPart;

    /** @param toPage from px with y down to points with y up */
    public PdfPen(PDDocument document, PDPageContentStream out, PdfFaces faces, PdfTags tags, AffineTransform toPage) {
        this.tags = tags;
        this.document = document;
        this.out = out;
        this.faces = faces;
        this.toPage = toPage;
    }

    /** Something that writes to the page and may fail at it. */
    private interface Writing {
        void run() throws IOException;
    }

    /** Changes of colour, width and clip inside are undone after it. */
    private void apart(Writing writing) {
        try {
            out.saveGraphicsState();
            writing.run();
            out.restoreGraphicsState();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The whole figure; what belongs to no part of it is decoration, and marked as such. */
    public void draw(Figure figure) throws IOException {
        out.beginMarkedContent(COSName.ARTIFACT);
        figure.draw(this);
        out.endMarkedContent();
    }

    @Override
    public void part(Part part, String words, Runnable drawing) {
        if (isInPart || Typeface.clean(words).isBlank()) {
            drawing.run();
            return;
        }
        isInPart = true;
        try {
            out.endMarkedContent();
            out.beginMarkedContent(COSName.getPDFName(PdfTags.type(part)), tags.part(part, Typeface.clean(words)));
            drawing.run();
            out.endMarkedContent();
            out.beginMarkedContent(COSName.ARTIFACT);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        isInPart = false;
    }

    private double scale() {
        return Math.sqrt(Math.abs(toPage.getDeterminant()));
    }

    @Override
    public void draw(Shape shape, ShapeStyle ink) {
        apart(() -> {
            if (ink.opacity() < 1) out.setGraphicsStateParameters(opacity(ink.opacity()));
            boolean isEvenOdd = shape.getPathIterator(null).getWindingRule() == PathIterator.WIND_EVEN_ODD;
            if (ink.fillRgb() != ShapeStyle.NONE && ink.hatch() == Hatch.NONE && add(shape)) {
                out.setNonStrokingColor(new Color(ink.fillRgb()));
                if (isEvenOdd) out.fillEvenOdd();
                else out.fill();
            }
            if (ink.fillRgb() != ShapeStyle.NONE && ink.hatch() != Hatch.NONE) hatch(shape, ink, isEvenOdd);
            if (ink.lineRgb() != ShapeStyle.NONE && ink.widthPx() > 0) {
                stroke(ink.lineRgb(), ink.widthPx(), ink.dashPx());
                if (add(shape)) out.stroke();
            }
        });
    }

    private void hatch(Shape shape, ShapeStyle ink, boolean isEvenOdd) {
        apart(() -> {
            if (!add(shape)) return;
            if (isEvenOdd) out.clipEvenOdd();
            else out.clip();
            stroke(ink.fillRgb(), HatchLines.WIDTH_PX, List.of());
            if (add(HatchLines.over(shape.getBounds2D(), ink.hatch()))) out.stroke();
        });
    }

    private void stroke(int rgb, double widthPx, List<Double> dashPx) throws IOException {
        out.setStrokingColor(new Color(rgb));
        out.setLineWidth((float) (widthPx * scale()));
        out.setLineJoinStyle(1);
        out.setLineCapStyle(dashPx.isEmpty() ? 1 : 0);
        float[] dash = new float[dashPx.size()];
        for (int i = 0; i < dash.length; i++) dash[i] = (float) (dashPx.get(i) * scale());
        out.setLineDashPattern(dash, 0);
    }

    private PDExtendedGraphicsState opacity(double share) {
        return opacities.computeIfAbsent(share, s -> {
            PDExtendedGraphicsState state = new PDExtendedGraphicsState();
            state.setNonStrokingAlphaConstant((float) (double) s);
            state.setStrokingAlphaConstant((float) (double) s);
            return state;
        });
    }

    /** Adds a shape to the current path; false when it is empty, since then nothing may be painted. */
    private boolean add(Shape shape) throws IOException {
        double[] p = new double[6];
        float[] at = new float[2];
        boolean hasAny = false;
        for (PathIterator i = shape.getPathIterator(toPage); !i.isDone(); i.next()) {
            hasAny = true;
            switch (i.currentSegment(p)) {
                case PathIterator.SEG_MOVETO -> out.moveTo(at[0] = (float) p[0], at[1] = (float) p[1]);
                case PathIterator.SEG_LINETO -> out.lineTo(at[0] = (float) p[0], at[1] = (float) p[1]);
                case PathIterator.SEG_QUADTO -> {
                    // a quadratic piece as the cubic that is the same curve
                    out.curveTo(
                            (float) (at[0] + 2 * (p[0] - at[0]) / 3),
                            (float) (at[1] + 2 * (p[1] - at[1]) / 3),
                            (float) (p[2] + 2 * (p[0] - p[2]) / 3),
                            (float) (p[3] + 2 * (p[1] - p[3]) / 3),
                            (float) p[2],
                            (float) p[3]);
                    at[0] = (float) p[2];
                    at[1] = (float) p[3];
                }
                case PathIterator.SEG_CUBICTO -> {
                    out.curveTo((float) p[0], (float) p[1], (float) p[2], (float) p[3], (float) p[4], (float) p[5]);
                    at[0] = (float) p[4];
                    at[1] = (float) p[5];
                }
                default -> out.closePath();
            }
        }
        return hasAny;
    }

    @Override
    public void write(double xPx, double yPx, String text, TextStyle lettering) {
        Typeface face = Typeface.of(lettering.isBold());
        String words = face.printable(text);
        if (words.isBlank()) return;
        AffineTransform place = new AffineTransform(toPage);
        place.translate(xPx, yPx);
        place.rotate(-Math.toRadians(lettering.turnDeg()));
        place.translate(-ImagePen.anchorShare(lettering) * face.widthPx(words, lettering.sizePx()), 0);
        place.scale(1, -1);
        apart(() -> {
            if (lettering.hasHalo()) {
                stroke(0xFFFFFF, 3.2, List.of());
                show(words, lettering, place, RenderingMode.STROKE);
            }
            out.setNonStrokingColor(new Color(lettering.rgb()));
            show(words, lettering, place, RenderingMode.FILL);
        });
    }

    private void show(String words, TextStyle lettering, AffineTransform place, RenderingMode mode) throws IOException {
        PDFont font = faces.of(lettering.isBold());
        out.beginText();
        out.setRenderingMode(mode);
        out.setFont(font, (float) lettering.sizePx());
        out.setTextMatrix(new Matrix(place));
        out.showText(words);
        out.endText();
    }

    @Override
    public void place(Picture picture, Rectangle2D window) {
        apart(() -> {
            PDImageXObject image = PdfPicture.of(document, picture);
            AffineTransform place = new AffineTransform(toPage);
            place.translate(window.getX(), window.getMaxY());
            place.scale(window.getWidth(), -window.getHeight());
            out.drawImage(image, new Matrix(place));
        });
    }

    @Override
    public void clipped(Shape window, Runnable drawing) {
        apart(() -> {
            add(window);
            out.clip();
            drawing.run();
        });
    }

    @Override
    public void moved(AffineTransform move, Runnable drawing) {
        AffineTransform before = toPage;
        toPage = new AffineTransform(before);
        toPage.concatenate(move);
        drawing.run();
        toPage = before;
    }

    @Override
    public void named(String name, Runnable drawing) {
        drawing.run();
    }
}
