package handreach.desktop;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import javafx.scene.Parent;
import javafx.scene.text.Font;

/** Typeface and style sheet of the window. */
final class Theme {
    /** Family name inside the font files that travel with the program. */
    static final String FAMILY = "DejaVu Sans Condensed";

    private static final String[] FACES = {"DejaVuSansCondensed.ttf", "DejaVuSansCondensed-Bold.ttf"};

    private Theme() {}

    /** Makes the typeface known; once a window. */
    static void loadFaces() {
        for (String face : FACES) {
            try (InputStream in = Theme.class.getResourceAsStream("/handreach/report/fonts/" + face)) {
                Font.loadFont(in, 13);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    static void apply(Parent root, Palette palette) {
        String sheet = Theme.class.getResource("desk.css").toExternalForm();
        if (!root.getStylesheets().contains(sheet)) root.getStylesheets().add(sheet);
        root.getStyleClass().removeAll("day", "night");
        root.getStyleClass().add(palette == Palette.DAY ? "day" : "night");
    }
}
