package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.study.Scene;
import handreach.units.Bearings;
import handreach.units.Lengths;
import java.util.List;
import java.util.Optional;
import javafx.scene.text.TextAlignment;

/** The place that was gone to, and the line that is measured with its length and both bearings. */
final class ToolOverlay implements MapOverlay {
    private static final double ARM_PX = 12;
    private static final double GAP_PX = 4;

    private final Session session;
    private final MapTools tools;

    ToolOverlay(Session session, MapTools tools) {
        this.session = session;
        this.tools = tools;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        Scene scene = session.scene().get();
        if (scene == null) return;
        tools.looked().get().ifPresent(looked -> cross(pen, looked));
        tools.measured().get().ifPresent(line -> {
            Optional<Position> to = line.to().or(session.cursor()::get);
            to.ifPresent(
                    end -> measure(pen, line.from(), end, scene.plan().header().lengths()));
        });
    }

    private static void cross(MapPen pen, MapTools.Looked looked) {
        double x = pen.x(looked.at());
        double y = pen.y(looked.at());
        for (int side = -1; side <= 1; side += 2) {
            pen.line(pen.palette().accent(), 2.2, true, List.of(), x + side * GAP_PX, y, x + side * ARM_PX, y);
            pen.line(pen.palette().accent(), 2.2, true, List.of(), x, y + side * GAP_PX, x, y + side * ARM_PX);
        }
        pen.name(looked.words(), x, y, ARM_PX, true);
    }

    private static void measure(MapPen pen, Position from, Position to, Lengths lengths) {
        GeodesicLine line = GeodesicLine.between(from, to);
        pen.disc(pen.palette().halo(), pen.x(from), pen.y(from), 4);
        if (line.lengthM() < 1) return;
        pen.line(pen.palette().ink(), 1.8, true, List.of(7.0, 5.0), pen.x(from), pen.y(from), pen.x(to), pen.y(to));
        pen.disc(pen.palette().halo(), pen.x(to), pen.y(to), 4);
        pen.words(
                words(line, GeodesicLine.between(to, from), lengths),
                (pen.x(from) + pen.x(to)) / 2,
                (pen.y(from) + pen.y(to)) / 2 - pen.linePx(),
                TextAlignment.CENTER,
                true,
                pen.palette().ink());
    }

    /** {@code 2.9 km, 047° there, 227° back}: of true north. */
    static String words(GeodesicLine there, GeodesicLine back, Lengths lengths) {
        return lengths.text(there.lengthM()) + ", " + Bearings.TRUE.brief(there.azimuthDeg()) + " there, "
                + Bearings.TRUE.brief(back.azimuthDeg()) + " back";
    }
}
