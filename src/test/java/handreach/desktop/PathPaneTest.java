package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.propagation.LossModels;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import handreach.study.Scene;
import handreach.units.Shares;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The path drawer in the real window: pulled by mouse, chosen by key, followed, refused, explained. */
@Isolated
class PathPaneTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private String text(String id) {
        return run.onScreen(() -> run.robot().lookup(id).<Labeled>query().getText());
    }

    private void show(String from, String to) {
        run.onScreen(() -> {
            Scene scene = run.session().scene().get();
            run.session()
                    .pulled()
                    .set(Optional.of(new PulledPath(
                            PulledPath.End.of(scene.position(from).at(), Optional.of(scene.position(from))),
                            PulledPath.End.of(scene.position(to).at(), Optional.of(scene.position(to))),
                            true)));
        });
        run.settle();
    }

    private void choose(String id, String value) {
        run.onScreen(() -> run.robot().lookup(id).<ComboBox<String>>query().setValue(value));
        run.settle();
    }

    private PathAnswer answer(String from, String near, String to, String far) {
        return run.onScreen(() -> {
            Scene scene = run.session().scene().get();
            return PathStudy.between(
                    scene,
                    scene.position(from).at(),
                    scene.loadout(near),
                    scene.position(to).at(),
                    scene.loadout(far),
                    List.of(scene.model()));
        });
    }

    private static String odds(PathAnswer answer) {
        return "odds of copy " + Shares.odds(answer.ledger().orElseThrow().odds());
    }

    @Test
    void aPulledLineOpensTheDrawerWithBothLedgersAndFollowsEveryChoice() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Point2D from = run.pixel(run.position("spike camp"));
        Point2D to = run.pixel(run.position("north spur"));
        run.robot()
                .press(KeyCode.SHIFT)
                .drag(from, MouseButton.PRIMARY)
                .moveTo(from.midpoint(to))
                .moveTo(to);
        run.robot().drop().release(KeyCode.SHIFT);
        run.settle();
        PathAnswer planned = answer("spike camp", "quarter-wave with wire at face", "north spur", "factory at face");
        assertTrue(text("#path-verdict").contains(odds(planned)), text("#path-verdict"));
        run.onScreen(() -> run.robot().lookup("#ledger-line-2").query().requestFocus());
        assertTrue(text("#path-line-title").startsWith("First end: delta over the control"), text("#path-line-title"));
        run.snapshot("path-view");
        choose("#path-to-loadout", "five-eighths at face");
        PathAnswer longer =
                answer("spike camp", "quarter-wave with wire at face", "north spur", "five-eighths at face");
        assertTrue(text("#path-verdict").contains(odds(longer)), text("#path-verdict"));
        assertNotEquals(odds(planned), odds(longer));
        Position moved = new Position(36.31, -84.19);
        run.onScreen(() -> new PlaceVerbs(run.session()).move("north spur", moved));
        run.settle();
        assertEquals(
                moved,
                run.onScreen(
                        () -> run.session().pulled().get().orElseThrow().to().at()));
        assertTrue(text("#path-verdict")
                .contains(odds(
                        answer("spike camp", "quarter-wave with wire at face", "north spur", "five-eighths at face"))));
        choose("#path-to", "creek crew");
        PathAnswer creek = answer("spike camp", "quarter-wave with wire at face", "creek crew", "factory at hip");
        assertTrue(text("#path-verdict").contains(odds(creek)), text("#path-verdict"));
        run.onScreen(() -> run.robot().lookup("#path-compare").<Button>query().fire());
        run.settle();
        assertTrue(text("#path-models-reading").startsWith("They spread over "), text("#path-models-reading"));
        List<String> said = run.onScreen(() -> run.robot().lookup("#path-models .label").<Labeled>queryAll().stream()
                .map(Labeled::getText)
                .toList());
        assertTrue(said.containsAll(LossModels.KEYWORD.words()), said.toString());
        run.robot().clickOn("#drawer-away");
        run.settle();
        assertEquals(Optional.empty(), run.onScreen(() -> run.session().pulled().get()));
    }

    @Test
    void keysAloneChooseEndsAndReadWhatFaultsAreToldInPlaceAndNothingIsCutOffOnASmallScreen() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.P);
        run.settle();
        assertEquals(
                "path-from",
                run.onScreen(() -> run.stage().getScene().getFocusOwner().getId()));
        run.onScreen(() -> run.robot().lookup("#path-profile").query().requestFocus());
        run.robot().push(KeyCode.END);
        PulledPath path = run.onScreen(() -> run.session().pulled().get().orElseThrow());
        assertEquals(0, GeodesicLine.distanceM(path.to().at(), pointed()), 0.01);
        for (int i = 0; i < 6; i++) run.robot().push(KeyCode.LEFT);
        assertTrue(GeodesicLine.distanceM(path.to().at(), pointed()) > 200);
        assertTrue(text("#path-reading").contains("Fresnel radii"), text("#path-reading"));
        run.onScreen(() -> run.robot().lookup("#ledger-line-1").query().requestFocus());
        String first = text("#path-line-title");
        run.robot().push(KeyCode.DOWN);
        assertNotEquals(first, text("#path-line-title"));
        assertTrue(text("#path-line-meaning").contains("Source: "), text("#path-line-meaning"));
        run.robot().push(KeyCode.SHORTCUT, KeyCode.D);
        run.settle();
        run.snapshot("path-view-night");

        show("spike camp", "spike camp");
        assertTrue(isShown("both ends are the same place"));
        pull(run.position("spike camp"), new Position(36.2702, -84.21));
        assertTrue(isShown("the ends are 22 m apart, at least 50 m are needed"));
        run.snapshot("path-fault");
        pull(run.position("spike camp"), new Position(36.27, -80.0));
        assertTrue(isShown("the ground is unknown"));
        assertEquals(List.of(), run.noticeTexts());
        show("spike camp", "north spur");
        assertFalse(isShown("the ground is unknown"));

        run.onScreen(() -> {
            run.stage().setWidth(1100);
            run.stage().setHeight(700);
        });
        run.onScreen(() -> run.robot().lookup("#drawer-taller").<Button>query().fire());
        run.settle();
        run.snapshot("path-view-small");
        assertEquals(List.of(), run.onScreen(() -> cutOff("#path-pane .label")));
        Bounds foot = run.onScreen(() -> {
            Node line = run.robot().lookup("#path-line-meaning").query();
            return line.localToScene(line.getLayoutBounds());
        });
        assertTrue(foot.getMaxY() <= 700, foot.toString());
    }

    private Position pointed() {
        return run.onScreen(() -> run.session().alongPath().get().orElseThrow());
    }

    private void pull(Position from, Position to) {
        run.onScreen(() -> run.session()
                .pulled()
                .set(Optional.of(new PulledPath(
                        PulledPath.End.of(from, Optional.empty()), PulledPath.End.of(to, Optional.empty()), true))));
        run.settle();
    }

    private boolean isShown(String words) {
        return run.onScreen(() -> run.robot().lookup("#path-pane .fault .label").<Labeled>queryAll().stream()
                .anyMatch(label -> label.getText().contains(words) && isVisible(label)));
    }

    private static boolean isVisible(Node node) {
        for (Node each = node; each != null; each = each.getParent()) if (!each.isVisible()) return false;
        return true;
    }

    private List<String> cutOff(String query) {
        return run.robot().lookup(query).<Labeled>queryAll().stream()
                .filter(label -> isVisible(label) && !label.getText().isBlank())
                .filter(label -> {
                    Node text = label.lookup(".text");
                    if (!(text instanceof javafx.scene.text.Text drawn)) return false;
                    Bounds room = label.getLayoutBounds();
                    return !drawn.getText().equals(label.getText())
                            || drawn.getLayoutBounds().getWidth() > room.getWidth() + 1;
                })
                .map(Labeled::getText)
                .toList();
    }
}
