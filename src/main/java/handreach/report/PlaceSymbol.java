package handreach.report;

import java.awt.geom.Path2D;

/** Symbols of places, which stay apart in black and white, with their label beside them. */
final class PlaceSymbol {
    private static final double LABEL_PX = 14;

    private PlaceSymbol() {}

    /** Draws a place; the label goes to the left where it would run over the right end. */
    static void draw(Pen pen, MapPlace place, double x, double y, double rightEnd) {
        Ink ink = Ink.fill(0xFFFFFF).outlined(Lettering.INK, 2);
        switch (place.kind()) {
            case BASE ->
                pen.draw(
                        Outline.box(x - 6, y - 6, 12, 12),
                        Ink.fill(Lettering.INK).outlined(0xFFFFFF, 1.6));
            case PERSON -> pen.draw(Outline.disc(x, y, 6), ink);
            case RELAY -> pen.draw(triangle(x, y), ink);
            case POINT -> {
                pen.draw(Outline.line(x - 6, y - 6, x + 6, y + 6), Ink.line(Lettering.INK, 2));
                pen.draw(Outline.line(x - 6, y + 6, x + 6, y - 6), Ink.line(Lettering.INK, 2));
            }
        }
        if (place.label().isBlank()) return;
        double width = Typeface.of(true).widthPx(place.label(), LABEL_PX);
        boolean isLeft = x + 12 + width > rightEnd;
        Lettering lettering = Lettering.plain(LABEL_PX).bold().halo();
        pen.write(isLeft ? x - 11 : x + 11, y + 5, place.label(), isLeft ? lettering.end() : lettering);
    }

    private static Path2D triangle(double x, double y) {
        Path2D path = Outline.line(x, y - 9, x + 8, y + 6, x - 8, y + 6);
        path.closePath();
        return path;
    }
}
