package handreach.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import javafx.geometry.Insets;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** A line is as high as the toolkit's own label beside it, whatever was asked or changed before. */
@Isolated
class LineLabelTest {
    private static final String WORDS =
            "Lines of words that are long enough to be broken into several rows in a narrow place. ";

    private Label plain;
    private Label line;
    private VBox box;

    @BeforeEach
    void makeBoth() throws TimeoutException {
        FxToolkit.registerPrimaryStage();
        WaitForAsyncUtils.waitForAsyncFx(60_000, () -> {
            plain = new Label(WORDS);
            line = new LineLabel(WORDS);
            box = new VBox(plain, line);
            return null;
        });
    }

    private void change(Consumer<Label> step) {
        step.accept(plain);
        step.accept(line);
        for (int again = 0; again < 2; again++)
            for (double width : new double[] {120, 300, 120, 80, 300}) {
                box.applyCss();
                assertEquals(plain.prefHeight(width), line.prefHeight(width), width + " wide: " + line.getText());
            }
        box.resize(200, 900);
        box.layout();
        assertEquals(plain.getHeight(), line.getHeight());
    }

    @Test
    void itIsAsHighAsAPlainOneAfterEveryChange() {
        WaitForAsyncUtils.waitForAsyncFx(60_000, () -> {
            // Asked before it has any looks.
            assertEquals(plain.prefHeight(100), line.prefHeight(100));
            new Scene(box);
            change(label -> label.setWrapText(true));
            double before = line.prefHeight(120);
            change(label -> label.setText(WORDS + WORDS));
            assertNotEquals(before, line.prefHeight(120));
            change(label -> label.setStyle("-fx-font-size: 21px;"));
            change(label -> label.setPadding(new Insets(7)));
            change(label -> label.setLineSpacing(5));
            box.setStyle("-fx-font-size: 9px;");
            change(label -> label.setStyle(""));
            return null;
        });
    }
}
