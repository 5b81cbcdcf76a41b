package handreach.desktop;

import handreach.cartography.LabelPlacement;
import handreach.cartography.LineClip;
import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.TextAlignment;
import org.locationtech.jts.geom.Envelope;

/**
 * Draws on the map in pixels: lines with a pale edge, symbols, words. What it has drawn it keeps clear of names, which come last,
 * when all marks are known.
 */
final class MapPen {
    /** Points of a line stroked at once. */
    private static final int PIECE_POINTS = 6;

    private static final double HALO_PX = 1.7;
    private static final int HALO_COPIES = 8;
    private static final double SPOT_PX = 4;
    /** Lines are drawn so far beyond the map, that their ends never show. */
    private static final double BEYOND_PX = 20;

    private final GraphicsContext gc;
    private final MapFrame frame;
    private final Palette palette;
    private final MapFonts fonts;
    private final List<Envelope> over;
    private final List<Envelope> drawn = new ArrayList<>();
    /** Words that are no names: grid, scale. */
    private final List<Envelope> said = new ArrayList<>();

    private final List<Hop> lines = new ArrayList<>();
    private final List<Name> names = new ArrayList<>();

    /** A name that waits for its place beside a mark. */
    private record Name(String text, Envelope mark, boolean isBold) {}

    /** A line that no name is to be crossed by. */
    private record Hop(double fromX, double fromY, double toX, double toY) {}

    /** A name where it stands. */
    record Written(String text, Envelope box) {}

    /** {@code over} lies over the map and hides what is drawn there. */
    MapPen(GraphicsContext gc, MapFrame frame, Palette palette, MapFonts fonts, List<Envelope> over) {
        this.over = over;
        this.gc = gc;
        this.frame = frame;
        this.palette = palette;
        this.fonts = fonts;
        gc.setLineCap(StrokeLineCap.ROUND);
        gc.setLineJoin(StrokeLineJoin.ROUND);
        gc.setTextBaseline(VPos.CENTER);
    }

    Palette palette() {
        return palette;
    }

    /** Height of a line of words, px. */
    double linePx() {
        return fonts.linePx();
    }

    /** Width of words, px. */
    double px(String words, boolean isBold) {
        return fonts.px(words, isBold);
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
            gc.setStroke(palette.halo());
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
        Envelope window =
                new Envelope(-BEYOND_PX, frame.widthPx() + BEYOND_PX, -BEYOND_PX, frame.heightPx() + BEYOND_PX);
        for (double[] part : LineClip.inside(window, xy)) strokeInPieces(part);
        gc.setLineDashOffset(0);
    }

    /**
     * Without a graphics card a stroke costs as much as the box round it holds, which for a ring is the whole map: so long lines go in
     * pieces. Pieces end where the line runs on nearly straight, and carry the dashes on.
     */
    private void strokeInPieces(double[] xy) {
        double done = 0;
        int last = xy.length / 2 - 1;
        for (int from = 0; from < last; ) {
            gc.setLineDashOffset(done);
            gc.beginPath();
            gc.moveTo(xy[2 * from], xy[2 * from + 1]);
            int at = from;
            do {
                at++;
                gc.lineTo(xy[2 * at], xy[2 * at + 1]);
                done += Math.hypot(xy[2 * at] - xy[2 * at - 2], xy[2 * at + 1] - xy[2 * at - 1]);
            } while (at < last && (at - from < PIECE_POINTS || turns(xy, at)));
            gc.stroke();
            from = at;
        }
    }

    /** Whether a line bends by more than some ten degrees at a point. */
    private static boolean turns(double[] xy, int at) {
        double ax = xy[2 * at] - xy[2 * at - 2];
        double ay = xy[2 * at + 1] - xy[2 * at - 1];
        double bx = xy[2 * at + 2] - xy[2 * at];
        double by = xy[2 * at + 3] - xy[2 * at + 1];
        return Math.abs(ax * by - ay * bx) > 0.2 * Math.abs(ax * bx + ay * by) || ax * bx + ay * by < 0;
    }

    /** The name of a mark of this half-width, written beside it where it covers least. */
    void name(String text, double x, double y, double halfPx, boolean isBold) {
        names.add(new Name(text, around(x, y, halfPx), isBold));
    }

    /** Names keep clear of a line that was drawn here. */
    void keepClear(double fromX, double fromY, double toX, double toY) {
        lines.add(new Hop(fromX, fromY, toX, toY));
    }

    /**
     * Writes the names: on the map, clear of what was drawn, of one another and of what lies over it. What was drawn last chooses
     * first; what finds no place is left out.
     */
    List<Written> writeNames() {
        Envelope window = new Envelope(0, frame.widthPx(), 0, frame.heightPx());
        LabelPlacement labels = new LabelPlacement(window);
        over.forEach(labels::close);
        said.forEach(labels::close);
        drawn.forEach(labels::keepFree);
        for (Hop line : lines) labels.keepFree(line.fromX(), line.fromY(), line.toX(), line.toY());
        List<Written> written = new ArrayList<>();
        for (int i = names.size() - 1; i >= 0; i--) {
            Name name = names.get(i);
            if (!window.intersects(name.mark())) continue;
            Optional<Envelope> box = labels.placeApart(
                    name.mark(), fonts.px(name.text(), name.isBold()), fonts.linePx(), !name.isBold());
            if (box.isEmpty()) continue;
            written.add(new Written(name.text(), box.get()));
            double middle = box.get().centre().getY();
            write(name.text(), box.get().getMinX(), middle, TextAlignment.LEFT, name.isBold(), palette.ink());
        }
        return written;
    }

    private static Envelope around(double x, double y, double halfPx) {
        return new Envelope(x - halfPx, x + halfPx, y - halfPx, y + halfPx);
    }

    /** Words whose left end, or middle, stands at a pixel; left out where something that lies over the map would hide a part. */
    void words(String text, double x, double y, TextAlignment alignment, boolean isBold, Color colour) {
        double wide = fonts.px(text, isBold);
        double left = alignment == TextAlignment.CENTER ? x - wide / 2 : x;
        Envelope box = new Envelope(left, left + wide, y - fonts.linePx() / 2, y + fonts.linePx() / 2);
        if (over.stream().anyMatch(box::intersects)) return;
        drawn.add(box);
        said.add(box);
        write(text, x, y, alignment, isBold, colour);
    }

    /** Keeps names off a rectangle. */
    void keepNamesOff(double x, double y, double width, double height) {
        said.add(new Envelope(x, x + width, y, y + height));
    }

    /** Where words stand that are no names, and what else no name runs over. */
    List<Envelope> said() {
        return List.copyOf(said);
    }

    private void write(String text, double x, double y, TextAlignment alignment, boolean isBold, Color colour) {
        gc.save();
        gc.setFont(fonts.font(isBold));
        gc.setTextAlign(alignment);
        // The pale edge of shifted copies: stroking the outlines of the letters takes ten times as long.
        gc.setFill(palette.halo());
        for (int i = 0; i < HALO_COPIES; i++) {
            double turn = 2 * Math.PI * i / HALO_COPIES;
            gc.fillText(text, x + HALO_PX * Math.cos(turn), y + HALO_PX * Math.sin(turn));
        }
        gc.setFill(colour);
        gc.fillText(text, x, y);
        gc.restore();
    }

    /**
     * A few letters along a line of the ground, their base line turned counter-clockwise; left out where they would run through what
     * is drawn already, under what lies over the map or off it.
     */
    void along(String text, double x, double y, double turnDeg, Color colour) {
        double turned = Math.toRadians(turnDeg);
        double wide = fonts.px(text, false);
        double high = fonts.linePx();
        Envelope box = new Envelope(x, x, y, y);
        box.expandBy(
                (wide * Math.abs(Math.cos(turned)) + high * Math.abs(Math.sin(turned))) / 2,
                (wide * Math.abs(Math.sin(turned)) + high * Math.abs(Math.cos(turned))) / 2);
        boolean isOff = !new Envelope(0, frame.widthPx(), 0, frame.heightPx()).contains(box);
        if (isOff || drawn.stream().anyMatch(box::intersects) || over.stream().anyMatch(box::intersects)) return;
        drawn.add(box);
        gc.save();
        gc.translate(x, y);
        gc.rotate(-turnDeg);
        gc.setFont(fonts.font(false));
        gc.setTextAlign(TextAlignment.CENTER);
        gc.setTextBaseline(VPos.BASELINE);
        gc.setFill(palette.halo());
        for (int i = 0; i < HALO_COPIES; i += 2) {
            double turn = 2 * Math.PI * i / HALO_COPIES;
            gc.fillText(text, HALO_PX * Math.cos(turn), HALO_PX * Math.sin(turn));
        }
        gc.setFill(colour);
        gc.fillText(text, 0, 0);
        gc.restore();
    }

    /** A summit: a small triangle on its place, with its height beside it; left out where it would run through words. */
    void spot(String text, double x, double y) {
        if (said.stream().anyMatch(around(x, y, SPOT_PX)::intersects)) return;
        gc.save();
        gc.setStroke(palette.halo());
        gc.setLineWidth(2.4);
        double[] xs = {x - SPOT_PX, x, x + SPOT_PX};
        double[] ys = {y + 0.7 * SPOT_PX, y - 1.1 * SPOT_PX, y + 0.7 * SPOT_PX};
        gc.strokePolygon(xs, ys, 3);
        gc.setFill(palette.grid());
        gc.fillPolygon(xs, ys, 3);
        gc.restore();
        drawn.add(around(x, y, SPOT_PX));
        name(text, x, y, SPOT_PX, false);
    }

    /** A closed shape through pixels, filled, with a pale edge outside and an ink edge. */
    void shape(Color fill, double... xy) {
        int n = xy.length / 2;
        Envelope room = new Envelope();
        double[] xs = new double[n];
        double[] ys = new double[n];
        for (int i = 0; i < n; i++) {
            xs[i] = xy[2 * i];
            ys[i] = xy[2 * i + 1];
            room.expandToInclude(xs[i], ys[i]);
        }
        drawn.add(room);
        gc.save();
        gc.setStroke(palette.halo());
        gc.setLineWidth(5);
        gc.strokePolygon(xs, ys, n);
        gc.setFill(fill);
        gc.fillPolygon(xs, ys, n);
        gc.setStroke(palette.ink());
        gc.setLineWidth(1.6);
        gc.strokePolygon(xs, ys, n);
        gc.restore();
    }

    /** A disc with a pale edge outside and an ink edge. */
    void disc(Color fill, double x, double y, double radiusPx) {
        drawn.add(around(x, y, radiusPx));
        gc.save();
        gc.setFill(palette.halo());
        double edge = radiusPx + 2;
        gc.fillOval(x - edge, y - edge, 2 * edge, 2 * edge);
        gc.setFill(fill);
        gc.fillOval(x - radiusPx, y - radiusPx, 2 * radiusPx, 2 * radiusPx);
        gc.setStroke(palette.ink());
        gc.setLineWidth(1.6);
        gc.strokeOval(x - radiusPx, y - radiusPx, 2 * radiusPx, 2 * radiusPx);
        gc.restore();
    }

    /** An open ring. */
    void ring(Color colour, double x, double y, double radiusPx, double widthPx) {
        drawn.add(around(x, y, radiusPx));
        gc.save();
        gc.setStroke(colour);
        gc.setLineWidth(widthPx);
        gc.strokeOval(x - radiusPx, y - radiusPx, 2 * radiusPx, 2 * radiusPx);
        gc.restore();
    }

    void box(Color fill, double x, double y, double width, double height) {
        drawn.add(new Envelope(x, x + width, y, y + height));
        gc.setFill(fill);
        gc.fillRect(x, y, width, height);
    }
}
