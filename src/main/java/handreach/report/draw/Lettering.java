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
public record Lettering(double sizePx, Anchor anchor, boolean isBold, int rgb, boolean hasHalo, double turnDeg) {
    /** Nothing smaller is printed: it could not be read at arm's length. */
    public static final double SMALLEST_PX = 12;

    public static final int INK = 0x1F262B;
    public static final int QUIET = 0x4A545B;

    public enum Anchor {
        START,
        MIDDLE,
        END
    }

    public Lettering {
        if (!(sizePx >= SMALLEST_PX)) throw new IllegalArgumentException("text of " + sizePx + " px");
    }

    public static Lettering plain(double sizePx) {
        return new Lettering(sizePx, Anchor.START, false, INK, false, 0);
    }

    public static Lettering quiet(double sizePx) {
        return new Lettering(sizePx, Anchor.START, false, QUIET, false, 0);
    }

    public Lettering bold() {
        return new Lettering(sizePx, anchor, true, rgb, hasHalo, turnDeg);
    }

    public Lettering at(Anchor other) {
        return new Lettering(sizePx, other, isBold, rgb, hasHalo, turnDeg);
    }

    public Lettering middle() {
        return at(Anchor.MIDDLE);
    }

    public Lettering end() {
        return at(Anchor.END);
    }

    public Lettering colour(int other) {
        return new Lettering(sizePx, anchor, isBold, other, hasHalo, turnDeg);
    }

    public Lettering halo() {
        return new Lettering(sizePx, anchor, isBold, rgb, true, turnDeg);
    }

    public Lettering turned(double degrees) {
        return new Lettering(sizePx, anchor, isBold, rgb, hasHalo, degrees);
    }
}
