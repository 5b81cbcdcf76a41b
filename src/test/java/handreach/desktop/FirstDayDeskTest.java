package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.plan.PlanFile;
import handreach.report.card.CardSize;
import handreach.study.RelayAnswer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * The first day of a new user: an empty home and one downloaded tile, and in the evening a saved plan, bench readings in it, an answer
 * about a relay, a walk held against the prediction and a card in the pocket. No file is written by hand but the log of the walk. What a
 * file dialog of the system would hand over is handed over here. The pictures of the documents are taken on the way
 * ({@code src/build/pictures.sh}).
 */
@Isolated
class FirstDayDeskTest {
    private static final String LOADOUT = "quarter-wave at face";

    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private void drop(Path file) {
        run.onScreen(() -> run.window().drop().take(List.of(file)));
        run.settle();
    }

    private void write(String id, String words) {
        run.show(id);
        run.robot().clickOn(id).push(KeyCode.SHORTCUT, KeyCode.A).write(words).push(KeyCode.ENTER);
        run.settle();
    }

    private void choose(String id, String value) {
        run.onScreen(() -> run.robot().lookup(id).<ComboBox<String>>query().setValue(value));
        run.settle();
    }

    /** Opens the form of a part of the plan by its name in the list. */
    private void form(String name) {
        run.onScreen(() -> run.robot().lookup(".kit-entry").queryAllAs(Button.class).stream()
                .filter(button -> button.getText().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no form " + name))
                .fire());
        run.settle();
    }

    private void question(int number) {
        run.onScreen(() -> run.window().way().open(number - 1));
        run.settle();
        run.onScreen(() -> ((ScrollPane) run.stage().getScene().lookup(".way-scroll")).setVvalue(0));
        run.settle();
    }

    private void size(double wide, double high) {
        run.onScreen(() -> {
            run.stage().setWidth(wide);
            run.stage().setHeight(high);
        });
        run.settle();
    }

    @Test
    void anEmptyHomeAndOneTileBecomeAPlanARelayAWalkAndACard() throws IOException {
        Path downloads = Files.createDirectories(folder.resolve("downloads"));
        Path tile = Files.copy(
                Path.of("elevation-samples/forest-hills/tiles/cumberland-forest-3s.tif"),
                downloads.resolve("cumberland-forest-3s.tif"));
        run = WindowRun.empty(folder);
        size(1280, 800);
        run.snapshot("story-1-empty");
        beginAPlan(tile);
        Path plan = folder.resolve("trip").resolve("plan.toml");
        Files.createDirectories(plan.getParent());
        run.onScreen(() -> run.session().saveAs(plan, PlanFile.Named.TAKEN_ALONG, () -> {}));
        run.settle();
        putTheCrews();
        readTheBench(downloads);
        lookAtTheReach();
        askForARelay();
        holdTheWalkAgainstIt(downloads);
        // The walk has made the answer old, and the card takes none that is old.
        assertTrue(run.robot().lookup("#relay-stale").query().isVisible());
        run.press("#relay-find");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.S);
        run.settle();
        PlanFile saved = PlanFile.open(plan);
        assertEquals(3, saved.plan().places().positions().size());
        assertEquals(1, saved.plan().questions().walks().size());
        assertTrue(saved.plan().equipment().bench().isPresent());
        assertFalse(run.onScreen(() -> run.session().isEdited().get()));
        printTheCard();
        looks();
    }

    private void beginAPlan(Path tile) {
        run.robot().clickOn("#start-new");
        drop(tile);
        assertTrue(run.robot().lookup("#new-ground").<Label>query().getText().contains("1 tile (GeoTIFF)"));
        write("#new-title", "First trip");
        write("#new-mhz", "155.16");
        write("#new-watts", "5");
        choose("#new-cover", "woodland");
        run.snapshot("story-2-ground");
        run.robot().clickOn("#new-show");
        run.await(() -> run.live() != null && !run.live().isCoarse());
        run.settle();
        write("#new-at", "36.2700, -84.2100");
        run.await(() -> !run.live().isCoarse());
        run.settle();
        Point2D base = run.onScreen(() -> {
            var frame = run.window().map().frame().get();
            Position here = run.session().stand();
            return new Point2D(frame.xPx(here.longitudeDeg()), frame.yPx(here.latitudeDeg()));
        });
        assertTrue(base.getY() < run.onScreen(() -> run.window().map().getHeight()) - 30, base.toString());
        run.snapshot("story-3-place");
        run.robot().clickOn("#drawer-away");
        run.settle();
        run.onScreen(() -> run.session().notices().clear());
    }

    private void putTheCrews() {
        for (Position at : List.of(new Position(36.3000, -84.1950), new Position(36.2520, -84.2480))) {
            run.robot().doubleClickOn(run.pixel(at));
            run.settle();
        }
        assertEquals(
                3,
                run.onScreen(() ->
                        run.session().scene().get().plan().places().positions().size()));
    }

    /** The plan's antenna takes its name on the bench, the readings come in, and a second antenna of theirs is carried. */
    private void readTheBench(Path downloads) throws IOException {
        WindowRun.copy(Path.of("elevation-samples/invented-bench"), downloads.resolve("bench"));
        run.robot().push(KeyCode.SHORTCUT, KeyCode.E);
        run.settle();
        form("factory");
        write("#field-name", "factory helical");
        run.onScreen(() -> run.session().notices().clear());
        drop(downloads.resolve("bench").resolve("bench.csv"));
        run.snapshot("story-4-bench");
        run.press("#bench-take");
        assertTrue(
                run.onScreen(() -> run.session().scene().get().bench().isPresent()),
                run.noticeTexts().toString());
        run.robot().push(KeyCode.SHORTCUT, KeyCode.E);
        run.settle();
        form("factory helical");
        run.press("#kit-another");
        write("#field-bench", "quarter-wave whip");
        write("#field-name", "quarter-wave whip");
        choose("#field-radiator", "quarter-wave");
        form("factory at face");
        run.press("#kit-another");
        choose("#field-antenna", "quarter-wave whip");
        write("#field-name", LOADOUT);
        assertTrue(
                run.onScreen(() -> run.session().notices().stream().noneMatch(Notice::isFault)),
                run.noticeTexts().toString());
        run.onScreen(() -> run.session().notices().clear());
        run.robot().clickOn("#drawer-away");
        run.onScreen(() -> run.window().map().requestFocus());
        run.settle();
        assertEquals(
                List.of("factory at face", LOADOUT),
                run.onScreen(() -> run.session().scene().get().loadouts().stream()
                        .map(loadout -> loadout.name())
                        .toList()));
    }

    private void lookAtTheReach() {
        run.onScreen(() -> run.session()
                .carried()
                .set(run.session().scene().get().loadouts().get(1)));
        question(1);
        run.await(() -> !run.live().isCoarse());
        run.settle();
        run.snapshot("story-5-reach");
        run.onScreen(() -> run.session().layer().set(Layer.DIFFERENCE));
        question(3);
        run.snapshot("story-bought");
        run.onScreen(() -> run.session().layer().set(Layer.ODDS));
        run.settle();
        run.robot().push(KeyCode.SHORTCUT, KeyCode.P);
        run.settle();
        assertTrue(run.onScreen(() -> run.session().pulled().get().isPresent()));
        run.press("#drawer-taller");
        run.snapshot("story-path");
        run.onScreen(() -> run.session().pulled().set(Optional.empty()));
        run.settle();
    }

    private void askForARelay() {
        run.robot().clickOn("#whole-area");
        run.settle();
        question(4);
        run.press("#relay-usual");
        run.press("#relay-find");
        run.await(() -> run.session().relay().get().isPresent());
        run.settle();
        RelayAnswer answer = run.onScreen(() -> run.session().relay().get().orElseThrow());
        assertFalse(answer.summary().verdict().isEmpty());
        question(4);
        run.snapshot("story-6-relay");
    }

    /** The log as it was written down on the way; it names the loadout of this plan. */
    private void holdTheWalkAgainstIt(Path downloads) throws IOException {
        Path sample = Path.of("elevation-samples/forest-hills");
        Path track = Files.copy(sample.resolve("walk-track.gpx"), downloads.resolve("walk-track.gpx"));
        Path log = downloads.resolve("walk-reports.csv");
        Files.writeString(
                log,
                Files.readString(sample.resolve("walk-reports.csv"))
                        .replaceAll("(?m)(quarter-wave with wire at face|factory at (hip|face))", LOADOUT));
        drop(log);
        String along = "bring-log-along-" + track.getFileName();
        run.onScreen(() -> run.robot().lookup(".button").queryAllAs(Button.class).stream()
                .filter(button -> along.equals(button.getId()))
                .findFirst()
                .orElseThrow(() -> new AssertionError("nothing offers " + along))
                .fire());
        run.settle();
        run.robot().clickOn("#drawer-away");
        run.onScreen(() -> run.window().map().requestFocus());
        question(5);
        run.press("#walk-compare");
        run.await(() -> run.session().walked().get().isPresent());
        run.settle();
        run.onScreen(() -> run.session().notices().clear());
        question(5);
        run.snapshot("story-7-walk");
    }

    private void printTheCard() throws IOException {
        Path card = folder.resolve("trip").resolve("card.pdf");
        run.onScreen(() -> new ExportVerbs(run.session()).card(CardSize.A4, false, card));
        run.settle();
        try (PDDocument pdf = Loader.loadPDF(card.toFile())) {
            String words = new PDFTextStripper().getText(pdf);
            for (String each :
                    List.of("First trip", "155.1600 MHz", LOADOUT, "odds, not a promise", "place 1", "36.28"))
                assertTrue(words.contains(each), each + " in " + words);
            assertEquals(1, pdf.getNumberOfPages());
            ImageIO.write(
                    new PDFRenderer(pdf).renderImageWithDPI(0, 110),
                    "png",
                    Path.of("target", "screens", "story-8-card.png").toFile());
        }
    }

    /** The same evening in the dark, in a small window, with large words. */
    private void looks() {
        run.onScreen(() -> run.session().notices().clear());
        run.onScreen(() -> run.session().layer().set(Layer.ODDS));
        question(3);
        run.robot().clickOn("#whole-area");
        run.settle();
        run.robot().push(KeyCode.SHORTCUT, KeyCode.D);
        run.settle();
        run.snapshot("story-night");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.D);
        size(900, 600);
        run.await(() -> !run.live().isCoarse());
        run.settle();
        run.snapshot("story-900x600");
        size(1280, 800);
        for (int i = 0; i < 4; i++) run.robot().push(KeyCode.SHORTCUT, KeyCode.EQUALS);
        run.settle();
        run.snapshot("story-words-150");
    }
}
