package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.MapFrame;
import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.plan.PlanText;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonType;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.DialogPane;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** What strangers stumbled over in the window, each put to the real one. */
@Isolated
class FindingsDeskTest {
    private static final Pattern SHARE = Pattern.compile("(\\d+) % of the ground");

    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private <N> N find(String id) {
        return run.robot().lookup(id).<Node>queryAll().stream()
                .map(node -> {
                    @SuppressWarnings("unchecked")
                    N found = (N) node;
                    return found;
                })
                .findFirst()
                .orElseThrow();
    }

    private Bounds bounds(String id) {
        return run.onScreen(() -> {
            Node node = run.stage().getScene().lookup(id);
            return node.localToScene(node.getLayoutBounds());
        });
    }

    private void pull(String from, String to) {
        run.onScreen(() -> run.session().pulled().set(Optional.of(new PulledPath(end(from), end(to), true))));
        run.await(() -> run.stage().getScene().lookup("#path-gap-1") != null);
        run.settle();
    }

    private PulledPath.End end(String name) {
        Places.PositionEntry entry = run.session().scene().get().plan().places().positions().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
        return PulledPath.End.of(entry.at(), Optional.of(entry));
    }

    /** S13: the answer of a path comes first, whatever was read of the one before, and both ends stay in sight. */
    @Test
    void aPathBeginsWithItsAnswerAndKeepsBothEndsInSight() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        pull("spike camp", "creek crew");
        Label title = find("#path-line-title");
        run.onScreen(() -> {
            run.<ScrollPane>node("#path-scroll").setVvalue(1);
            run.node("#ledger-line-1").requestFocus();
        });
        run.settle();
        assertFalse(title.getText().equals("Nothing pointed at"), title.getText());
        run.press("#drawer-away");
        pull("spike camp", "north spur");
        Bounds scroll = bounds("#path-scroll");
        Bounds verdict = bounds("#path-verdict");
        assertTrue(scroll.contains(verdict.getMinX() + 5, verdict.getMinY() + 2), verdict + " in " + scroll);
        assertEquals("Nothing pointed at", title.getText());
        run.press("#drawer-taller");
        run.settle();
        run.await(() -> isInSight("spike camp") && isInSight("north spur"));
        double before = bounds("#drawer").getHeight();
        run.robot().drag(".drawer-head").moveBy(0, 60).drop();
        run.settle();
        assertEquals(before - 60, bounds("#drawer").getHeight(), 30);
    }

    private boolean isInSight(String name) {
        MapFrame frame = run.window().map().frame().get();
        return frame.contains(run.session().scene().get().position(name).at());
    }

    /** S15, and figures of the plan before under the title of the next. */
    @Test
    void keyAndTableSayTheSameShareAndAnotherPlanBeginsWithoutFigures() throws IOException {
        run = WindowRun.on(folder, "forest-hills");
        run.onScreen(() -> run.window().way().open(2));
        run.await(() -> share("#step-3").isPresent());
        run.settle();
        assertEquals(share("#map-key"), share("#step-3"));
        // The read-out follows what lies under it.
        Position ground = run.position("north spur");
        run.onScreen(() -> run.session().cursor().set(Optional.of(ground)));
        run.settle();
        Label copy = find("#read-out-copy");
        String before = copy.getText();
        run.onScreen(() -> run.session()
                .carried()
                .set(run.session().scene().get().loadouts().get(5)));
        run.settle();
        assertFalse(copy.getText().equals(before), before);
        Path other = run.plan().resolveSibling("other.toml");
        Files.writeString(other, Files.readString(run.plan()).replace("two crews", "another crew"));
        List<String> atOnce = new ArrayList<>();
        run.onScreen(() -> {
            run.session().scene().addListener((scene, was, is) -> {
                atOnce.add(((Label) run.node("#step-1").lookup(".step-answer")).getText());
                words(run.node("#reach-lines"), atOnce);
            });
            run.session().open(other);
        });
        run.settle();
        assertEquals(List.of("reckoning\u2026"), atOnce.subList(0, 1));
        assertEquals(1, atOnce.size(), atOnce.toString());
    }

    private Optional<String> share(String id) {
        return run.onScreen(() -> {
            List<String> words = new ArrayList<>();
            words(run.node(id), words);
            Matcher found = SHARE.matcher(String.join(" ", words));
            return found.find() ? Optional.of(found.group(1)) : Optional.empty();
        });
    }

    private static void words(Node node, List<String> words) {
        if (node instanceof Labeled label) words.add(label.getText());
        else if (node instanceof Parent parent) parent.getChildrenUnmodifiable().forEach(child -> words(child, words));
    }

    /** The first answer to the question about unsaved edits saves them, in the colours of the window. */
    @Test
    void theQuestionAboutUnsavedEditsSavesFirstAndANewLoadoutIsLabelledAndLookedAt() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        List<String> answers = run.onScreen(() -> {
            DialogPane pane = WindowVerbs.question(
                            Palette.NIGHT,
                            "x",
                            new ButtonType("Save", ButtonBar.ButtonData.YES),
                            new ButtonType("Lose", ButtonBar.ButtonData.NO),
                            new ButtonType("Stay", ButtonBar.ButtonData.CANCEL_CLOSE))
                    .getDialogPane();
            assertTrue(pane.getStyleClass().contains("night"));
            return ((ButtonBar) pane.lookup(".button-bar"))
                    .getButtons().stream()
                            .map(button -> ((Button) button).getText())
                            .toList();
        });
        assertEquals(List.of("Save", "Lose", "Stay"), answers);
        run.robot().clickOn("Add a loadout");
        run.settle();
        List<String> labels = new ArrayList<>();
        run.onScreen(() -> words(run.node(".form"), labels));
        assertTrue(labels.containsAll(List.of("name", "antenna", "radio", "carried")), labels.toString());
        CheckBox wire = find("#new-loadout-wire");
        assertTrue(wire.isDisabled(), "the factory antenna has no wire");
        run.onScreen(() -> {
            ComboBox<String> antenna = run.node("#new-loadout-antenna");
            antenna.setValue("quarter-wave whip");
            TextField name = run.node("#new-loadout-name");
            name.setText("whip at hip");
        });
        assertFalse(wire.isDisabled());
        run.press("#new-loadout-add");
        assertEquals(
                "whip at hip", run.onScreen(() -> run.session().carried().get().name()));
        // A delta that somebody wrote by hand is told.
        run.onScreen(() -> run.session().edit("delta", text -> {
            String with = PlanText.withEntryValue(text, "antenna", "quarter-wave whip", "delta_db", "3.5");
            with = PlanText.withEntryValue(with, "antenna", "quarter-wave whip", "delta_uncertainty_db", "1");
            return PlanText.withEntryValue(with, "antenna", "quarter-wave whip", "delta_mount", "\"in hand\"");
        }));
        run.settle();
        List<String> rows = new ArrayList<>();
        run.onScreen(() -> words(run.node("#step-1").getParent(), rows));
        assertTrue(
                rows.stream().anyMatch(words -> words.endsWith("+3.5 dB over the control, as the plan declares")),
                rows.toString());
    }

    @Test
    void aRelayThatWasFoundIsPutIntoThePlanAndTheAnswerIsOld() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> run.window().way().open(3));
        run.settle();
        run.press("#relay-find");
        run.await(() -> run.session().relay().get().isPresent());
        run.settle();
        run.press("#relay-put-0");
        Places.StationEntry station = run.onScreen(
                () -> run.session().scene().get().plan().places().stations().get(0));
        assertTrue(station.relay().isPresent());
        assertEquals(6, station.gear().heightM());
        assertTrue(run.node("#relay-stale").isVisible());
        run.press("#relay-put-0");
        assertEquals(
                station.name() + ", 2",
                run.onScreen(() -> run.session()
                        .scene()
                        .get()
                        .plan()
                        .places()
                        .stations()
                        .get(1)
                        .name()));
        assertEquals(List.of(), run.noticeTexts());
    }

    /** S3: by night no figure stays a white square. S10: ground without a height stands in the key. */
    @Test
    void figuresAreDarkByNightAndUnknownGroundStandsInTheKey() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> {
            run.window().map().palette().set(Palette.NIGHT);
            run.window().way().open(2);
            run.session().edit("radius", text -> PlanText.withValue(text, "area", "radius_km", "12"));
        });
        run.settle();
        run.await(() -> run.live() != null && !run.live().isCoarse());
        run.await(() -> run.node(".figure") != null && run.node(".figure").isVisible());
        run.settle();
        BufferedImage picture = run.onScreen(() ->
                javafx.embed.swing.SwingFXUtils.fromFXImage(run.node(".figure").snapshot(dark(), null), null));
        long bright = 0;
        for (int y = 0; y < picture.getHeight(); y++)
            for (int x = 0; x < picture.getWidth(); x++) if ((picture.getRGB(x, y) >> 8 & 0xFF) > 180) bright++;
        double share = bright / (double) (picture.getWidth() * picture.getHeight());
        assertTrue(share < 0.15, "bright by night: " + share);
        List<String> key = new ArrayList<>();
        run.onScreen(() -> words(run.node("#map-key"), key));
        assertTrue(key.stream().anyMatch(words -> words.startsWith("nothing known")), key.toString());
        run.snapshot("unknown-night");
    }

    private static javafx.scene.SnapshotParameters dark() {
        javafx.scene.SnapshotParameters parameters = new javafx.scene.SnapshotParameters();
        parameters.setFill(javafx.scene.paint.Color.BLACK);
        return parameters;
    }
}
