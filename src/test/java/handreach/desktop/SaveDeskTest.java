package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.study.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.control.Button;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** A plan saved where one wants, and its edits found again after a crash. */
@Isolated
class SaveDeskTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    private void edit() {
        run.onScreen(() -> run.session().edit("title", text -> text.replace("two crews", "three crews")));
        run.settle();
    }

    private void pressNotice(String words) {
        run.onScreen(() -> run.robot().lookup(".notice-verb").queryAllAs(Button.class).stream()
                .filter(button -> button.getText().equals(words))
                .findFirst()
                .orElseThrow()
                .fire());
        run.settle();
    }

    @Test
    void savedIntoAnotherFolderThePlanStillFindsItsFiles() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        List<Path> shown = new ArrayList<>();
        run.session().showWith(shown::add);
        edit();
        Path near = Files.createDirectories(folder.resolve("near")).resolve("near.toml");
        run.onScreen(() -> run.session().saveAs(near, PlanFile.Named.WHERE_THEY_ARE, () -> {}));
        run.settle();
        String text = Files.readString(near);
        assertTrue(text.contains("tiles = \"../plan/tiles\""), text);
        assertTrue(text.contains("file = \"../invented-bench/bench.csv\"   # invented readings"), text);
        assertTrue(text.contains("reports = \"../plan/walk-reports.csv\""), text);
        assertEquals(1, Scene.open(PlanFile.open(near)).tiles().tiles().size());
        assertTrue(
                run.stage().getTitle().contains("(near.toml in near)"),
                run.stage().getTitle());
        assertFalse(run.onScreen(() -> run.session().isEdited().get()));
        assertTrue(
                run.noticeTexts().get(0).contains("Saved as " + near),
                run.noticeTexts().toString());
        run.snapshot("save-elsewhere");
        pressNotice("Show in folder");
        assertEquals(List.of(near.getParent()), shown);

        Path far = Files.createDirectories(folder.resolve("stick/trip")).resolve("trip.toml");
        run.onScreen(() -> run.session().saveAs(far, PlanFile.Named.TAKEN_ALONG, () -> {}));
        run.settle();
        assertEquals(1, run.noticeTexts().size(), run.noticeTexts().toString());
        try (Stream<Path> files = Files.walk(far.getParent())) {
            assertEquals(
                    List.of(
                            "bench.csv",
                            "tiles/cumberland-forest-3s.tif",
                            "trip.toml",
                            "walk-reports.csv",
                            "walk-track.gpx"),
                    files.filter(Files::isRegularFile)
                            .map(file -> far.getParent().relativize(file).toString())
                            .sorted()
                            .toList());
        }
        assertTrue(Files.readString(far).contains("tiles = \"tiles\""));
    }

    @Test
    void aFolderThatCannotBeWrittenOffersAnotherOne() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        // A folder in the place of the lock keeps everybody from saving here, the administrator too.
        Files.createDirectories(run.plan().resolveSibling(".plan.toml.lock"));
        edit();
        run.robot().push(KeyCode.SHORTCUT, KeyCode.S);
        run.settle();
        assertTrue(
                run.noticeTexts().get(0).contains("name another folder"),
                run.noticeTexts().toString());
        assertTrue(run.robot().lookup(".notice-verb").queryAllAs(Button.class).stream()
                .anyMatch(button -> button.getText().equals("Save elsewhere\u2026")));
        run.snapshot("save-read-only");
        Path other = Files.createDirectories(folder.resolve("home")).resolve("plan.toml");
        run.onScreen(() -> run.session().saveAs(other, PlanFile.Named.WHERE_THEY_ARE, () -> {}));
        run.settle();
        assertTrue(Files.readString(other).contains("three crews"));
        assertFalse(run.onScreen(() -> run.session().isEdited().get()));
    }

    @Test
    void whatCannotBeTakenAlongLeavesNothingBehind() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        edit();
        Path target = Files.createDirectories(folder.resolve("full")).resolve("plan.toml");
        // Folders of these names cannot be written over by anybody; the copies get names of their own.
        Files.createDirectories(target.resolveSibling("bench.csv").resolve("inside"));
        run.onScreen(() -> run.session().saveAs(target, PlanFile.Named.TAKEN_ALONG, () -> {}));
        run.settle();
        assertTrue(Files.readString(target).contains("file = \"bench-2.csv\""), Files.readString(target));
        Path blocked = Files.writeString(folder.resolve("blocked"), "").resolve("plan.toml");
        String before = run.onScreen(() -> run.session().scene().get().file().text());
        edit();
        run.onScreen(() -> run.session().saveAs(blocked, PlanFile.Named.TAKEN_ALONG, () -> {}));
        run.settle();
        assertTrue(
                run.noticeTexts().get(0).contains("blocked"), run.noticeTexts().toString());
        assertEquals(
                before, run.onScreen(() -> run.session().scene().get().file().text()));
    }

    @Test
    void theEndingIsAddedWhereItWasLeftOutAndNothingIsWrittenOverByThat() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        Path there = Files.writeString(folder.resolve("crew-two.toml"), "x");
        Path typed = folder.resolve("crew-two");
        assertEquals(Optional.empty(), run.onScreen(() -> WindowVerbs.named(run.session(), typed, ".toml")));
        assertTrue(run.noticeTexts().get(0).startsWith(there + " is there already"));
        assertEquals(Optional.of(there), run.onScreen(() -> WindowVerbs.named(run.session(), there, ".toml")));
        assertEquals(Path.of("a/crew-two.toml"), WindowVerbs.withEnding(Path.of("a/crew-two"), ".toml"));
        assertEquals(Path.of("a/card.PDF"), WindowVerbs.withEnding(Path.of("a/card.PDF"), ".pdf"));
    }

    @Test
    void editsThatWereNotSavedAreOfferedAtTheNextStart() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        Path plan = run.plan();
        Path kept = plan.resolveSibling("plan.toml.unsaved");
        edit();
        assertTrue(Files.readString(kept).contains("three crews"));
        // The window dies: nothing of what it does at its end is done.
        run.close();
        run = WindowRun.bare(folder, Optional.of(plan));
        run.await(() -> run.session().scene().get() != null);
        run.settle();
        assertTrue(
                run.noticeTexts().get(0).contains("They were kept"),
                run.noticeTexts().toString());
        run.snapshot("save-recovered");
        pressNotice("Take them back");
        assertTrue(run.onScreen(() -> run.session().scene().get().file().text()).contains("three crews"));
        run.robot().push(KeyCode.SHORTCUT, KeyCode.S);
        run.settle();
        assertTrue(Files.readString(plan).contains("three crews"));
        try (Stream<Path> files = Files.list(plan.getParent())) {
            assertEquals(
                    List.of(),
                    files.filter(file -> file.toString().contains(".unsaved")).toList());
        }
        assertEquals(1, run.noticeTexts().size(), run.noticeTexts().toString());
    }
}
