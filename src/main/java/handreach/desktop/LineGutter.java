package handreach.desktop;

import java.util.Set;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.TextArea;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Line numbers beside a text, with a mark at every line in which something is wrong. */
final class LineGutter extends Pane {
    private static final double WIDE_PX = 46;
    /** Space above the first line, as the style sheet gives it to the text. */
    private static final double TOP_PX = 5;

    private final TextArea text;
    private final Canvas canvas = new Canvas();
    private Set<Integer> faulty = Set.of();
    private double linePx = 16;

    LineGutter(TextArea text) {
        this.text = text;
        getStyleClass().add("line-gutter");
        setMinWidth(WIDE_PX);
        setPrefWidth(WIDE_PX);
        setAccessibleText("Line numbers");
        getChildren().add(canvas);
        canvas.widthProperty().bind(widthProperty());
        canvas.heightProperty().bind(heightProperty());
        heightProperty().addListener((height, was, is) -> draw());
        text.scrollTopProperty().addListener((top, was, is) -> draw());
        text.fontProperty().addListener((font, was, is) -> draw());
        text.textProperty().addListener((words, was, is) -> requestLayout());
    }

    /** Lines to mark, from 1. */
    void mark(Set<Integer> lines) {
        faulty = Set.copyOf(lines);
        draw();
    }

    Set<Integer> marked() {
        return faulty;
    }

    /** Brings a line into view. */
    void show(int line) {
        text.setScrollTop(Math.max(0, (line - 4) * linePx));
    }

    @Override
    protected void layoutChildren() {
        super.layoutChildren();
        draw();
    }

    private void draw() {
        measure();
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.clearRect(0, 0, getWidth(), getHeight());
        pen.setFont(text.getFont());
        pen.setTextAlign(TextAlignment.RIGHT);
        double top = text.getScrollTop();
        int lines = text.getParagraphs().size();
        int first = Math.max(1, (int) Math.floor((top - TOP_PX) / linePx));
        int last = Math.min(lines, (int) Math.ceil((top + getHeight()) / linePx) + 1);
        for (int line = first; line <= last; line++) {
            double y = TOP_PX + (line - 1) * linePx - top;
            boolean isFaulty = faulty.contains(line);
            if (isFaulty) {
                pen.setFill(Color.web("#c1541f"));
                pen.fillRect(0, y, WIDE_PX, linePx);
            }
            pen.setFill(isFaulty ? Color.WHITE : Color.web("#808b8f"));
            pen.fillText(Integer.toString(line), WIDE_PX - 8, y + linePx * 0.77);
        }
    }

    /** As high as the lines of the text itself came out; which depends on the fonts of the machine. */
    private void measure() {
        Node words = text.lookup(".content .text");
        if (words != null && !text.getText().isEmpty())
            linePx = words.getLayoutBounds().getHeight() / text.getParagraphs().size();
    }
}
