package handreach.desktop;

import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import handreach.reach.AreaGround;
import handreach.reach.AreaRequest;
import handreach.reach.CellGrid;
import handreach.reach.DrawnArea;
import handreach.reach.LossGrid;
import handreach.reach.OddsGrid;
import handreach.reach.Progress;
import handreach.reach.ReachLink;
import handreach.reach.SweepArea;
import handreach.study.Scene;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * Losses round the stand, kept as long as they hold, so that another loadout, carry or target is only another way to look at
 * them. A question is answered twice: in large cells at once, then in the plan's cells; once all rests, the losses of a report take over: one path per cell, or the march where
 * the program chose it.
 */
final class LiveReach {
    /** Cells from the middle to the rim of the first, coarse picture. */
    private static final int COARSE_CELLS = 55;
    /** Most cells from the middle to the rim of the full picture; a finer map is for the report. */
    private static final int FINE_CELLS = 350;
    /** Model in place of the full-wave march, which is far too slow to follow a hand. */
    private static final LossModel LIVE_MODEL = LossModels.HANDHELD;

    /** Longest wait of the first full picture for the ground to be shown, which would be painted the later for it. */
    private static final long GROUND_MS = 2000;

    private final Session session;
    private final Worker.LatestOnly newest;
    private final ReadOnlyObjectWrapper<Losses> losses = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyBooleanWrapper isUnderway = new ReadOnlyBooleanWrapper();
    private final CountDownLatch ground = new CountDownLatch(1);
    private Setting asked;

    /** Everything the losses depend on. */
    private record Setting(
            Position stand,
            Extent extent,
            PathConditions conditions,
            LossModel model,
            List<Terminals> heights,
            AreaGround ground) {
        private record Extent(double radiusM, double cellM, Optional<DrawnArea> drawn) {}

        static Setting of(Scene scene, Position stand) {
            double radiusM = 1000 * scene.plan().places().area().radiusKm();
            double cellM = Math.max(scene.plan().questions().reach().cellM(), radiusM / FINE_CELLS);
            LossModel named = scene.model();
            List<Terminals> heights = scene.loadouts().stream()
                    .map(loadout -> Scene.terminals(scene.middleLoadout(loadout), loadout))
                    .distinct()
                    .toList();
            return new Setting(
                    stand,
                    new Extent(radiusM, cellM, scene.drawn()),
                    scene.conditions(stand),
                    named.equals(LossModels.FULL_WAVE) ? LIVE_MODEL : named,
                    heights,
                    scene.ground());
        }

        AreaRequest request(double cellM) {
            return new AreaRequest(
                    stand,
                    CellGrid.around(stand, extent.radiusM, cellM),
                    extent.radiusM,
                    heights.get(0),
                    conditions,
                    model);
        }
    }

    /**
     * Losses round a stand.
     *
     * @param stand the position in the middle
     * @param grids one a pair of antenna heights
     * @param isCoarse whether a finer picture follows
     * @param model the model they were computed with
     */
    record Losses(Position stand, List<LossGrid> grids, boolean isCoarse, LossModel model) {
        /** Odds with one link; empty where its antenna heights have changed since. */
        Optional<OddsGrid> odds(ReachLink link) {
            return grids.stream()
                    .filter(grid -> grid.request().terminals().equals(link.terminals()))
                    .findFirst()
                    .map(grid -> OddsGrid.of(grid, link));
        }
    }

    LiveReach(Session session) {
        this.session = session;
        this.newest = session.worker().latestOnly();
        session.scene().addListener((scene, before, now) -> standAt(session.stand()));
        session.moving().addListener((moving, before, now) -> {
            if (session.scene().get() != null) standAt(session.stand());
        });
    }

    /** The newest losses; null before the first. */
    ReadOnlyObjectProperty<Losses> losses() {
        return losses.getReadOnlyProperty();
    }

    /** Whether the full picture is still on its way. */
    ReadOnlyBooleanProperty isUnderway() {
        return isUnderway.getReadOnlyProperty();
    }

    /** Asks for the losses round a stand, unless they are there or on their way. */
    void standAt(Position stand) {
        Setting wanted = Setting.of(session.scene().get(), stand);
        Optional<String> refused = CellGrid.refusal(
                stand, wanted.extent().radiusM(), wanted.extent().cellM());
        if (refused.isPresent()) {
            session.tell(new Notice(true, "The picture cannot be drawn: " + refused.get() + "."));
            return;
        }
        if (wanted.equals(asked)) return;
        asked = wanted;
        isUnderway.set(true);
        List<Terminals> first = firstHeights();
        newest.ask(
                progress -> computed(wanted, first, progress),
                full -> {
                    losses.set(full);
                    isUnderway.set(false);
                },
                wrong -> {
                    asked = null;
                    isUnderway.set(false);
                    session.tell(wrong);
                });
    }

    /** Antenna heights that the layer on the map needs at once; all others come with the full picture. */
    private List<Terminals> firstHeights() {
        Scene scene = session.scene().get();
        Loadout carried = Optional.ofNullable(session.carried().get()).orElseGet(scene::controlLoadout);
        Stream<Loadout> looked = switch (session.layer().get()) {
            case LEAST -> scene.loadouts().stream();
            case DIFFERENCE -> Stream.of(carried, session.compared().get());
            default -> Stream.of(carried);
        };
        return looked.filter(Objects::nonNull)
                .map(loadout -> Scene.terminals(scene.middleLoadout(loadout), loadout))
                .distinct()
                .toList();
    }

    private Losses computed(Setting wanted, List<Terminals> first, Progress progress) {
        double coarseM = Math.max(wanted.extent().cellM(), wanted.extent().radiusM() / COARSE_CELLS);
        if (coarseM > 1.5 * wanted.extent().cellM() && !first.isEmpty())
            newest.partial(progress, computed(wanted, coarseM, first, progress), losses::set);
        awaitGround();
        return computed(wanted, wanted.extent().cellM(), wanted.heights(), progress);
    }

    /** Whether the map is there in the plan's own cells, so that a report's may take its place: by the same model, or by a march that is over soon. */
    boolean followsTo(Scene scene) {
        Losses now = losses.get();
        return scene != null
                && now != null
                && !isUnderway.get()
                && !now.isCoarse()
                && now.stand().equals(scene.middle())
                && (now.model().equals(scene.model()) || scene.isShortMarch())
                && asked != null
                && asked.extent().cellM() == scene.plan().questions().reach().cellM();
    }

    /** Shows the losses that a report would have, one path per cell or the march where that takes seconds, in place of the sweep. */
    void takeOver(Scene scene, List<LossGrid> grids) {
        if (session.scene().get() != scene
                || !followsTo(scene)
                || !Setting.of(scene, session.stand()).equals(asked)) return;
        losses.set(new Losses(asked.stand(), grids, false, scene.model()));
    }

    /** The full picture may be computed from now on: the ground it lies on is on the screen, or will not come. */
    void groundIsShown() {
        ground.countDown();
    }

    private void awaitGround() {
        try {
            if (!ground.await(GROUND_MS, TimeUnit.MILLISECONDS)) ground.countDown();
        } catch (InterruptedException closing) {
            Thread.currentThread().interrupt();
        }
    }

    private static Losses computed(Setting wanted, double cellM, List<Terminals> heights, Progress progress) {
        boolean isCoarse = cellM > wanted.extent().cellM();
        // The coarse picture takes all cores for a moment; the full one leaves one to the screen.
        List<LossGrid> grids = new SweepArea(isCoarse ? Scene.threads() : Math.max(1, Scene.threads() - 1))
                .withoutMeasuring().losses(wanted.request(cellM), heights, wanted.ground(), progress).stream()
                        .map(all -> wanted.extent().drawn().map(all::within).orElse(all))
                        .toList();
        return new Losses(wanted.stand(), grids, isCoarse, wanted.model());
    }
}
