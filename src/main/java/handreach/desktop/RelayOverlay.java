package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.relay.Party;
import handreach.relay.SiteCheck;
import handreach.report.RelaySite;
import handreach.study.RelayAnswer;
import handreach.study.Scene;
import java.util.List;
import java.util.Optional;
import javafx.scene.paint.Color;

/** Sites for relays as triangles, the hops to them as lines whose pattern tells how sure they are. */
final class RelayOverlay implements MapOverlay {
    private final Session session;

    RelayOverlay(Session session) {
        this.session = session;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        Optional<RelayAnswer> answer = session.relay().get();
        if (answer.isEmpty() || session.layer().get() != Layer.RELAY) return;
        answer.get().recommended().ifPresent(check -> hops(pen, answer.get(), check));
        for (Party demand : answer.get().question().demands())
            if (demand.group().isPresent()) pen.disc(pen.palette().halo(), pen.x(demand.at()), pen.y(demand.at()), 3.5);
        List<RelaySite> sites = RelaySite.of(answer.get());
        for (int i = sites.size() - 1; i >= 0; i--) site(pen, sites.get(i));
    }

    private static void hops(MapPen pen, RelayAnswer answer, SiteCheck check) {
        Scene scene = answer.scene();
        double wanted = scene.plan().channel().wish().odds();
        if (answer.equipment().chained())
            for (int i = 1; i < check.sites().size(); i++) {
                Position one = check.sites().get(i - 1);
                Position other = check.sites().get(i);
                chain(pen, pen.x(one), pen.y(one), pen.x(other), pen.y(other));
                pen.keepClear(pen.x(one), pen.y(one), pen.x(other), pen.y(other));
            }
        for (Optional<SiteCheck.Hop> hop : check.hops()) {
            if (hop.isEmpty()) continue;
            Position from = answer.question().demands().get(hop.get().demand()).at();
            Position to = check.sites().get(hop.get().site());
            HopStrength.of(hop.get().path().odds(), wanted).draw(pen, pen.x(from), pen.y(from), pen.x(to), pen.y(to));
            pen.keepClear(pen.x(from), pen.y(from), pen.x(to), pen.y(to));
        }
    }

    /** The way from one relay to the next. */
    static void chain(MapPen pen, double fromX, double fromY, double toX, double toY) {
        pen.line(pen.palette().accent(), 1.6, true, List.of(12.0, 4.0, 2.0, 4.0), fromX, fromY, toX, toY);
    }

    private static void site(MapPen pen, RelaySite site) {
        double x = pen.x(site.at());
        double y = pen.y(site.at());
        Color fill = site.isAdvised() ? pen.palette().accent() : pen.palette().halo();
        double size = site.isAdvised() ? 11 : 8;
        mark(pen, fill, x, y, size);
        pen.name(site.name(), x, y, size, site.isAdvised());
    }

    /** A triangle that stands on its foot. */
    static void mark(MapPen pen, Color fill, double x, double y, double size) {
        pen.shape(fill, x, y - size, x + 0.9 * size, y + 0.7 * size, x - 0.9 * size, y + 0.7 * size);
    }
}
