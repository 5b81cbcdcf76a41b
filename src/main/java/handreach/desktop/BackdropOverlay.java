package handreach.desktop;

import handreach.cartography.MapFrame;
import handreach.terrain.GroundPicture;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.text.TextAlignment;

/** Whose work the picture under the reach is, above the scale in the lower left corner. */
final class BackdropOverlay implements MapOverlay {
    private static final double LEFT_PX = 16;
    /** Scale, contours and channel stand below, with what keeps them apart. */
    private static final double LINES_BELOW = 3;

    private static final double UP_PX = 21;
    private static final double WIDEST_PX = 520;

    private final Supplier<Optional<Backdrop.Laid<GroundPicture>>> laid;

    BackdropOverlay(Supplier<Optional<Backdrop.Laid<GroundPicture>>> laid) {
        this.laid = laid;
    }

    static String words(GroundPicture picture) {
        return "backdrop " + picture.name()
                + (picture.attribution().isEmpty() ? ", whose file names no author" : ": " + picture.attribution());
    }

    @Override
    public void draw(MapPen pen, MapFrame frame) {
        if (laid.get().isEmpty()) return;
        List<String> lines = wrapped(words(laid.get().get().what()), pen, Math.min(WIDEST_PX, frame.widthPx() / 2.0));
        double y = frame.heightPx() - UP_PX - LINES_BELOW * pen.linePx();
        for (int i = 0; i < lines.size(); i++)
            pen.words(
                    lines.get(i),
                    LEFT_PX,
                    y - (lines.size() - 1 - i) * pen.linePx(),
                    TextAlignment.LEFT,
                    false,
                    pen.palette().ink());
    }

    private static List<String> wrapped(String words, MapPen pen, double widestPx) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.split(" ")) {
            if (line.length() > 0 && pen.px(line + " " + word, false) > widestPx) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
