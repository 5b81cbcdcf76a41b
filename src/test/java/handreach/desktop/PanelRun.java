package handreach.desktop;

import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TitledPane;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/**
 * The panels of the window with their own session, worker and live losses, on no screen: what they write of a plan is read off
 * their labels. Waits for answers, never for a time.
 */
public final class PanelRun implements AutoCloseable {
    private static final long PATIENCE_S = 60;

    private final Session session;
    private final ReachPanel reach;
    private final RelayPanel relay;
    private final WalkPanel walk;
    private final PathPane path;
    private final LiveReach live;

    private PanelRun() {
        session = new Session(new Worker(defect -> {
            throw new AssertionError(defect);
        }));
        live = new LiveReach(session);
        live.groundIsShown();
        reach = new ReachPanel(session, live);
        relay = new RelayPanel(session, at -> {});
        walk = new WalkPanel(session, at -> {});
        path = new PathPane(session);
    }

    /** The panels with a plan open and its reach answered; {@code settings} is a folder for what the window remembers. */
    public static PanelRun on(Path plan, Path settings) throws TimeoutException {
        System.setProperty("handreach.settings", settings.toString());
        FxToolkit.registerPrimaryStage();
        PanelRun run = onScreen(PanelRun::new);
        onScreen(() -> {
            run.session.open(plan);
            return null;
        });
        run.await(() -> run.reach.found().get() != null && run.session.worker().isIdle());
        return run;
    }

    /** What the reach panel writes while this loadout is looked at. */
    public List<String> reach(String loadout) {
        onScreen(() -> {
            session.carried().set(session.scene().get().loadout(loadout));
            return null;
        });
        await(() -> session.worker().isIdle());
        return onScreen(() -> {
            List<String> words = words(reach);
            words.add(reach.advice().getValue());
            words.add(reach.answer().getValue());
            return words;
        });
    }

    /** What the key of the map writes below its colours while the odds of this loadout are shown. */
    public String key(String loadout) {
        await(() -> live.losses().get() != null && !live.losses().get().isCoarse());
        return onScreen(() -> {
            Loadout carried = session.scene().get().loadout(loadout);
            return new LayerPainter(session.scene().get(), live.losses().get(), Palette.DAY)
                    .paint(Layer.ODDS, carried, carried)
                    .orElseThrow()
                    .key()
                    .note();
        });
    }

    /** What is written below the map while the mouse points at a position of the plan. */
    public String pointing(String loadout, String name) {
        CursorStatus status = onScreen(() -> {
            session.carried().set(session.scene().get().loadout(loadout));
            CursorStatus made = new CursorStatus(session, live, () -> 10);
            session.cursor().set(Optional.of(end(name).at()));
            return made;
        });
        await(() -> session.worker().isIdle());
        return onScreen(() -> String.join(", ", words(status)));
    }

    /** What the relay panel writes, once its button has been pressed. */
    public List<String> relay() {
        press(relay, "relay-find");
        await(() -> session.relay().get().isPresent() && session.worker().isIdle());
        return onScreen(() -> {
            List<String> words = words(relay);
            words.add(relay.answer().getValue());
            return words;
        });
    }

    /** What the walk panel writes, once its button has been pressed. */
    public List<String> walk() {
        press(walk, "walk-compare");
        await(() -> session.walked().get().isPresent() && session.worker().isIdle());
        return onScreen(() -> {
            List<String> words = words(walk);
            words.add(walk.answer().getValue());
            return words;
        });
    }

    /** What the path pane writes of the path between two positions of the plan. */
    public List<String> path(String from, String to) {
        onScreen(() -> {
            session.pulled().set(Optional.of(new PulledPath(end(from), end(to), true)));
            return null;
        });
        await(() -> session.worker().isIdle());
        return onScreen(() -> words(path));
    }

    private PulledPath.End end(String name) {
        Optional<Places.PositionEntry> entry = session.scene().get().plan().places().positions().stream()
                .filter(each -> each.name().equals(name))
                .findFirst();
        Position at = entry.orElseThrow().at();
        return PulledPath.End.of(at, entry);
    }

    private static void press(Parent panel, String id) {
        onScreen(() -> {
            buttons(panel).stream()
                    .filter(button -> id.equals(button.getId()))
                    .findFirst()
                    .orElseThrow()
                    .fire();
            return null;
        });
    }

    private static List<Button> buttons(Parent parent) {
        List<Button> found = new ArrayList<>();
        for (Node child : parent.getChildrenUnmodifiable()) {
            if (child instanceof Button button) found.add(button);
            else if (child instanceof Parent inner) found.addAll(buttons(inner));
        }
        return found;
    }

    private static List<String> words(Node node) {
        List<String> words = new ArrayList<>();
        gather(node, words);
        return words;
    }

    private static void gather(Node node, List<String> words) {
        if (node instanceof TitledPane pane) gather(pane.getContent(), words);
        else if (node instanceof ScrollPane pane) gather(pane.getContent(), words);
        else if (node instanceof Labeled label)
            words.add(label.getText().replaceAll("\\s+", " ").strip());
        else if (node instanceof Parent parent) parent.getChildrenUnmodifiable().forEach(child -> gather(child, words));
    }

    private static <T> T onScreen(Callable<T> step) {
        return WaitForAsyncUtils.waitForAsyncFx(1000 * PATIENCE_S, step);
    }

    private void await(Callable<Boolean> condition) {
        try {
            WaitForAsyncUtils.waitFor(
                    PATIENCE_S, TimeUnit.SECONDS, () -> WaitForAsyncUtils.waitForAsyncFx(1000 * PATIENCE_S, condition));
        } catch (TimeoutException e) {
            throw new AssertionError(
                    "nothing came within " + PATIENCE_S + " s: "
                            + onScreen(() ->
                                    session.notices().stream().map(Notice::text).toList()),
                    e);
        }
    }

    @Override
    public void close() {
        onScreen(() -> {
            session.worker().close();
            return null;
        });
    }
}
