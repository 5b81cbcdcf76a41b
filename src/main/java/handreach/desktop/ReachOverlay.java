package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.util.List;

/** The rim of the area that is looked at. */
final class ReachOverlay implements MapOverlay {
    private final Session session;

    ReachOverlay(Session session) {
        this.session = session;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (session.scene().get() == null) return;
        double radiusM = 1000 * session.scene().get().plan().places().area().radiusKm();
        Position middle = session.stand();
        double[] xy = new double[2 * 73];
        for (int i = 0; i < 73; i++) {
            Position at = GeodesicLine.destination(middle, 5 * i, radiusM);
            xy[2 * i] = pen.x(at);
            xy[2 * i + 1] = pen.y(at);
        }
        pen.line(pen.palette().ink(), 1.2, true, List.of(7.0, 5.0), xy);
    }
}
