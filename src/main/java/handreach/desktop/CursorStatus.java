package handreach.desktop;

import handreach.geodesy.Compass;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.reach.OddsGrid;
import handreach.study.Scene;
import handreach.terrain.GroundHeight;
import handreach.uncertainty.Interval;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.DoubleSupplier;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;

/** What is under the cursor: place, height, way from the stand, odds and margin with the loadout looked at. */
final class CursorStatus extends HBox {
    private final Session session;
    private final LiveReach live;
    private final DoubleSupplier metresPerPx;
    private final Worker.LatestOnly reading;
    private final Label place = new Label();
    private final Label ground = new Label();
    private final Label copy = new Label();

    private record Found(GroundHeight ground, String copy) {}

    /** {@code metresPerPx} tells how near to a position is on it. */
    CursorStatus(Session session, LiveReach live, DoubleSupplier metresPerPx) {
        this.session = session;
        this.live = live;
        this.metresPerPx = metresPerPx;
        this.reading = session.worker().latestOnly();
        getStyleClass().add("read-out");
        setSpacing(22);
        place.getStyleClass().add("strong");
        place.setId("read-out-place");
        copy.setId("read-out-copy");
        getChildren().addAll(place, ground, copy);
        session.cursor().addListener((cursor, before, now) -> show(now));
        session.scene()
                .addListener((scene, before, now) -> show(session.cursor().get()));
        // The mouse may rest while the ground below it gets other odds.
        live.losses().addListener((losses, before, now) -> show(session.cursor().get()));
        session.carried()
                .addListener((which, before, now) -> show(session.cursor().get()));
        show(Optional.empty());
    }

    private void show(Optional<Position> cursor) {
        Scene scene = session.scene().get();
        if (cursor.isEmpty() || scene == null) {
            reading.drop();
            place.setText(scene == null ? "No plan is open." : "Point at the map to read the ground.");
            ground.setText("");
            copy.setText("");
            return;
        }
        Position at = cursor.get();
        String where = scene.plan().header().placeForm().format(at);
        place.setText(pointedAt(scene, at).map(name -> name + "  " + where).orElse(where));
        LiveReach.Losses losses = live.losses().get();
        Loadout carried = session.carried().get();
        reading.ask(
                progress -> new Found(scene.tiles().at(at), copyWords(scene, losses, carried, at)),
                found -> {
                    ground.setText(groundWords(scene, at, found.ground()));
                    copy.setText(found.copy());
                },
                session::tell);
    }

    /** The position whose mark is pointed at: where marks stand close together not every name has room on the map. */
    private Optional<String> pointedAt(Scene scene, Position at) {
        double nearM = MapGestures.GRASP_PX * metresPerPx.getAsDouble();
        return scene.plan().places().positions().stream()
                .filter(entry -> GeodesicLine.distanceM(entry.at(), at) <= nearM)
                .min(Comparator.comparingDouble(entry -> GeodesicLine.distanceM(entry.at(), at)))
                .map(Places.PositionEntry::name);
    }

    private String groundWords(Scene scene, Position at, GroundHeight found) {
        Lengths style = scene.plan().header().lengths();
        String height = found.isVoid()
                ? "height unknown"
                : style.heightText(found.heightM().getAsDouble());
        GeodesicLine way = GeodesicLine.between(session.stand(), at);
        if (way.lengthM() < 1) return height;
        return height + ", " + style.text(way.lengthM()) + " to the " + Compass.word(way.azimuthDeg());
    }

    private static String copyWords(Scene scene, LiveReach.Losses losses, Loadout carried, Position at) {
        if (losses == null || carried == null) return "";
        Optional<OddsGrid> odds = losses.odds(scene.link(carried));
        if (odds.isEmpty()) return "";
        int cell = odds.get().grid().indexOf(at);
        if (cell < 0 || !odds.get().isKnown(cell)) return "nothing known here";
        Interval interval = odds.get().oddsInterval(cell);
        return "odds " + Shares.odds(odds.get().odds(cell), interval.low(), interval.high()) + ", margin "
                + Decibels.signed(odds.get().marginDb(cell), 1) + " dB with "
                + odds.get().link().name();
    }
}
