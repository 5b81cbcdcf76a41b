package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javafx.geometry.Pos;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.testfx.util.WaitForAsyncUtils;

/** Files dragged onto the map by the mouse, through the toolkit: what {@link FileDrop} is told is the toolkit's own. */
@Isolated
class FileDropTest {
    @TempDir
    private Path folder;

    private WindowRun run;

    @AfterEach
    void closeTheWindow() {
        if (run != null) run.close();
    }

    /** A label on the map that hands out what a file manager would; the virtual display drags within one window only. */
    private Label handingOut(ClipboardContent content) {
        Label sheet = new Label("a file");
        sheet.setId("sheet");
        sheet.setMinSize(50, 50);
        sheet.setOnDragDetected(drag -> {
            sheet.startDragAndDrop(TransferMode.COPY).setContent(content);
            drag.consume();
        });
        StackPane.setAlignment(sheet, Pos.CENTER_LEFT);
        run.onScreen(
                () -> ((StackPane) run.window().map().getParent()).getChildren().add(sheet));
        run.settle();
        return sheet;
    }

    /** The virtual display keeps the view in which a mouse was dragged last, and would tell that one that this drag leaves it. */
    private static void forgetEarlierDrags() {
        try {
            Class<?> mouse = Class.forName("com.sun.glass.ui.monocle.MouseInput");
            Method instance = mouse.getDeclaredMethod("getInstance");
            instance.setAccessible(true);
            Field view = mouse.getDeclaredField("dragView");
            view.setAccessible(true);
            view.set(instance.invoke(null), null);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("another virtual display", e);
        }
    }

    /** Drags the label to the camp and lets go; tells what the window answered, many of the same answer as one. */
    private Set<String> drag(ClipboardContent content) {
        Label sheet = handingOut(content);
        Set<String> answers = new LinkedHashSet<>();
        run.onScreen(() -> {
            Parent root = run.stage().getScene().getRoot();
            root.addEventHandler(DragEvent.DRAG_OVER, over -> answers.add("over " + over.getAcceptedTransferMode()));
            root.addEventHandler(DragEvent.DRAG_DROPPED, drop -> answers.add("dropped " + drop.isDropCompleted()));
        });
        assertFalse(isHinted());
        run.onScreen(FileDropTest::forgetEarlierDrags);
        run.robot().drag(sheet).moveTo(run.pixel(run.position("spike camp"))).moveBy(5, 5);
        WaitForAsyncUtils.waitForFxEvents();
        answers.add(isHinted() ? "hinted" : "not hinted");
        run.robot().drop();
        run.settle();
        assertFalse(isHinted());
        return answers;
    }

    private boolean isHinted() {
        return run.onScreen(() -> run.node("#drop-hint").isVisible());
    }

    @Test
    void aTrackDraggedOntoTheMapIsReadAndOffered() throws IOException {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        Path track = folder.resolve("ford.gpx");
        Files.writeString(track, """
                <gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">
                <wpt lat="36.280" lon="-84.215"><name>ford</name></wpt>
                </gpx>
                """);
        ClipboardContent content = new ClipboardContent();
        content.putFiles(List.of(track.toFile()));
        assertEquals(Set.of("over COPY", "hinted", "dropped true"), drag(content));
        run.press("#bring-positions");
        assertTrue(run.onScreen(() -> run.session().scene().get().plan().places().positions().stream()
                .anyMatch(entry -> entry.name().equals("ford"))));
    }

    @Test
    void wordsDraggedOntoTheMapAreNotTaken() {
        run = WindowRun.onLittleGround(folder, "forest-hills");
        ClipboardContent content = new ClipboardContent();
        content.putString("ford");
        assertEquals(Set.of("over null", "not hinted", "dropped false"), drag(content));
        assertEquals(List.of(), run.noticeTexts());
    }
}
