package handreach.report.figure;

import handreach.geodesy.PlaceForm;
import handreach.report.draw.Figure;
import handreach.report.draw.Pen;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;

/** A map or its key as a sheet that can be handed on alone: what it shows, of what, when, and what must be heeded. */
public final class CaptionedMap implements Figure {
    private static final double EDGE_PX = 12;
    private static final TextStyle TITLE = TextStyle.plain(19).bold();
    private static final TextStyle LINE = TextStyle.plain(13);
    private static final TextStyle FOOT = TextStyle.plain(12);
    private static final double LEADING = 1.32;

    private final Figure inner;
    private final List<String> title;
    private final List<String> lines;
    private final List<String> foot;

    private CaptionedMap(Figure inner, List<String> title, List<String> lines, List<String> foot) {
        this.inner = inner;
        this.title = title;
        this.lines = lines;
        this.foot = foot;
    }

    /**
     * A figure under its heading and over a caution.
     *
     * @param lines place, channel, loadout, day: what the figure holds for
     * @param caution what must be heeded by whoever uses it
     */
    public static CaptionedMap of(Figure inner, List<String> lines, String caution) {
        double widthPx = inner.widthPx() - 2 * EDGE_PX;
        List<String> wrapped = new ArrayList<>();
        for (String line : lines) wrapped.addAll(wrapped(line, LINE, widthPx));
        return new CaptionedMap(
                inner, wrapped(inner.title(), TITLE, widthPx), wrapped, wrapped(caution, FOOT, widthPx));
    }

    private static List<String> wrapped(String words, TextStyle style, double widthPx) {
        Typeface face = Typeface.of(style.isBold());
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String part : PlaceForm.unbroken(Typeface.clean(words).strip()).split(" ")) {
            String word = part.replace(PlaceForm.NO_BREAK, ' ');
            boolean isFull = !line.isEmpty() && face.widthPx(line + " " + word, style.sizePx()) > widthPx;
            if (isFull) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    private static double heightPx(List<String> lines, TextStyle style) {
        return lines.size() * style.sizePx() * LEADING;
    }

    private double innerTopPx() {
        return EDGE_PX + heightPx(title, TITLE) + heightPx(lines, LINE) + EDGE_PX / 2;
    }

    @Override
    public String title() {
        return inner.title();
    }

    @Override
    public String description() {
        return inner.description() + " " + String.join(" ", lines);
    }

    @Override
    public double widthPx() {
        return inner.widthPx();
    }

    @Override
    public double heightPx() {
        return innerTopPx() + inner.heightPx() + heightPx(foot, FOOT) + EDGE_PX;
    }

    @Override
    public boolean holdsPicture() {
        return inner.holdsPicture();
    }

    @Override
    public void draw(Pen pen) {
        write(pen, EDGE_PX, title, TITLE);
        write(pen, EDGE_PX + heightPx(title, TITLE), lines, LINE);
        pen.moved(AffineTransform.getTranslateInstance(0, innerTopPx()), () -> inner.draw(pen));
        write(pen, innerTopPx() + inner.heightPx(), foot, FOOT);
    }

    private static void write(Pen pen, double topPx, List<String> lines, TextStyle style) {
        double y = topPx + style.sizePx();
        for (String line : lines) {
            pen.write(EDGE_PX, y, line, style);
            y += style.sizePx() * LEADING;
        }
    }
}
