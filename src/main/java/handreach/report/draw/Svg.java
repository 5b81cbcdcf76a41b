package handreach.report.draw;

import handreach.cartography.Hatch;
import handreach.cartography.Srgb;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.Base64;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A figure as SVG 1.1 text. Every word that comes from outside is escaped; pictures are embedded; nothing is fetched. */
public final class Svg implements Pen {
    private static final String FONTS = "'Helvetica Neue',Arial,'Liberation Sans','DejaVu Sans Condensed',sans-serif";

    private final String id;
    private final StringBuilder body = new StringBuilder();
    private final StringBuilder definitions = new StringBuilder();
    private final Map<Hatch, Map<Integer, String>> hatches = new EnumMap<>(Hatch.class);
    private int clips;

    private Svg(String id) {
        this.id = id;
    }

    /**
     * The figure as an {@code svg} element, to be put into a page or, with its namespace, saved as a file.
     *
     * @param id start of the identifiers inside, different for each figure of a page; letters, digits, hyphen
     */
    public static String text(Figure figure, String id) {
        if (!id.matches("[A-Za-z][A-Za-z0-9-]*")) throw new IllegalArgumentException("identifier " + id);
        Svg svg = new Svg(id);
        figure.draw(svg);
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" role=\"img\""
                + " aria-labelledby=\"" + id + "-t " + id + "-d\" viewBox=\"0 0 " + n(figure.widthPx()) + " "
                + n(figure.heightPx()) + "\" width=\"" + n(figure.widthPx()) + "\" height=\"" + n(figure.heightPx())
                + "\" font-family=\"" + FONTS + "\">\n<title id=\"" + id + "-t\">" + Markup.escaped(figure.title())
                + "</title>\n<desc id=\"" + id + "-d\">" + Markup.escaped(figure.description()) + "</desc>\n"
                + (svg.definitions.isEmpty() ? "" : "<defs>" + svg.definitions + "</defs>\n")
                + "<path fill=\"#ffffff\" d=\"M0 0H" + n(figure.widthPx()) + "V" + n(figure.heightPx()) + "H0Z\"/>\n"
                + svg.body + "</svg>\n";
    }

    /** The figure as the text of an SVG file. */
    public static String file(Figure figure) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + text(figure, "figure");
    }

    @Override
    public void draw(Shape shape, ShapeStyle ink) {
        String path = path(shape);
        if (path.isEmpty()) return;
        body.append("<path d=\"").append(path).append('"');
        if (ink.fillRgb() == ShapeStyle.NONE) body.append(" fill=\"none\"");
        else
            body.append(" fill=\"")
                    .append(paint(ink))
                    .append('"')
                    .append(
                            shape.getPathIterator(null).getWindingRule() == PathIterator.WIND_EVEN_ODD
                                    ? " fill-rule=\"evenodd\""
                                    : "");
        if (ink.lineRgb() != ShapeStyle.NONE && ink.widthPx() > 0) {
            body.append(" stroke=\"")
                    .append(Srgb.hex(ink.lineRgb()))
                    .append("\" stroke-width=\"")
                    .append(n(ink.widthPx()))
                    .append("\" stroke-linejoin=\"round\"");
            if (ink.dashPx().isEmpty()) body.append(" stroke-linecap=\"round\"");
            else
                body.append(" stroke-dasharray=\"").append(dashes(ink.dashPx())).append('"');
        }
        if (ink.opacity() < 1)
            body.append(" opacity=\"").append(n(ink.opacity())).append('"');
        body.append("/>\n");
    }

    private static String dashes(List<Double> dashPx) {
        return dashPx.stream().map(Svg::n).collect(Collectors.joining(" "));
    }

    private String paint(ShapeStyle ink) {
        if (ink.hatch() == Hatch.NONE) return Srgb.hex(ink.fillRgb());
        return "url(#"
                + hatches.computeIfAbsent(ink.hatch(), h -> new java.util.HashMap<>())
                        .computeIfAbsent(ink.fillRgb(), rgb -> pattern(ink.hatch(), rgb))
                + ")";
    }

    private String pattern(Hatch hatch, int rgb) {
        String name = id + "-h" + hatch.ordinal() + "-" + Srgb.hex(rgb).substring(1);
        int s = Hatch.SPACING_PX;
        Rectangle2D tile = new Rectangle2D.Double(-s, -s, 3 * s, 3 * s);
        definitions
                .append("<pattern id=\"")
                .append(name)
                .append("\" width=\"")
                .append(s)
                .append("\" height=\"")
                .append(s)
                .append("\" patternUnits=\"userSpaceOnUse\"><path d=\"")
                .append(path(HatchLines.over(tile, hatch)))
                .append("\" fill=\"none\" stroke=\"")
                .append(Srgb.hex(rgb))
                .append("\" stroke-width=\"")
                .append(n(HatchLines.WIDTH_PX))
                .append("\"/></pattern>");
        return name;
    }

    @Override
    public void write(double xPx, double yPx, String text, TextStyle lettering) {
        String clean = Typeface.clean(text);
        if (clean.isBlank()) return;
        body.append("<text x=\"")
                .append(n(xPx))
                .append("\" y=\"")
                .append(n(yPx))
                .append("\" font-size=\"")
                .append(n(lettering.sizePx()))
                .append("\" fill=\"")
                .append(Srgb.hex(lettering.rgb()))
                .append('"');
        switch (lettering.anchor()) {
            case START -> body.append("");
            case MIDDLE -> body.append(" text-anchor=\"middle\"");
            case END -> body.append(" text-anchor=\"end\"");
        }
        if (lettering.isBold()) body.append(" font-weight=\"700\"");
        if (lettering.hasHalo())
            body.append(" stroke=\"#ffffff\" stroke-width=\"3.2\" stroke-linejoin=\"round\" paint-order=\"stroke\"");
        if (lettering.turnDeg() != 0)
            body.append(" transform=\"rotate(")
                    .append(n(-lettering.turnDeg()))
                    .append(' ')
                    .append(n(xPx))
                    .append(' ')
                    .append(n(yPx))
                    .append(")\"");
        body.append('>').append(Markup.escaped(clean)).append("</text>\n");
    }

    @Override
    public void place(Picture picture, Rectangle2D window) {
        body.append("<image x=\"")
                .append(n(window.getX()))
                .append("\" y=\"")
                .append(n(window.getY()))
                .append("\" width=\"")
                .append(n(window.getWidth()))
                .append("\" height=\"")
                .append(n(window.getHeight()))
                .append("\" preserveAspectRatio=\"none\" xlink:href=\"data:image/png;base64,")
                .append(Base64.getEncoder().encodeToString(picture.png()))
                .append("\"/>\n");
    }

    @Override
    public void clipped(Shape window, Runnable drawing) {
        String name = id + "-c" + clips++;
        definitions
                .append("<clipPath id=\"")
                .append(name)
                .append("\"><path d=\"")
                .append(path(window))
                .append("\"/></clipPath>");
        body.append("<g clip-path=\"url(#").append(name).append(")\">\n");
        drawing.run();
        body.append("</g>\n");
    }

    @Override
    public void moved(AffineTransform move, Runnable drawing) {
        double[] m = new double[6];
        move.getMatrix(m);
        body.append("<g transform=\"matrix(");
        for (int i = 0; i < 6; i++) body.append(i > 0 ? " " : "").append(n(m[i]));
        body.append(")\">\n");
        drawing.run();
        body.append("</g>\n");
    }

    @Override
    public void named(String name, Runnable drawing) {
        body.append("<g><title>").append(Markup.escaped(Typeface.clean(name))).append("</title>\n");
        drawing.run();
        body.append("</g>\n");
    }

    private static String path(Shape shape) {
        StringBuilder out = new StringBuilder();
        double[] p = new double[6];
        for (PathIterator i = shape.getPathIterator(null); !i.isDone(); i.next()) {
            switch (i.currentSegment(p)) {
                case PathIterator.SEG_MOVETO -> out.append('M').append(pair(p, 0));
                case PathIterator.SEG_LINETO -> out.append('L').append(pair(p, 0));
                case PathIterator.SEG_QUADTO ->
                    out.append('Q').append(pair(p, 0)).append(' ').append(pair(p, 2));
                case PathIterator.SEG_CUBICTO ->
                    out.append('C')
                            .append(pair(p, 0))
                            .append(' ')
                            .append(pair(p, 2))
                            .append(' ')
                            .append(pair(p, 4));
                default -> out.append('Z');
            }
        }
        return out.toString();
    }

    private static String pair(double[] p, int at) {
        return n(p[at]) + " " + n(p[at + 1]);
    }

    /** A number in at most two decimals, without trailing zeros. */
    public static String n(double value) {
        if (!(Math.abs(value) < 1e12)) throw new IllegalArgumentException("a figure with a place at " + value);
        long hundredths = Math.round(value * 100);
        long rest = Math.abs(hundredths % 100);
        String whole = (hundredths < 0 ? "-" : "") + Math.abs(hundredths / 100);
        if (rest == 0) return whole;
        return whole + (rest % 10 == 0 ? "." + rest / 10 : rest < 10 ? ".0" + rest : "." + rest);
    }
}
