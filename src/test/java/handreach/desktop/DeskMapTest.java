package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.MapFrame;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.plan.PlanText;
import handreach.units.Lengths;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.Clipboard;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The map as a tool, the answers that come first, and help. */
@Isolated
class DeskMapTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    @Test
    void theWholeAreaLiesInTheFreePartOfTheMapInEverySize() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        wholeIsFree("at the start");
        run.onScreen(() -> {
            run.stage().setWidth(1067);
            run.stage().setHeight(667);
        });
        run.settle();
        wholeIsFree("after the window became smaller");
        run.onScreen(() -> run.window().map().zoom(3, 100, 100));
        run.press("#whole-area");
        run.snapshot("whole-1067");
        wholeIsFree("after the button");
    }

    /** However late the key takes its size: on a slow machine it does after the map was fitted. */
    @Test
    void aKeyThatGrowsDoesNotHideTheWholeAreaUnlessAHandHasMovedTheMap() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.press("#key-fold");
        run.press("#whole-area");
        double large = run.onScreen(() -> run.window().map().metresPerPx());
        run.press("#key-fold");
        wholeIsFree("after the key was unfolded");
        double small = run.onScreen(() -> run.window().map().metresPerPx());
        assertTrue(small > 1.02 * large, small + " after " + large);
        run.press("#key-fold");
        assertEquals(small, run.onScreen(() -> run.window().map().metresPerPx()), "room to spare moves no map");
        run.press("#whole-area");
        run.onScreen(() -> run.window().map().zoom(1.01, 300, 300));
        run.press("#key-fold");
        assertEquals(large / 1.01, run.onScreen(() -> run.window().map().metresPerPx()), 1e-9);
    }

    @Test
    void aKeyThatAHandHasPutOverTheAreaMayGrowThere() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.robot().drag("#map-key .key-title").moveBy(-300, -250).drop();
        run.settle();
        run.press("#key-fold");
        double before = run.onScreen(() -> run.window().map().metresPerPx());
        run.press("#key-fold");
        assertEquals(before, run.onScreen(() -> run.window().map().metresPerPx()));
    }

    private void wholeIsFree(String when) {
        run.onScreen(() -> {
            MapView map = run.window().map();
            MapFrame frame = map.frame().get();
            Places places = run.session().scene().get().plan().places();
            Position middle = places.area().centre();
            for (int azimuth = 0; azimuth < 360; azimuth += 10)
                isFree(
                        frame,
                        GeodesicLine.destination(
                                middle, azimuth, 1000 * places.area().radiusKm()),
                        when + ", rim at " + azimuth);
            places.positions().forEach(entry -> isFree(frame, entry.at(), when + ", " + entry.name()));
        });
    }

    private void isFree(MapFrame frame, Position at, String what) {
        Point2D pixel = new Point2D(frame.xPx(at.longitudeDeg()), frame.yPx(at.latitudeDeg()));
        assertTrue(frame.contains(at), what + " is outside the map");
        for (String id : List.of("#layer-bar", "#map-key")) {
            Node over = run.stage().getScene().lookup(id);
            Bounds box = run.window().map().sceneToLocal(over.localToScene(over.getLayoutBounds()));
            assertFalse(over.isVisible() && box.contains(pixel), what + " lies under " + id);
        }
    }

    @Test
    void aTypedPlaceIsShownOrDoubtedAndCanBeCopied() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Position stand = run.position("spike camp");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.G);
        run.settle();
        String text = run.onScreen(
                () -> run.session().scene().get().plan().header().placeForm().format(run.position("creek crew")));
        type("creek crew");
        assertEquals("", doubt());
        run.press("#go-to-copy");
        assertEquals(text, run.onScreen(() -> Clipboard.getSystemClipboard().getString()));
        type("somewhere");
        assertTrue(doubt().contains("is not a place"), doubt());
        type(String.format(java.util.Locale.ROOT, "%.5f, %.5f", stand.latitudeDeg() + 1, stand.longitudeDeg()));
        run.await(() -> doubt().contains("off the tiles"));
        assertTrue(doubt().contains("beyond its radius of 5.0 km"), doubt());
        run.snapshot("go-to");
        run.robot().push(KeyCode.ESCAPE);
        run.settle();
        assertFalse(run.onScreen(() -> run.stage().getScene().lookup("#go-to").isVisible()));
    }

    private void type(String words) {
        run.onScreen(() -> {
            javafx.scene.control.TextField field =
                    (javafx.scene.control.TextField) run.stage().getScene().lookup("#go-to-place");
            field.setText(words);
            field.fireEvent(new javafx.event.ActionEvent());
        });
        run.settle();
    }

    private String doubt() {
        return run.onScreen(() -> ((Label) run.stage().getScene().lookup("#go-to-doubt")).getText());
    }

    @Test
    void aMistypedPositionIsDoubtedAtOnceAndPointedToFromTheEdge() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Position stand = run.position("creek crew");
        run.onScreen(() -> run.window().way().open(1));
        run.settle();
        run.onScreen(() -> {
            TextInputControl field = (TextInputControl) accessible("Where creek crew is");
            field.setText(
                    String.format(java.util.Locale.ROOT, "%.5f, %.5f", stand.latitudeDeg() + 1, stand.longitudeDeg()));
            field.fireEvent(new javafx.event.ActionEvent());
        });
        run.settle();
        assertTrue(
                run.noticeTexts().stream()
                        .anyMatch(text -> text.contains("creek crew lies 1") && text.contains("tiles")),
                run.noticeTexts().toString());
        run.snapshot("pointed-to");
        run.robot().clickOn(run.pixel(run.position("spike camp")).add(60, 120));
        run.robot().push(KeyCode.SHORTCUT, KeyCode.Z);
        run.settle();
        assertEquals(stand, run.position("creek crew"));
    }

    private Node accessible(String words) {
        return run.stage().getScene().getRoot().lookupAll("*").stream()
                .filter(node -> words.equals(node.getAccessibleText()))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theRightButtonMeasuresWithBothBearings() {
        GeodesicLine there = GeodesicLine.between(new Position(46, 8), new Position(46.02, 8.03));
        GeodesicLine back = GeodesicLine.between(new Position(46.02, 8.03), new Position(46, 8));
        assertEquals("3.2 km, 046\u00b0 there, 226\u00b0 back", ToolOverlay.words(there, back, Lengths.METRIC));
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Point2D from = run.pixel(run.position("creek crew")).add(80, 90);
        run.robot().rightClickOn(from);
        run.settle();
        run.robot().clickOn("Measure from here");
        run.robot().clickOn(from.add(150, -90));
        run.settle();
        run.snapshot("measured");
        assertEquals(
                3,
                run.onScreen(() -> run.session().scene().get().plan().places().positions())
                        .size());
    }

    @Test
    void contoursAreRoundInMilesAndFeetToo() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() ->
                run.session().edit("units", text -> PlanText.withTopValue(text, "units", PlanText.quoted("imperial"))));
        run.settle();
        double feet = run.onScreen(() -> run.window().map().painted().get().contourIntervalM()) / 0.3048;
        assertEquals(Math.rint(feet), feet, 1e-6);
    }

    private static void gather(Node node, List<String> words) {
        if (node instanceof Labeled label) words.add(label.getText());
        if (node instanceof ScrollPane pane) gather(pane.getContent(), words);
        else if (node instanceof Parent parent) parent.getChildrenUnmodifiable().forEach(child -> gather(child, words));
    }

    @Test
    void everyQuestionBeginsWithItsAnswerAsTheLargestWords() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        for (int question = 1; question <= 5; question++) {
            int number = question;
            run.onScreen(() -> run.window().way().open(number - 1));
            run.settle();
            double largest = run.onScreen(() -> fontOf(answer(number)));
            List<String> larger = run.onScreen(() -> {
                List<String> found = new ArrayList<>();
                Node step = answer(number);
                while (!step.getStyleClass().contains("step")) step = step.getParent();
                for (Node node : step.lookupAll(".label"))
                    if (node instanceof Label label
                            && label.isVisible()
                            && label.getFont().getSize() > largest
                            && !label.getStyleClass().contains("step-number")) found.add(label.getText());
                return found;
            });
            assertEquals(List.of(), larger, "question " + question);
            run.snapshot("question-" + question);
        }
        String carry = run.onScreen(() -> answer(1).getText());
        assertTrue(carry.matches("(Carry|Keep) \".*"), carry);
    }

    private Label answer(int question) {
        return (Label) run.stage().getScene().lookup("#step-" + question).lookup(".step-answer");
    }

    private static double fontOf(Label label) {
        return label.getFont().getSize();
    }

    @Test
    void aPathSaysWhatWouldCloseItsGapAndEachRemedyIsAClick() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> {
            run.session().pulled().set(Optional.of(path("spike camp", "creek crew")));
        });
        run.await(() -> run.stage().getScene().lookup("#path-gap-1") != null);
        run.settle();
        run.snapshot("gap");
        double before = lacking();
        assertTrue(before > 0, "the path has to lack something");
        run.press("#path-gap-1");
        run.await(() -> run.session().pulled().get().orElseThrow().given().isPresent());
        run.settle();
        run.await(() ->
                run.stage().getScene().lookup("#path-gap").lookupAll(".label").size() > 0);
        assertTrue(lacking() < before);
        run.snapshot("gap-narrower");
        String folded = run.onScreen(() -> ((Labeled) run.stage().getScene().lookup("#ledger-unfold")).getText());
        assertTrue(folded.matches("Show \\d+ lines? of 0.0 dB"), folded);
    }

    private double lacking() {
        String words = run.onScreen(
                () -> ((Label) run.stage().getScene().lookup("#path-gap").lookup(".label")).getText());
        return words.startsWith("Reaches") ? -1 : Double.parseDouble(words.split(" ")[0]);
    }

    private PulledPath path(String from, String to) {
        return new PulledPath(end(from), end(to), true);
    }

    private PulledPath.End end(String name) {
        Places.PositionEntry entry = run.session().scene().get().plan().places().positions().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
        return PulledPath.End.of(entry.at(), Optional.of(entry));
    }

    @Test
    void helpIsThereWithoutANetwork() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.robot().push(KeyCode.F1);
        run.settle();
        run.snapshot("help-keys");
        assertTrue(help().contains("zoom"), help());
        for (HelpPane.Topic topic : HelpPane.Topic.values()) {
            run.onScreen(() -> run.window().showHelp(topic));
            run.settle();
            assertTrue(help().length() > 200, topic + ": " + help());
            assertFalse(help().contains("does not travel"), topic.words());
        }
        run.onScreen(() -> run.window().showHelp(HelpPane.Topic.GUIDE));
        run.settle();
        run.snapshot("help-guide");
    }

    private String help() {
        return run.onScreen(() -> {
            List<String> words = new ArrayList<>();
            gather(run.stage().getScene().lookup("#help-page"), words);
            return String.join("\n", words);
        });
    }

    @Test
    void thePictureHasTitleAndCautionsRoundTheMap() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        BufferedImage picture = run.onScreen(() -> run.window().mapPicture().take());
        double map = run.onScreen(() -> run.window().map().getHeight());
        assertTrue(picture.getHeight() > map + 80, picture.getHeight() + " of " + map);
        assertTrue(ink(picture, 0, 60) > 200, "no title");
        assertTrue(ink(picture, picture.getHeight() - 50, picture.getHeight()) > 200, "no cautions");
        try {
            javax.imageio.ImageIO.write(
                    picture, "png", Path.of("target", "screens", "picture.png").toFile());
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static int ink(BufferedImage picture, int from, int to) {
        int dark = 0;
        for (int y = from; y < to; y++)
            for (int x = 0; x < picture.getWidth(); x++) if ((picture.getRGB(x, y) & 0xFF) < 100) dark++;
        return dark;
    }
}
