package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.embed.swing.SwingFXUtils;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.TextArea;
import javafx.scene.image.Image;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.paint.Color;
import javafx.stage.FileChooser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** Small things that strangers stumbled over in the window, several in one opening of it. */
@Isolated
class SmallFindingsDeskTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private boolean isSeen(String id) {
        return run.onScreen(() -> {
            Node node = run.node(id);
            return node != null && node.isVisible();
        });
    }

    private Bounds bounds(String query) {
        return run.onScreen(() -> {
            Node node = run.node(query);
            return node.localToScreen(node.getLayoutBounds());
        });
    }

    private List<String> words(String query) {
        return run.onScreen(() -> {
            List<String> words = new ArrayList<>();
            gather(run.node(query), words);
            return words;
        });
    }

    private static void gather(Node node, List<String> words) {
        if (node instanceof Labeled label) words.add(label.getText());
        else if (node instanceof Parent parent) parent.getChildrenUnmodifiable().forEach(child -> gather(child, words));
    }

    /** How many pixels of the map's ink between two heights have the accent colour. */
    private long accents(double fromY, double toY) {
        return run.onScreen(() -> {
            Image picture = run.window().map().snapshot(null, null);
            Color accent = run.session().palette().get().accent();
            var pixels = SwingFXUtils.fromFXImage(picture, null);
            int wanted = 0xFF000000
                    | (int) Math.round(255 * accent.getRed()) << 16
                    | (int) Math.round(255 * accent.getGreen()) << 8
                    | (int) Math.round(255 * accent.getBlue());
            long found = 0;
            for (int y = (int) fromY; y < toY; y++)
                for (int x = 0; x < pixels.getWidth(); x++) if (pixels.getRGB(x, y) == wanted) found++;
            return found;
        });
    }

    @Test
    void theMapSaysWhatItWasReckonedForPointsOutsideAndShowsWhereTheKeysGo() {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        assertTrue(
                words("#map-key").contains("crew direct, 155.16 MHz, 5 W"),
                words("#map-key").toString());
        // The key goes where the hand draws it.
        Bounds before = bounds("#map-key");
        run.robot().drag(".key-title").moveBy(-60, -50).drop();
        run.settle();
        assertEquals(before.getMinX() - 60, bounds("#map-key").getMinX(), 12);
        assertEquals(before.getMinY() - 50, bounds("#map-key").getMinY(), 12);
        // A position far off is pointed to from the edge, below the bar.
        Position home = run.position("spike camp");
        run.onScreen(() -> new PlaceVerbs(run.session()).move("north spur", GeodesicLine.destination(home, 0, 500)));
        run.settle();
        run.press("#whole-area");
        long pointers = accents(70, 110);
        run.onScreen(() -> new PlaceVerbs(run.session()).move("north spur", GeodesicLine.destination(home, 0, 40_000)));
        run.settle();
        run.snapshot("pointer-outside");
        assertTrue(accents(70, 110) > pointers + 20, "no pointer: " + accents(70, 110) + " after " + pointers);
        // The map shows that it has the keys.
        run.onScreen(() -> run.node("#step-1").requestFocus());
        run.settle();
        long free = accents(0, 2);
        while (run.onScreen(() -> run.stage().getScene().getFocusOwner())
                != run.window().map()) run.robot().push(KeyCode.TAB);
        run.settle();
        assertTrue(accents(0, 2) > free + 500, "no ring: " + accents(0, 2));
        // Heights are written on lines and on tops.
        Relief relief = run.onScreen(() -> run.window().map().painted().get());
        assertFalse(relief.heights().isEmpty());
        assertFalse(relief.spots().isEmpty());
        // Odds are said to be odds once.
        run.onScreen(() -> run.window().way().open(2));
        run.settle();
        String all = String.join(" ", words("#step-3")) + String.join(" ", words(".way"));
        assertEquals(1, all.split("odds, not a promise", -1).length - 1, all);
    }

    @Test
    void escapePutsTheDrawerAwayTheTextCanBeLeftAndTheMenuEnds() {
        run = WindowRun.preparedOnLittleGround(folder, "forest-hills");
        for (Runnable opener : List.<Runnable>of(
                () -> run.window().showHelp(HelpPane.Topic.KEYS),
                () -> run.window().showPath())) {
            run.onScreen(opener);
            run.settle();
            assertTrue(isSeen("#drawer"));
            run.robot().push(KeyCode.ESCAPE);
            run.settle();
            assertFalse(isSeen("#drawer"));
        }
        run.onScreen(() -> run.window().showHelp(HelpPane.Topic.KEYS));
        run.settle();
        run.robot().clickOn("#drawer-away");
        run.settle();
        assertEquals(
                run.window().map(), run.onScreen(() -> run.stage().getScene().getFocusOwner()));
        // Bold enough to type in the night: other colours leave the field that is typed in alone.
        run.onScreen(() -> run.window().showPlanText());
        run.settle();
        TextArea text = run.robot().lookup("#plan-text").query();
        run.robot().clickOn("#plan-text").push(KeyCode.SHORTCUT, KeyCode.D).push(KeyCode.SHORTCUT, KeyCode.EQUALS);
        run.settle();
        assertTrue(run.onScreen(text::isFocused));
        assertTrue(run.onScreen(() -> run.node("#relay-find") != null), "a folded question has not come back");
        // Without a hand in it the drawer comes back too.
        run.onScreen(() -> run.window().map().requestFocus());
        run.robot().push(KeyCode.SHORTCUT, KeyCode.D);
        run.settle();
        assertTrue(isSeen("#plan-text"));
        assertTrue(run.onScreen(() -> text.getScene() != null));
        Optional<MenuItem> leave = run.onScreen(() -> ((MenuBar) run.node(".menu-bar"))
                .getMenus().get(0).getItems().stream()
                        .filter(item -> "Leave Handreach".equals(item.getText()))
                        .findFirst());
        assertEquals(KeyCombination.valueOf("Shortcut+Q"), leave.orElseThrow().getAccelerator());
        FileChooser chooser = run.onScreen(() -> run.window().verbs().plans("x"));
        assertEquals(run.plan().getParent().toFile(), chooser.getInitialDirectory());
        run.onScreen(() -> leave.get().fire());
        run.await(() -> !run.stage().isShowing());
    }

    @Test
    void inTheSmallestWindowTheFirstStepsHideNeitherNoticesNorTheSquare() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        run.onScreen(() -> {
            run.stage().setWidth(900);
            run.stage().setHeight(600);
        });
        run.settle();
        run.onScreen(() -> {
            run.window().showFirstSteps();
            run.session().tell(Notice.remark("A remark that stands there while the steps are shown."));
        });
        run.settle();
        run.snapshot("small-first-steps");
        Point2D square = run.pixel(run.position("spike camp"));
        assertFalse(bounds("#first-steps").contains(square), square + " under " + bounds("#first-steps"));
        assertFalse(bounds("#first-steps").intersects(bounds(".notice")));
        // Where nothing was typed, no list says "up to" twice.
        run.onScreen(() -> run.window().way().open(3));
        ComboBox<String> count = run.robot().lookup("#relay-count").query();
        Set<String> words = run.onScreen(() -> count.getItems().stream()
                .map(item -> count.getConverter().toString(item).toLowerCase(Locale.ROOT))
                .collect(Collectors.toSet()));
        assertTrue(words.stream().noneMatch(word -> word.contains("up to")), words.toString());
        aLogFullOfFaultsLeavesTheMapInSight();
    }

    /** A walk of another plan: none of its loadouts is in this one. */
    private void aLogFullOfFaultsLeavesTheMapInSight() throws IOException {
        Path log = run.plan().resolveSibling("walk-reports.csv");
        Files.writeString(log, Files.readString(log).replaceAll("(?m)at (face|hip)", "at $1 of others"));
        run.onScreen(() -> {
            run.session().notices().clear();
            run.window().way().open(4);
        });
        run.press("#walk-compare");
        run.snapshot("small-many-faults");
        String told = run.noticeTexts().get(0);
        assertTrue(told.matches("(walk-reports.csv line \\d+: .*\n){2}There are more; mend these first\\."), told);
        Bounds map = run.onScreen(() -> {
            Node view = run.window().map();
            return view.localToScreen(view.getLayoutBounds());
        });
        assertTrue(map.contains(bounds(".notice")), bounds(".notice") + " in " + map);
    }
}
