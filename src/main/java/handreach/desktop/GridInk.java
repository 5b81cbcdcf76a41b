package handreach.desktop;

import handreach.cartography.Graticule;
import handreach.cartography.GridLine;
import handreach.cartography.MapFrame;
import handreach.study.Scene;
import java.util.List;
import java.util.function.Supplier;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import org.locationtech.jts.geom.Coordinate;

/** The grid in which the person writes places. */
final class GridInk implements MapInk {
    private static final double PX_A_LINE = 240;
    /** How far from the edge its words stand, in lines. */
    private static final double EDGE = 0.7;

    private final Supplier<Scene> scene;

    GridInk(Supplier<Scene> scene) {
        this.scene = scene;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (scene.get() == null) return;
        int wanted = (int) Math.max(2, Math.round(frame.widthPx() / PX_A_LINE));
        Color colour = pen.palette().grid().deriveColor(0, 1, 1, 0.45);
        boolean tellsZone = true;
        for (GridLine line : Graticule.of(frame, scene.get().plan().header().placeForm(), wanted)) {
            Coordinate[] at = line.line().getCoordinates();
            double[] xy = new double[2 * at.length];
            for (int i = 0; i < at.length; i++) {
                xy[2 * i] = frame.xPx(at[i].getX());
                xy[2 * i + 1] = frame.yPx(at[i].getY());
            }
            pen.line(colour, 0.8, false, List.of(), xy);
            if (label(pen, frame, line, tellsZone, xy)) tellsZone = false;
        }
    }

    /** Writes the label where it has room, with its zone if that is still to be told; whether it did. */
    private static boolean label(MapPen pen, MapFrame frame, GridLine line, boolean tellsZone, double[] xy) {
        Color ink = pen.palette().grid();
        String words = tellsZone ? (line.zone() + " " + line.label()).strip() : line.label();
        if (line.runsNorth()) {
            double x = xy[1] < xy[xy.length - 1] ? xy[0] : xy[xy.length - 2];
            boolean hasRoom = x > 40 && x < frame.widthPx() - 40;
            if (hasRoom) pen.words(words, x, EDGE * pen.linePx(), TextAlignment.CENTER, false, ink);
            return hasRoom;
        } else {
            double y = xy[1];
            boolean hasRoom = y > 40 && y < frame.heightPx() - 60;
            if (hasRoom) pen.words(words, 6, y, TextAlignment.LEFT, false, ink);
            return hasRoom;
        }
    }
}
