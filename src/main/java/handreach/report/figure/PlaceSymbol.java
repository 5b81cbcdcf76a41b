package handreach.report.figure;

import handreach.cartography.LabelPlacement;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/** Symbols of places, which stay apart in black and white, with their names beside them. */
final class PlaceSymbol {
    private static final double LABEL_PX = 14;
    private static final double LINE_PX = 16;
    /** From the middle of a line of text down to its base line. */
    private static final double BASE_LINE_PX = 5;

    /** How far the line of a heading goes, from the middle of the symbol; that of a better one, and its head. */
    private static final double NOW_PX = 18;

    private static final double BETTER_PX = 30;
    private static final double HEAD_PX = 9;
    private static final double EAST_DEG = 90;

    private PlaceSymbol() {}

    /**
     * A place on the page.
     *
     * @param place what stands there
     * @param x px from the left
     * @param y px from above
     */
    record Spot(MapPlace place, double x, double y) {}

    /** Draws all symbols, and then each name where it covers least. */
    static void draw(Pen pen, List<Spot> spots, LabelPlacement labels) {
        for (Spot spot : spots) {
            spot.place().facing().ifPresent(facing -> draw(pen, facing, spot, labels));
            draw(pen, spot.place().kind(), spot.x(), spot.y());
            labels.keepFree(room(spot));
        }
        for (Spot spot : spots) if (!spot.place().label().isBlank()) name(pen, spot, labels);
    }

    private static void name(Pen pen, Spot spot, LabelPlacement labels) {
        name(pen, room(spot), spot.place().label(), labels);
    }

    /** A name beside a point that has a symbol of its own, or none. */
    static void name(Pen pen, double x, double y, String name, LabelPlacement labels) {
        name(pen, new Envelope(x - 2, x + 2, y - 2, y + 2), name, labels);
    }

    private static void name(Pen pen, Envelope mark, String name, LabelPlacement labels) {
        Envelope box = labels.place(mark, Typeface.of(true).widthPx(name, LABEL_PX), LINE_PX);
        double baseLine = box.centre().getY() + BASE_LINE_PX;
        pen.write(
                box.getMinX(), baseLine, name, TextStyle.plain(LABEL_PX).bold().halo());
    }

    private static Envelope room(Spot spot) {
        double half =
                spot.place().kind() == MapPlace.Kind.RELAY ? 9 : spot.place().kind() == MapPlace.Kind.SPREAD ? 3 : 6;
        return Outline.room(Outline.disc(spot.x(), spot.y(), half));
    }

    /** What the symbols of some places mean, each kind once. */
    static List<LegendEntry> key(List<MapPlace> places) {
        List<LegendEntry> entries = new ArrayList<>();
        places.stream()
                .map(MapPlace::kind)
                .distinct()
                .sorted()
                .map(kind -> LegendEntry.symbol((pen, x, y) -> draw(pen, kind, x, y), kind.words()))
                .forEach(entries::add);
        if (places.stream().anyMatch(place -> place.facing().isPresent()))
            entries.add(LegendEntry.symbol((pen, x, y) -> drawNow(pen, x - NOW_PX / 2, y, EAST_DEG), "faces this way"));
        if (places.stream()
                .flatMap(place -> place.facing().stream())
                .anyMatch(facing -> facing.betterDeg().isPresent()))
            entries.add(LegendEntry.symbol(
                    (pen, x, y) -> drawBetter(pen, x - BETTER_PX / 2, y, EAST_DEG), "better to face this way"));
        return entries;
    }

    private static void draw(Pen pen, MapPlace.Facing facing, Spot spot, LabelPlacement labels) {
        drawNow(pen, spot.x(), spot.y(), facing.headingDeg());
        labels.keepFree(Outline.room(way(spot.x(), spot.y(), facing.headingDeg(), NOW_PX)));
        facing.betterDeg().ifPresent(deg -> {
            drawBetter(pen, spot.x(), spot.y(), deg);
            labels.keepFree(Outline.room(way(spot.x(), spot.y(), deg, BETTER_PX)));
        });
    }

    private static void drawNow(Pen pen, double x, double y, double headingDeg) {
        Path2D line = way(x, y, headingDeg, NOW_PX);
        pen.draw(line, ShapeStyle.line(0xFFFFFF, 4.5));
        pen.draw(line, ShapeStyle.line(TextStyle.QUIET, 2));
    }

    private static void drawBetter(Pen pen, double x, double y, double headingDeg) {
        Path2D line = way(x, y, headingDeg, BETTER_PX - HEAD_PX);
        pen.draw(line, ShapeStyle.line(0xFFFFFF, 5));
        pen.draw(line, ShapeStyle.line(TextStyle.INK, 2.5));
        double right = Math.sin(Math.toRadians(headingDeg));
        double down = -Math.cos(Math.toRadians(headingDeg));
        double footX = x + (BETTER_PX - HEAD_PX) * right;
        double footY = y + (BETTER_PX - HEAD_PX) * down;
        Path2D head = Outline.line(
                x + BETTER_PX * right,
                y + BETTER_PX * down,
                footX - HEAD_PX / 2 * down,
                footY + HEAD_PX / 2 * right,
                footX + HEAD_PX / 2 * down,
                footY - HEAD_PX / 2 * right);
        head.closePath();
        pen.draw(head, ShapeStyle.fill(TextStyle.INK).outlined(0xFFFFFF, 1.2));
    }

    /** A line from the middle of a symbol the way somebody faces; north is up on every map. */
    private static Path2D way(double x, double y, double headingDeg, double lengthPx) {
        double turn = Math.toRadians(headingDeg);
        return Outline.line(x, y, x + lengthPx * Math.sin(turn), y - lengthPx * Math.cos(turn));
    }

    private static void draw(Pen pen, MapPlace.Kind kind, double x, double y) {
        ShapeStyle ink = ShapeStyle.fill(0xFFFFFF).outlined(TextStyle.INK, 2);
        switch (kind) {
            case BASE ->
                pen.draw(
                        Outline.box(x - 6, y - 6, 12, 12),
                        ShapeStyle.fill(TextStyle.INK).outlined(0xFFFFFF, 1.6));
            case PERSON -> pen.draw(Outline.disc(x, y, 6), ink);
            case RELAY -> pen.draw(triangle(x, y, 1), ink);
            case SITE -> pen.draw(triangle(x, y, 0.6), ShapeStyle.fill(0xFFFFFF).outlined(TextStyle.QUIET, 1.4));
            case SPREAD ->
                pen.draw(Outline.disc(x, y, 2.6), ShapeStyle.fill(TextStyle.INK).outlined(0xFFFFFF, 0.8));
            case POINT -> {
                pen.draw(Outline.line(x - 6, y - 6, x + 6, y + 6), ShapeStyle.line(TextStyle.INK, 2));
                pen.draw(Outline.line(x - 6, y + 6, x + 6, y - 6), ShapeStyle.line(TextStyle.INK, 2));
            }
        }
    }

    private static Path2D triangle(double x, double y, double size) {
        Path2D path = Outline.line(x, y - 9 * size, x + 8 * size, y + 6 * size, x - 8 * size, y + 6 * size);
        path.closePath();
        return path;
    }
}
