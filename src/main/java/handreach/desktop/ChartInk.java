package handreach.desktop;

import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;

/** Lines and words of a chart in the window, by day and by night. */
final class ChartInk {
    private static final double WORDS_PX = 12.5;

    private final GraphicsContext gc;
    private final Look look;
    private final Colours colours;

    ChartInk(GraphicsContext gc, Look look) {
        this.gc = gc;
        this.look = look;
        this.colours = Colours.of(look);
    }

    /** What a cut through the ground is painted with. */
    record Colours(Color ground, Color edge, Color trees, Color town, Color ray) {
        private static Colours of(Look look) {
            return look == Look.DAY
                    ? new Colours(
                            Color.web("#c3b8a5"),
                            Color.web("#54493a"),
                            Color.web("#6f8f78"),
                            Color.web("#a5867a"),
                            Color.web("#0b4f7a"))
                    : new Colours(
                            Color.web("#57503f"),
                            Color.web("#c9bda6"),
                            Color.web("#5b7c66"),
                            Color.web("#86675c"),
                            Color.web("#8cc4e8"));
        }
    }

    GraphicsContext gc() {
        return gc;
    }

    Look look() {
        return look;
    }

    Colours colours() {
        return colours;
    }

    void line(Color colour, double alpha, double width, double x1, double y1, double x2, double y2) {
        gc.setStroke(colour);
        gc.setGlobalAlpha(alpha);
        gc.setLineWidth(width);
        gc.strokeLine(x1, y1, x2, y2);
        gc.setGlobalAlpha(1);
    }

    void words(String words, double x, double y, TextAlignment side, Color colour, boolean isBold) {
        gc.setFont(font(isBold));
        gc.setTextAlign(side);
        gc.setStroke(look.halo());
        gc.setLineWidth(3);
        if (isBold) gc.strokeText(words, x, y);
        gc.setFill(colour);
        gc.fillText(words, x, y);
    }

    private static Font font(boolean isBold) {
        return Font.font(Theme.FAMILY, isBold ? FontWeight.BOLD : FontWeight.NORMAL, WORDS_PX);
    }

    static double widthOf(String words, boolean isBold) {
        Text text = new Text(words);
        text.setFont(font(isBold));
        return text.getLayoutBounds().getWidth();
    }
}
