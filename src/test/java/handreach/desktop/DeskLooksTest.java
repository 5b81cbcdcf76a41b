package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The size of things: nothing is cut in a small window or with large words, and the window looks the same when it is opened again. */
@Isolated
class DeskLooksTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    @Test
    void everyPlusAndMinusOfTheKeyboardChangesTheWordsThoseOnTheMapToo() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        for (KeyCode plus : List.of(KeyCode.PLUS, KeyCode.EQUALS, KeyCode.ADD)) {
            double before = words();
            run.robot().push(KeyCode.SHORTCUT, plus);
            run.settle();
            assertTrue(words() > before * 1.05, plus + ": " + before + " to " + words());
            assertEquals(
                    words(), run.onScreen(() -> run.window().map().fonts().get().sizePx()), 1e-9);
        }
        double before = words();
        run.robot().push(KeyCode.SHORTCUT, KeyCode.SHIFT, KeyCode.EQUALS);
        assertTrue(words() > before);
        for (KeyCode minus : List.of(KeyCode.MINUS, KeyCode.SUBTRACT)) {
            before = words();
            run.robot().push(KeyCode.SHORTCUT, minus);
            run.settle();
            assertTrue(words() < before, minus.toString());
        }
        run.robot().push(KeyCode.SHORTCUT, KeyCode.DIGIT0);
        assertEquals(WindowLooks.USUAL_PX, words());
    }

    private double words() {
        return run.onScreen(() -> run.window().looks().textPx());
    }

    @Test
    void nothingIsCutInTheSmallestWindowNorWithLargeWords() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        size(900, 600);
        noneIsCut("small");
        for (int step = 1; step <= 5; step++) {
            int number = step;
            run.onScreen(() -> run.window().way().open(number - 1));
            run.settle();
            run.snapshot("small-question-" + step);
            noneIsCut("small, question " + step);
        }
        run.robot().push(KeyCode.F9);
        run.settle();
        run.snapshot("small-folded");
        assertTrue(run.onScreen(() -> run.window().map().getWidth()) > 850);
        run.robot().push(KeyCode.F9);
        size(1440, 900);
        for (int i = 0; i < 5; i++) run.robot().push(KeyCode.SHORTCUT, KeyCode.EQUALS);
        run.onScreen(() -> run.window().way().open(2));
        run.settle();
        run.snapshot("words-150");
        noneIsCut("words at " + words());
    }

    private void size(double wide, double high) {
        run.onScreen(() -> {
            run.stage().setWidth(wide);
            run.stage().setHeight(high);
        });
        run.settle();
        run.await(() -> run.live() != null && !run.live().isCoarse());
    }

    /** A button whose words end in dots shows another text than it has. */
    private void noneIsCut(String when) {
        List<String> cut = run.onScreen(() -> {
            List<String> found = new ArrayList<>();
            gatherCut(run.stage().getScene().getRoot(), found);
            return found;
        });
        assertEquals(List.of(), cut, when);
    }

    private static void gatherCut(Node node, List<String> found) {
        if (!node.isVisible()) return;
        boolean isPressed = node instanceof Button || node instanceof ToggleButton;
        if (isPressed
                && node.lookup(".text") instanceof Text text
                && !text.getText().equals(((Labeled) node).getText()))
            found.add(((Labeled) node).getText() + " reads " + text.getText());
        if (node instanceof Parent parent) parent.getChildrenUnmodifiable().forEach(child -> gatherCut(child, found));
    }

    @Test
    void theArrowToTheNorthStandsClearOfTheBarInEveryWidth() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        for (double wide : new double[] {900, 1024, 1440}) {
            size(wide, 700);
            Bounds bar = run.onScreen(() -> run.window().map().sceneToLocal(bounds("#layer-bar")));
            double mapPx = run.onScreen(() -> run.window().map().getWidth());
            assertTrue(bar.getMaxX() < mapPx - 40, wide + ": bar to " + bar.getMaxX() + " of " + mapPx);
        }
    }

    private Bounds bounds(String id) {
        Node node = run.stage().getScene().lookup(id);
        return node.localToScene(node.getLayoutBounds());
    }

    @Test
    void theQuestionsAreAsWideAsTheHandDrawsThem() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        double before = run.onScreen(() -> run.window().way().getWidth());
        run.robot().drag("#side-grip").moveBy(-80, 0).drop();
        run.settle();
        double after = run.onScreen(() -> run.window().way().getWidth());
        assertEquals(before + 80, after, 15);
        run.onScreen(() -> run.stage().getScene().lookup("#side-grip").requestFocus());
        run.robot().push(KeyCode.RIGHT);
        run.settle();
        assertEquals(after - 24, run.onScreen(() -> run.window().way().getWidth()), 1);
        run.robot().clickOn("#side-fold");
        run.settle();
        assertFalse(run.onScreen(() -> run.window().way().getParent().isVisible()));
    }

    @Test
    void theWindowComesBackAsItWasLeft() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        size(1100, 720);
        run.onScreen(() -> {
            run.stage().setX(60);
            run.stage().setY(40);
        });
        run.robot().push(KeyCode.SHORTCUT, KeyCode.EQUALS);
        run.robot().push(KeyCode.SHORTCUT, KeyCode.D);
        run.robot().push(KeyCode.F9);
        run.robot().clickOn("#key-fold");
        run.settle();
        double words = words();
        run.close();
        run = WindowRun.bare(folder, Optional.of(run.plan()));
        run.settle();
        assertEquals(1100, run.onScreen(() -> run.stage().getWidth()), 1);
        assertEquals(720, run.onScreen(() -> run.stage().getHeight()), 1);
        assertEquals(60, run.onScreen(() -> run.stage().getX()), 1);
        assertEquals(40, run.onScreen(() -> run.stage().getY()), 1);
        assertEquals(words, words(), 0.5);
        assertEquals(Palette.NIGHT, run.onScreen(() -> run.session().palette().get()));
        assertTrue(run.onScreen(() -> run.window().side().folded().get()));
        run.await(() -> run.stage().getScene().lookup("#key-fold") != null);
        run.snapshot("as-it-was-left");
        assertEquals("+", run.onScreen(() -> ((Button) run.stage().getScene().lookup("#key-fold")).getText()));
    }

    /** Some window managers show a window as small as it may be: it is told its size once more. */
    @Test
    void aWindowThatIsShownAtItsSmallestTakesItsUsualSize() {
        run = WindowRun.empty(folder);
        List<Double> size = run.onScreen(() -> {
            Stage other = new Stage();
            DeskWindow window = new DeskWindow(other);
            window.begin(Optional.empty());
            other.addEventFilter(WindowEvent.WINDOW_SHOWN, shown -> {
                other.setWidth(900);
                other.setHeight(600);
            });
            other.show();
            List<Double> shown = List.of(other.getWidth(), other.getHeight());
            window.session().worker().close();
            other.close();
            return shown;
        });
        assertEquals(List.of(1440.0, 900.0), size);
    }

    @Test
    void edgesOfControlsStandOutByDayAndByNight() throws IOException {
        String sheet;
        try (InputStream in = Theme.class.getResourceAsStream("desk.css")) {
            sheet = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        for (String part : List.of(".day", ".night")) {
            String colours = sheet.substring(sheet.indexOf("\n" + part + " {"));
            for (String ground : List.of("-hr-sheet", "-hr-paper", "-hr-raised")) {
                double contrast = contrast(colour(colours, "-hr-control"), colour(colours, ground));
                assertTrue(contrast >= 3, part + " on " + ground + ": " + contrast);
            }
        }
    }

    private static int colour(String sheet, String name) {
        Matcher found = Pattern.compile(name + ": #([0-9a-f]{6});").matcher(sheet);
        assertTrue(found.find(), name);
        return Integer.parseInt(found.group(1), 16);
    }

    private static double contrast(int one, int other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    /** Relative luminance of W3C, Web Content Accessibility Guidelines 2.1. */
    private static double luminance(int rgb) {
        return 0.2126 * linear(rgb >> 16 & 0xFF) + 0.7152 * linear(rgb >> 8 & 0xFF) + 0.0722 * linear(rgb & 0xFF);
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    @Test
    void theBestOddsShineByNightAndTheKeyShowsTheColoursOfTheMap() {
        run = WindowRun.on(folder, "forest-hills");
        for (Palette palette : Palette.values()) {
            run.onScreen(() -> run.window().map().palette().set(palette));
            run.settle();
            BufferedImage picture = run.snapshot("odds-" + palette.name().toLowerCase(java.util.Locale.ROOT));
            grey(picture, "odds-" + palette.name().toLowerCase(java.util.Locale.ROOT) + "-grey");
            simulated(picture, "odds-" + palette.name().toLowerCase(java.util.Locale.ROOT) + "-deuteranopia");
            int ground = palette.paper().levelRgb();
            MapRaster.Manner manner = run.onScreen(() -> run.window().map().manner());
            double before = contrast(ground, manner.laid(ground, 0xFF000000 | palette.odds(1)));
            assertTrue(before > 1.25, palette + ": seldom against bare ground " + before);
            for (int oddsClass = 2; oddsClass <= 5; oddsClass++) {
                double here = contrast(ground, manner.laid(ground, 0xFF000000 | palette.odds(oddsClass)));
                assertTrue(here > before, palette + " class " + oddsClass + ": " + here + " after " + before);
                double seen = contrast(
                        deuteranopia(ground), deuteranopia(manner.laid(ground, 0xFF000000 | palette.odds(oddsClass))));
                double seenBefore = contrast(
                        deuteranopia(ground),
                        deuteranopia(manner.laid(ground, 0xFF000000 | palette.odds(oddsClass - 1))));
                assertTrue(seen > seenBefore, palette + " class " + oddsClass + " as a colour-blind eye sees it");
                before = here;
            }
            for (Layer layer : List.of(Layer.ODDS, Layer.LEAST, Layer.DIFFERENCE, Layer.SIGHT)) {
                run.onScreen(() -> run.session().layer().set(layer));
                run.settle();
                run.snapshot("layer-" + layer.name().toLowerCase(java.util.Locale.ROOT) + "-"
                        + palette.name().toLowerCase(java.util.Locale.ROOT));
                LayerRaster overlay =
                        run.onScreen(() -> run.window().map().overlay().orElseThrow());
                theKeyHasTheColoursOfTheMap(layer + " by " + palette, overlay);
                for (int cell = 0; cell < overlay.grid().count(); cell++) {
                    int ink = overlay.argb(cell);
                    assertTrue(
                            overlay.key().entries().stream()
                                    .anyMatch(entry -> entry.areaArgb() == ink || entry.lineArgb() == ink),
                            layer + " by " + palette + " has " + Integer.toHexString(ink) + ", not in its key");
                }
            }
            run.onScreen(() -> run.session().layer().set(Layer.ODDS));
            run.settle();
        }
    }

    /** Pixels of the key as they are on the screen against the pixels of level ground on the map. */
    private void theKeyHasTheColoursOfTheMap(String when, LayerRaster overlay) {
        run.onScreen(() -> {
            MapView map = run.window().map();
            Relief relief = map.painted().get();
            MapRaster bare = MapRaster.of(relief, Optional.empty(), map.manner());
            MapRaster laid = MapRaster.of(
                    relief,
                    Optional.of(new LayerRaster(overlay.grid(), inks(overlay), overlay.key(), Optional.empty())),
                    map.manner());
            int level = 0xFF000000 | map.palette().get().paper().levelRgb();
            Set<Integer> inKey = swatchColours();
            int seen = 0;
            for (int y = 0; y < relief.frame().heightPx(); y++)
                for (int x = 0; x < relief.frame().widthPx(); x++) {
                    if (bare.argb(x, y) != level) continue;
                    seen++;
                    assertTrue(
                            inKey.contains(laid.argb(x, y)),
                            when + ": " + Integer.toHexString(laid.argb(x, y)) + " is not in the key");
                }
            assertTrue(seen > 100, when + ": " + seen + " pixels of level ground");
        });
    }

    private static int[] inks(LayerRaster overlay) {
        int[] inks = new int[overlay.grid().count()];
        for (int cell = 0; cell < inks.length; cell++) inks[cell] = overlay.argb(cell);
        return inks;
    }

    private Set<Integer> swatchColours() {
        Set<Integer> colours = new HashSet<>();
        for (Node node : run.stage().getScene().lookup("#map-key").lookupAll("Canvas")) {
            WritableImage image = node.snapshot(null, null);
            // Within the frame of the sample.
            for (int x = 2; x < image.getWidth() - 2; x++)
                for (int y = 2; y < image.getHeight() - 2; y++)
                    colours.add(image.getPixelReader().getArgb(x, y));
        }
        return colours;
    }

    private static final double[][] DEUTERANOPIA = {
        {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
    };

    /** As eyes without the middle cones see it: Machado, Oliveira, Fernandes 2009, severity 1; matrix from memory. */
    private static int deuteranopia(int rgb) {
        double[] linear = {linear(rgb >> 16 & 0xFF), linear(rgb >> 8 & 0xFF), linear(rgb & 0xFF)};
        int seen = 0;
        for (double[] row : DEUTERANOPIA) {
            double light = row[0] * linear[0] + row[1] * linear[1] + row[2] * linear[2];
            double clipped = Math.max(0, Math.min(1, light));
            double c = clipped <= 0.0031308 ? 12.92 * clipped : 1.055 * Math.pow(clipped, 1 / 2.4) - 0.055;
            seen = seen << 8 | (int) Math.round(255 * c);
        }
        return seen;
    }

    private static void simulated(BufferedImage picture, String name) {
        BufferedImage seen = new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_RGB);
        Map<Integer, Integer> known = new HashMap<>();
        for (int y = 0; y < seen.getHeight(); y++)
            for (int x = 0; x < seen.getWidth(); x++)
                seen.setRGB(x, y, known.computeIfAbsent(picture.getRGB(x, y), DeskLooksTest::deuteranopia));
        WindowRun.keep(seen, name);
    }

    private static void grey(BufferedImage picture, String name) {
        BufferedImage grey = new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
        grey.createGraphics().drawImage(picture, 0, 0, null);
        WindowRun.keep(grey, name);
    }
}
