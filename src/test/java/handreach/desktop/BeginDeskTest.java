package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.Position;
import handreach.plan.BlankPlan;
import handreach.plan.PlanFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** From nothing, and from a plan that cannot be read, to a plan that is open: what a new user meets first. */
@Isolated
class BeginDeskTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private Set<Labeled> notices() {
        return run.robot().lookup(".notice .label").queryAllAs(Labeled.class);
    }

    private boolean isSeen(String id) {
        return run.robot().lookup(id).tryQuery().filter(Node::isVisible).isPresent();
    }

    private String words(String id) {
        return run.robot().lookup(id).<Label>query().getText();
    }

    private void write(String id, String words) {
        run.robot().doubleClickOn(id).push(KeyCode.SHORTCUT, KeyCode.A).write(words);
    }

    /** The window without a plan, and without the sample that lies beside it while it is developed. */
    private void startWithNothing() throws IOException {
        run = WindowRun.empty(folder);
        run.settle();
    }

    @Test
    void theFirstMessageIsShownAndTheCorruptPlanStandsThereToBeMended() throws IOException {
        Path sample = folder.resolve("plan");
        WindowRun.copy(Path.of("elevation-samples", "forest-hills"), sample);
        WindowRun.copy(Path.of("elevation-samples", "invented-bench"), folder.resolve("invented-bench"));
        Path plan = sample.resolve("plan.toml");
        String broken = WindowRun.inLargeCells(Files.readString(plan))
                .replace("frequency_mhz = 155.16", "frequency_mhz = 1550.16")
                .replace("carry = \"hip\"", "carry = \"hp\"");
        Files.writeString(plan, broken);
        run = WindowRun.bare(folder, Optional.of(plan));
        run.settle();
        assertTrue(
                notices().stream().anyMatch(label -> label.getText().contains("plan.toml line 8")),
                notices().toString());
        assertFalse(isSeen("#first-steps"));
        assertTrue(
                run.stage().getTitle().startsWith("plan.toml, to be mended"),
                run.stage().getTitle());
        TextArea text = run.robot().lookup("#plan-text").query();
        assertEquals(broken.stripTrailing(), run.onScreen(() -> text.getText()).stripTrailing());
        List<Button> faults = run.robot().lookup(".fault-line").queryAllAs(Button.class).stream()
                .toList();
        assertEquals(2, faults.size(), faults.toString());
        LineGutter gutter = run.robot().lookup(".line-gutter").query();
        assertTrue(run.onScreen(() -> gutter.marked()).contains(8));
        run.onScreen(() -> faults.get(0).fire());
        assertTrue(run.onScreen(() -> text.getSelectedText()).startsWith("frequency_mhz = 1550.16"));
        run.snapshot("begin-corrupt");
        run.onScreen(() -> text.setText(broken.replace("1550.16", "155.16").replace("\"hp\"", "\"hip\"")));
        run.settle();
        run.press("#plan-text-take");
        run.await(() -> run.session().scene().get() != null);
        run.settle();
        assertTrue(run.onScreen(() -> run.session().isEdited().get()));
        run.robot().push(KeyCode.SHORTCUT, KeyCode.S);
        run.settle();
        assertEquals(155.16, PlanFile.open(plan).plan().channel().frequency().mhz(), 1e-9);
    }

    @Test
    void aPlanWithoutItsTilesOffersToChooseThem() throws IOException {
        Path sample = folder.resolve("plan");
        WindowRun.copy(Path.of("elevation-samples", "forest-hills"), sample);
        WindowRun.copy(Path.of("elevation-samples", "invented-bench"), folder.resolve("invented-bench"));
        Path plan = sample.resolve("plan.toml");
        Files.writeString(plan, WindowRun.inLargeCells(Files.readString(plan)));
        Files.move(sample.resolve("tiles"), folder.resolve("elsewhere"));
        run = WindowRun.bare(folder, Optional.of(sample));
        run.settle();
        assertTrue(isSeen("#plan-text-tiles"));
        run.snapshot("begin-no-tiles");
        // What the dialog would hand over; the same by a drop.
        run.onScreen(() -> run.window().drop().take(List.of(folder.resolve("elsewhere"))));
        run.settle();
        assertEquals(
                folder.resolve("elsewhere"),
                run.onScreen(() -> run.session().scene().get().plan().ground().tiles()));
    }

    @Test
    void withNothingAtAllTheWindowSaysHowToBegin() throws IOException {
        startWithNothing();
        assertTrue(isSeen("#start-new"));
        assertFalse(isSeen("#first-steps"));
        assertEquals("Handreach", run.stage().getTitle());
        assertTrue(
                run.robot().lookup("#start .label").queryAllAs(Label.class).stream()
                        .anyMatch(label -> label.getText().contains("Help, Elevation tiles")),
                "no way to tiles");
        assertEquals("", run.onScreen(() -> ((Label) run.node("#step-1").lookup(".step-answer")).getText()));
        assertEquals(
                Path.of(System.getProperty("user.home")).toFile(),
                run.onScreen(() -> run.window().verbs().plans("x").getInitialDirectory()));
        run.snapshot("begin-empty");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.S);
        run.settle();
        assertTrue(notices().stream().anyMatch(label -> label.getText().contains("There is no plan yet")));
        // What needs a plan cannot be pressed, or says so.
        assertTrue(run.onScreen(() -> run.window().way().isDisabled()));
        for (KeyCode verb : List.of(KeyCode.E, KeyCode.T, KeyCode.R, KeyCode.P, KeyCode.G, KeyCode.B)) {
            run.onScreen(() -> run.session().notices().clear());
            run.robot().push(KeyCode.SHORTCUT, verb);
            run.settle();
            assertTrue(
                    run.noticeTexts().stream().anyMatch(text -> text.contains("There is no plan yet")),
                    verb + ": " + run.noticeTexts());
        }
    }

    @Test
    void oneDownloadedTileBecomesASavedPlan() throws IOException {
        Path tile = folder.resolve("downloads").resolve("N44W030.hgt.zip");
        Files.createDirectories(tile.getParent());
        Files.copy(Path.of("elevation-samples", "invented-valley", "tiles", "N44W030.hgt.zip"), tile);
        startWithNothing();
        run.robot().clickOn("#start-new");
        assertTrue(run.robot().lookup("#new-show").<Button>query().isDisabled());
        run.onScreen(() -> run.window().drop().take(List.of(tile)));
        run.settle();
        assertTrue(words("#new-ground").contains("1 tile (HGT)"), words("#new-ground"));
        assertTrue(
                words("#new-ground").contains("44.000 to 45.000 north, 29.000 to 30.000 west"), words("#new-ground"));
        write("#new-mhz", "1551.6");
        assertTrue(words("#new-wrong").contains("allowed is 30 to 1000 MHz"), words("#new-wrong"));
        run.snapshot("begin-new-fault");
        write("#new-mhz", "155.16");
        write("#new-watts", "5");
        assertTrue(words("#new-wrong").contains("what stands on the ground"), words("#new-wrong"));
        run.onScreen(
                () -> run.robot().lookup("#new-cover").<ComboBox<String>>query().setValue("woodland"));
        run.robot().clickOn("#new-show");
        run.await(() -> run.session().scene().get() != null);
        run.await(() -> run.live() != null && !run.live().isCoarse());
        run.settle();
        assertFalse(isSeen("#start"));
        assertTrue(
                run.onScreen(() -> ((Label) run.node("#step-2").lookup(".step-answer")).getText())
                        .contains("; 1 position, "),
                "one is no several");
        Position before = run.position(BlankPlan.HERE);
        run.robot().clickOn("#new-by-click");
        Point2D there = run.pixel(before).add(60, -40);
        run.robot().clickOn(there);
        run.settle();
        assertTrue(run.position(BlankPlan.HERE).latitudeDeg() > before.latitudeDeg());
        write("#new-at", "10, 10");
        run.robot().push(KeyCode.ENTER);
        assertTrue(words("#new-place-wrong").contains("off the tiles"), words("#new-place-wrong"));
        write("#new-at", "44.5, -29.5");
        run.robot().push(KeyCode.ENTER);
        run.settle();
        run.snapshot("begin-new-plan");
        Path file = folder.resolve("trip").resolve("trip.toml");
        Files.createDirectories(file.getParent());
        run.onScreen(() -> run.session().saveAs(file, PlanFile.Named.TAKEN_ALONG, () -> {}));
        run.settle();
        PlanFile saved = PlanFile.open(file);
        assertEquals(155.16, saved.plan().channel().frequency().mhz(), 1e-9);
        assertEquals(44.5, saved.plan().places().positions().get(0).at().latitudeDeg(), 1e-9);
        assertTrue(saved.text().contains("tiles = \"downloads\""), saved.text());
        assertTrue(Files.exists(folder.resolve("trip/downloads/N44W030.hgt.zip")));
        assertTrue(
                run.stage().getTitle().contains("trip.toml in trip"),
                run.stage().getTitle());
    }
}
