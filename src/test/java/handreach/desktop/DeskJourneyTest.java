package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.PixelPlace;
import handreach.geodesy.Position;
import handreach.loadout.CopyQuality;
import handreach.plan.Places;
import handreach.plan.PlanFile;
import handreach.units.Lengths;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.control.ComboBox;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** Drives the real window as a person would: mouse, keys, and what the screen then shows. */
@Isolated
class DeskJourneyTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    @Test
    void draggingAPositionMovesItInThePlanAndTheReachWithIt() {
        run = WindowRun.on(folder, "forest-hills");
        run.snapshot("first-map");
        Position before = run.position("spike camp");
        double shareBefore = share();
        Point2D from = run.pixel(before);
        run.robot().drag(from, MouseButton.PRIMARY).moveTo(from.add(40, -30)).moveTo(from.add(90, -70));
        run.await(() -> run.session().moving().get().isPresent()
                && run.live().stand().equals(run.session().moving().get().get().to()));
        run.robot().drop();
        run.settle();
        Position after = run.position("spike camp");
        assertNotEquals(before, after);
        assertEquals(after, run.live().stand());
        assertFalse(run.live().isCoarse());
        assertNotEquals(shareBefore, share(), 1e-6);
        assertTrue(run.onScreen(() -> run.session().isEdited().get()));
        run.snapshot("position-dragged");
        run.robot().push(KeyCode.SHORTCUT, KeyCode.Z);
        run.settle();
        assertEquals(before, run.position("spike camp"));
        assertEquals(shareBefore, share(), 1e-12);
        assertFalse(run.onScreen(() -> run.session().isEdited().get()));
        run.robot().push(KeyCode.SHORTCUT, KeyCode.SHIFT, KeyCode.Z);
        run.settle();
        assertEquals(after, run.position("spike camp"));
    }

    private double share() {
        return run.onScreen(() -> run.live()
                .odds(run.session().scene().get().link(run.session().carried().get()))
                .orElseThrow()
                .shareEstimate(0.8)
                .value());
    }

    @Test
    void anotherLoadoutIsShownFromTheLossesThatAreThere() {
        run = WindowRun.on(folder, "forest-hills");
        LiveReach.Losses kept = run.live();
        double factory = share();
        run.robot().clickOn("#loadout-3");
        run.settle();
        assertEquals(
                "quarter-wave with wire at face",
                run.onScreen(() -> run.session().carried().get().name()));
        assertTrue(share() > factory);
        assertEquals(kept, run.live());
        run.show("#step-3");
        run.robot().clickOn("#step-3");
        run.settle();
        run.snapshot("how-far");
        for (Layer layer : List.of(Layer.LEAST, Layer.DIFFERENCE, Layer.SIGHT)) {
            run.onScreen(() -> run.session().layer().set(layer));
            run.settle();
            run.snapshot("layer-" + layer.name().toLowerCase(java.util.Locale.ROOT));
            assertTrue(run.onScreen(() -> run.window().map().overlay().isPresent()), layer.words());
        }
        assertEquals(kept, run.live());
    }

    @Test
    void anEditOfTheTargetIsSavedAndFoundAgainWhenThePlanIsReopened() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        String comment = "# slight effort, a repeat now and then";
        run.show("#step-3");
        run.robot().clickOn("#step-3");
        run.robot()
                .interact(() -> run.robot()
                        .lookup("#copy-quality")
                        .<ComboBox<?>>query()
                        .getSelectionModel()
                        .select(2));
        run.settle();
        run.robot().push(KeyCode.SHORTCUT, KeyCode.S);
        run.settle();
        assertFalse(run.onScreen(() -> run.session().isEdited().get()));
        PlanFile reread = PlanFile.open(run.plan());
        assertEquals(CopyQuality.DAQ_3_4, reread.plan().channel().wish().quality());
        assertTrue(reread.text().contains(comment));
        assertTrue(Files.exists(run.plan().resolveSibling("plan.toml.bak")));
        run.onScreen(() -> run.session().open(run.plan()));
        run.settle();
        assertEquals(
                CopyQuality.DAQ_3_4,
                run.onScreen(() ->
                        run.session().scene().get().plan().channel().wish().quality()));
        assertTrue(RecentPlans.list().contains(run.plan().toAbsolutePath().normalize()));
    }

    @Test
    void aDoubleClickPutsAPositionAndTheMapMovesUnderMouseAndKeys() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Position stand = run.position("spike camp");
        Point2D free = run.pixel(stand).add(-170, 60);
        run.robot().doubleClickOn(free);
        run.settle();
        List<String> names = run.onScreen(() -> run.session().scene().get().plan().places().positions().stream()
                .map(Places.PositionEntry::name)
                .toList());
        assertTrue(names.contains("place 1"));
        double before = run.onScreen(() -> run.window().map().frame().get().metresPerPx());
        Point2D kept = run.pixel(stand);
        run.robot().moveTo(kept);
        run.onScreen(() -> run.window().map().zoom(2, 300, 300));
        double after = run.onScreen(() -> run.window().map().frame().get().metresPerPx());
        assertEquals(before / 2, after, 1e-9);
        run.robot().push(KeyCode.HOME);
        run.settle();
        assertEquals(before, run.onScreen(() -> run.window().map().frame().get().metresPerPx()), before * 0.01);
    }

    @Test
    void zoomingKeepsTheGroundUnderTheCursor() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Position before =
                run.onScreen(() -> PixelPlace.of(run.window().map().frame().get(), 250, 420));
        run.onScreen(() -> run.window().map().zoom(1.7, 250, 420));
        Position after =
                run.onScreen(() -> PixelPlace.of(run.window().map().frame().get(), 250, 420));
        assertEquals(before.latitudeDeg(), after.latitudeDeg(), 2e-5);
        assertEquals(before.longitudeDeg(), after.longitudeDeg(), 2e-5);
    }

    @Test
    void aCorruptPlanIsToldInPlaceAndTheOpenOneStays() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> run.session().edit("note", text -> text.replace("invented crew\"", "edited crew\"")));
        run.settle();
        Path broken = folder.resolve("broken.toml");
        Files.writeString(broken, "title = \"x\"\n[channel]\nfrequency_mhz = \"high\"\n");
        run.onScreen(() -> run.session().open(broken));
        run.settle();
        String told = run.noticeTexts().get(0);
        assertTrue(told.contains("broken.toml line 1: the plan has no [[radio]]"), told);
        assertTrue(told.contains("And 7 more. Its text stands below"), told);
        run.snapshot("corrupt-plan");
        assertTrue(run.onScreen(() -> run.session().scene().get().file().text().contains("edited crew")));
        assertTrue(run.onScreen(() -> run.session().isEdited().get()));
    }

    @Test
    void aMissingTileFolderIsToldInPlace() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        Path other = folder.resolve("plan").resolve("moved.toml");
        Files.writeString(other, Files.readString(run.plan()).replace("tiles = \"tiles\"", "tiles = \"gone\""));
        run.onScreen(() -> run.session().open(other));
        run.settle();
        assertTrue(run.noticeTexts().get(0).contains("gone"), run.noticeTexts().toString());
        run.snapshot("missing-tiles");
        assertEquals(
                run.plan(),
                run.onScreen(() -> run.session().scene().get().file().file()));
    }

    @Test
    void aFolderThatCannotBeWrittenKeepsTheEdits() throws IOException {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> run.session().edit("title", text -> text.replace("two crews", "three crews")));
        run.settle();
        String onDisk = Files.readString(run.plan());
        // A folder in the place of the file refuses to be written for every user, the administrator too.
        Path elsewhere = folder.resolve("plan").resolve("taken.toml");
        Files.createDirectories(elsewhere.resolve("inside"));
        run.onScreen(() -> run.session().saveAs(elsewhere, PlanFile.Named.WHERE_THEY_ARE, () -> {}));
        run.settle();
        assertTrue(
                run.noticeTexts().get(0).contains("is a folder, a file name is expected"),
                run.noticeTexts().toString());
        run.snapshot("read-only");
        assertTrue(run.onScreen(() -> run.session().isEdited().get()));
        assertTrue(run.onScreen(() -> run.session().scene().get().file().text().contains("three crews")));
        assertEquals(onDisk, Files.readString(run.plan()));
    }

    private String radiusFault() {
        return run.onScreen(
                () -> ((javafx.scene.control.Label) run.stage().getScene().lookup("#radius-fault")).getText());
    }

    @Test
    void anEditThePlanCannotBearIsRefusedWithTheReadersWords() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.show("#step-2");
        run.robot().clickOn("#step-2");
        for (String word : List.of("five", "NaN")) {
            run.robot().doubleClickOn("#radius").write(word).push(KeyCode.ENTER);
            run.settle();
            assertTrue(
                    radiusFault().startsWith("The radius is \"" + word + "\", but a number is needed"), radiusFault());
        }
        run.robot().doubleClickOn("#radius").write("5000").push(KeyCode.ENTER);
        run.settle();
        assertEquals("The radius is 5000, allowed is 0.2 to 120 km. Correct the value.", radiusFault());
        assertEquals(List.of(), run.noticeTexts());
        run.onScreen(() -> new PlaceVerbs(run.session()).rename("north spur", "creek crew"));
        run.settle();
        assertTrue(
                run.noticeTexts().get(0).contains("plan.toml line"),
                run.noticeTexts().toString());
        assertFalse(run.onScreen(() -> run.session().isEdited().get()));
        run.snapshot("refused-edit");
        run.robot().doubleClickOn("#cell").write("60").push(KeyCode.ENTER);
        run.settle();
        assertEquals(
                60,
                run.onScreen(() ->
                        run.session().scene().get().plan().questions().reach().cellM()));
    }

    @Test
    void thePersonIsShownRoundOnceAndAgainWhenAsked() {
        run = WindowRun.bare(folder, Optional.of(Path.of("elevation-samples", "forest-hills")));
        run.settle();
        run.snapshot("first-steps");
        assertTrue(run.robot().lookup("#first-steps").query().isVisible());
        for (int i = 0; i < 5; i++) run.robot().clickOn("#next-step");
        run.settle();
        assertFalse(run.robot().lookup("#first-steps").query().isVisible());
        assertFalse(RecentPlans.isFirstTime());
    }

    @Test
    void theWindowLooksRightByNightAndInMiles() {
        run = WindowRun.inLargeCells(folder, "forest-hills");
        run.onScreen(() -> run.window().map().palette().set(Palette.NIGHT));
        run.show("#step-3");
        run.robot().clickOn("#step-3");
        run.settle();
        run.snapshot("night");
        run.onScreen(() -> run.session()
                .edit("units", text -> handreach.plan.PlanText.withTopValue(text, "units", "\"imperial\"")));
        run.settle();
        run.snapshot("night-miles");
        assertEquals(
                Lengths.IMPERIAL,
                run.onScreen(() -> run.session().scene().get().plan().header().lengths()));
    }

    @Test
    void withoutAPlanTheWindowSaysWhatToDo() {
        run = WindowRun.bare(folder, Optional.of(folder.resolve("nowhere.toml")));
        run.settle();
        assertEquals(1, run.noticeTexts().size(), run.noticeTexts().toString());
        run.snapshot("nothing-open");
    }
}
