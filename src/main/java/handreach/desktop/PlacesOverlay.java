package handreach.desktop;

import handreach.cartography.LoadoutMark;
import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.study.Scene;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.paint.Color;

/** Positions of the plan: a square for the base, a disc for the others, a ring round the one the reach starts from. */
final class PlacesOverlay implements MapOverlay {
    private static final double RADIUS_PX = 7;

    private final Session session;

    PlacesOverlay(Session session) {
        this.session = session;
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        Scene scene = session.scene().get();
        if (scene == null) return;
        Position stand = session.stand();
        List<Places.PositionEntry> standing = new ArrayList<>();
        for (Places.PositionEntry entry : scene.plan().places().positions()) {
            Position at = session.moving()
                    .get()
                    .filter(held -> held.name().equals(entry.name()))
                    .map(Session.Moving::to)
                    .orElse(entry.at());
            if (at.equals(stand)) standing.add(entry);
            else draw(pen, scene, entry, at, false);
        }
        // Drawn last, it chooses first where its name stands.
        standing.forEach(entry -> draw(pen, scene, entry, stand, true));
        if (standing.isEmpty()) {
            pen.ring(pen.palette().accent(), pen.x(stand), pen.y(stand), RADIUS_PX + 5, 2.5);
            pen.name("middle of the area", pen.x(stand), pen.y(stand), RADIUS_PX + 5, false);
        }
    }

    private static void draw(MapPen pen, Scene scene, Places.PositionEntry entry, Position at, boolean isStand) {
        double x = pen.x(at);
        double y = pen.y(at);
        Color fill = isStand ? pen.palette().accent() : pen.palette().halo();
        if (isStand) {
            pen.ring(pen.palette().halo(), x, y, RADIUS_PX + 6, 5);
            pen.ring(pen.palette().accent(), x, y, RADIUS_PX + 6, 2.2);
        }
        double r = RADIUS_PX - 1;
        if (entry.base()) pen.shape(fill, x - r, y - r, x + r, y - r, x + r, y + r, x - r, y + r);
        else pen.disc(fill, x, y, RADIUS_PX - 0.5);
        String letter = entry.loadout()
                .map(name -> "  " + LoadoutMark.of(index(scene, name)).letter())
                .orElse("");
        pen.name(entry.name() + letter, x, y, isStand ? RADIUS_PX + 6 : RADIUS_PX, true);
    }

    private static int index(Scene scene, String loadout) {
        return scene.loadouts().indexOf(scene.loadout(loadout));
    }
}
