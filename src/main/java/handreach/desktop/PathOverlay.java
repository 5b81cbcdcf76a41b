package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.units.Lengths;
import java.util.List;
import java.util.Optional;

/** The line pulled between two places, with its length and azimuth, and the point looked at in the profile. */
final class PathOverlay implements MapOverlay {
    private final Session session;

    PathOverlay(Session session) {
        this.session = session;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (session.scene().get() == null) return;
        Optional<PulledPath> pulled = session.pulled().get();
        if (pulled.isEmpty()) return;
        Position from = pulled.get().from().at();
        Position to = pulled.get().to().at();
        double x1 = pen.x(from);
        double y1 = pen.y(from);
        double x2 = pen.x(to);
        double y2 = pen.y(to);
        pen.line(pen.palette().accent(), 2.4, true, List.of(), x1, y1, x2, y2);
        pen.disc(pen.palette().accent(), x1, y1, 4.5);
        pen.disc(pen.palette().accent(), x2, y2, 4.5);
        GeodesicLine line = GeodesicLine.between(from, to);
        if (line.lengthM() < 1) return;
        Lengths style = session.scene().get().plan().header().lengths();
        String words = style.text(line.lengthM()) + "  "
                + session.scene().get().plan().header().bearings().text(line.azimuthDeg());
        pen.keepClear(x1, y1, x2, y2);
        pen.name(words, (x1 + x2) / 2, (y1 + y2) / 2, 2, true);
        session.alongPath().get().ifPresent(at -> pen.disc(pen.palette().halo(), pen.x(at), pen.y(at), 5));
    }
}
