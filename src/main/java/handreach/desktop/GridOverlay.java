package handreach.desktop;

import handreach.cartography.Graticule;
import handreach.cartography.GridLine;
import handreach.cartography.MapFrame;
import handreach.study.Scene;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import org.locationtech.jts.geom.Coordinate;

/** The grid in which the person writes places. */
final class GridOverlay implements MapOverlay {
    private static final double PX_A_LINE = 240;
    /** How far from the edge its words stand, in lines. */
    private static final double EDGE = 0.7;

    /** In the right corner stands the arrow to the north. */
    private static final double NORTH_PX = 44;

    private final Supplier<Scene> scene;

    GridOverlay(Supplier<Scene> scene) {
        this.scene = scene;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (scene.get() == null) return;
        int wanted = (int) Math.max(2, Math.round(frame.widthPx() / PX_A_LINE));
        Color colour = pen.palette().grid().deriveColor(0, 1, 1, 0.45);
        Set<String> told = new HashSet<>();
        for (GridLine line : Graticule.of(frame, scene.get().plan().header().placeForm(), wanted)) {
            Coordinate[] at = line.line().getCoordinates();
            double[] xy = new double[2 * at.length];
            for (int i = 0; i < at.length; i++) {
                xy[2 * i] = frame.xPx(at[i].getX());
                xy[2 * i + 1] = frame.yPx(at[i].getY());
            }
            pen.line(colour, 0.8, false, List.of(), xy);
            if (label(pen, frame, line, !told.contains(line.zone()), xy)) told.add(line.zone());
        }
    }

    /** Writes the label where it has room, with its zone if that is still to be told; whether it did. */
    private static boolean label(MapPen pen, MapFrame frame, GridLine line, boolean tellsZone, double[] xy) {
        Color ink = pen.palette().grid();
        String words = tellsZone ? (line.zone() + " " + line.label()).strip() : line.label();
        if (line.runsNorth()) {
            boolean isTopLast = xy[1] >= xy[xy.length - 1];
            double x = isTopLast ? xy[xy.length - 2] : xy[0];
            double top = isTopLast ? xy[xy.length - 1] : xy[1];
            // A line that ends at the edge of its zone does not come up to the words.
            boolean hasRoom =
                    x > 40 && x + pen.px(words, false) / 2 < frame.widthPx() - NORTH_PX && top < 2 * pen.linePx();
            if (hasRoom) pen.words(words, x, EDGE * pen.linePx(), TextAlignment.CENTER, false, ink);
            return hasRoom;
        } else {
            double x = Math.max(0, xy[0]);
            double y = xy[1];
            boolean hasRoom = y > 40 && y < frame.heightPx() - 60 && x < frame.widthPx() - 80;
            if (hasRoom) pen.words(words, x + 6, y, TextAlignment.LEFT, false, ink);
            return hasRoom;
        }
    }
}
