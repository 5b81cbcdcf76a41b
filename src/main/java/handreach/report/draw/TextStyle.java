package handreach.report.draw;

/**
 * How a line of text looks.
 *
 * @param sizePx size, px; never below {@link #SMALLEST_PX}
 * @param anchor which end of the text stands at the given place
 * @param isBold whether bold
 * @param rgb colour, 0xRRGGBB
 * @param hasHalo whether a white edge keeps it readable over a picture
 * @param turnDeg turn about the anchor, degrees counter-clockwise
 */
public record TextStyle(double sizePx, Anchor anchor, boolean isBold, int rgb, boolean hasHalo, double turnDeg) {
    /** Nothing smaller is printed: it could not be read at arm's length. */
    public static final double SMALLEST_PX = 12;

    public static final int INK = 0x1F262B;
    public static final int QUIET = 0x4A545B;

    public enum Anchor {
        START,
        MIDDLE,
        END
    }

    public TextStyle {
        if (!(sizePx >= SMALLEST_PX)) throw new IllegalArgumentException("text of " + sizePx + " px");
    }

    public static TextStyle plain(double sizePx) {
        return new TextStyle(sizePx, Anchor.START, false, INK, false, 0);
    }

    public static TextStyle quiet(double sizePx) {
        return new TextStyle(sizePx, Anchor.START, false, QUIET, false, 0);
    }

    public TextStyle bold() {
        return new TextStyle(sizePx, anchor, true, rgb, hasHalo, turnDeg);
    }

    public TextStyle at(Anchor other) {
        return new TextStyle(sizePx, other, isBold, rgb, hasHalo, turnDeg);
    }

    public TextStyle middle() {
        return at(Anchor.MIDDLE);
    }

    public TextStyle end() {
        return at(Anchor.END);
    }

    public TextStyle colour(int other) {
        return new TextStyle(sizePx, anchor, isBold, other, hasHalo, turnDeg);
    }

    public TextStyle halo() {
        return new TextStyle(sizePx, anchor, isBold, rgb, true, turnDeg);
    }

    public TextStyle turned(double degrees) {
        return new TextStyle(sizePx, anchor, isBold, rgb, hasHalo, degrees);
    }
}
