package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.terrain.NamedPoints.NamedPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.locationtech.jts.geom.Envelope;

/** Names of places out of the user's own file: a small dot and the name. In a crowd those that come first in the file stand. */
final class NamesOverlay implements MapOverlay {
    private static final double DOT_PX = 2.5;
    private static final int MOST = 80;

    private final Supplier<Optional<Backdrop.Laid<List<NamedPoint>>>> laid;

    NamesOverlay(Supplier<Optional<Backdrop.Laid<List<NamedPoint>>>> laid) {
        this.laid = laid;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (laid.get().isEmpty()) return;
        List<Envelope> taken = new ArrayList<>();
        for (NamedPoint point : laid.get().get().what()) {
            if (taken.size() >= MOST) return;
            if (!frame.contains(point.at())) continue;
            double x = pen.x(point.at());
            double y = pen.y(point.at());
            double high = pen.linePx();
            Envelope room = new Envelope(x - high, x + high + pen.px(point.name(), false), y - high, y + high);
            if (taken.stream().anyMatch(room::intersects)) continue;
            taken.add(room);
            pen.disc(pen.palette().ink(), x, y, DOT_PX);
            pen.name(point.name(), x, y, DOT_PX, false);
        }
    }
}
