package handreach.desktop;

import handreach.loadout.Loadout;
import handreach.study.RelayAnswer;
import handreach.study.Scene;
import handreach.study.WalkAnswer;
import java.util.List;
import java.util.Optional;

/** Keeps the layer that is looked at on the map, and its key beside it. */
final class LayerView {
    private final Session session;
    private final LiveReach live;
    private final MapView map;
    private final KeyPane key;
    private final Worker.LatestOnly painting;

    LayerView(Session session, LiveReach live, MapView map, KeyPane key) {
        this.session = session;
        this.live = live;
        this.map = map;
        this.key = key;
        this.painting = session.worker().latestOnly();
        session.scene().addListener((scene, before, now) -> paint());
        session.carried().addListener((which, before, now) -> paint());
        session.compared().addListener((which, before, now) -> paint());
        session.layer().addListener((which, before, now) -> paint());
        session.relay().addListener((answer, before, now) -> paint());
        session.atlas().addListener((atlas, before, now) -> paint());
        session.walked().addListener((answer, before, now) -> paint());
        session.palette().addListener((palette, before, now) -> paint());
        live.losses().addListener((losses, before, now) -> paint());
    }

    private void paint() {
        Scene scene = session.scene().get();
        if (scene == null) return;
        switch (session.layer().get()) {
            case RELAY -> paintRelay();
            case WALK -> paintWalk();
            case ATLAS_MEDIAN, ATLAS_LEAST, ATLAS_HEARD, ATLAS_SHADOW -> paintAtlas(scene);
            default -> paintReach(scene);
        }
    }

    private void paintReach(Scene scene) {
        LiveReach.Losses losses = live.losses().get();
        Loadout carried = session.carried().get();
        Loadout compared = session.compared().get();
        Layer layer = session.layer().get();
        Palette palette = session.palette().get();
        if (losses == null || carried == null || compared == null) return;
        painting.ask(
                progress -> new LayerPainter(scene, losses, palette).paint(layer, carried, compared),
                overlay -> {
                    // A coarse picture may lack a loadout chosen since; the one before stays until the full one comes.
                    if (overlay.isPresent() || !losses.isCoarse()) show(overlay, overlay.map(LayerRaster::key));
                },
                session::tell);
    }

    private void paintRelay() {
        Optional<RelayAnswer> answer = session.relay().get();
        if (answer.isEmpty()) {
            painting.drop();
            show(Optional.empty(), Optional.of(unasked("Where a relay would serve", "Is a relay needed?")));
            return;
        }
        RelayPainter painter = new RelayPainter(
                answer.get(),
                !session.fits(answer.get().scene()),
                session.palette().get());
        painting.ask(
                progress -> painter.paint(),
                overlay ->
                        show(overlay, Optional.of(overlay.map(LayerRaster::key).orElseGet(painter::key))),
                session::tell);
    }

    private void paintAtlas(Scene scene) {
        Loadout carried = session.carried().get();
        Layer layer = session.layer().get();
        if (carried == null) return;
        if (session.atlas().get().isEmpty()) {
            painting.drop();
            String how = "No atlas lies over the map. The menu Window lays one there.";
            show(Optional.empty(), Optional.of(new LayerRaster.Key(layer.words(), List.of(), how)));
            return;
        }
        AtlasPainter painter = new AtlasPainter(
                session.atlas().get().get(),
                session.palette().get(),
                scene.plan().header().lengths());
        painting.ask(
                progress -> painter.paint(layer, carried.name()),
                overlay -> show(Optional.of(overlay), Optional.of(overlay.key())),
                session::tell);
    }

    private void paintWalk() {
        painting.drop();
        Optional<WalkAnswer> answer = session.walked().get();
        show(
                Optional.empty(),
                Optional.of(answer.map(WalkOverlay::key)
                        .orElseGet(() -> unasked("Walked: heard against predicted", "Was it right?"))));
    }

    private static LayerRaster.Key unasked(String title, String question) {
        return new LayerRaster.Key(title, List.of(), "Nothing is known yet: answer \"" + question + "\" first.");
    }

    private void show(Optional<LayerRaster> overlay, Optional<LayerRaster.Key> words) {
        map.showOverlay(overlay);
        key.show(words);
    }
}
