package handreach.desktop;

import java.util.HashMap;
import java.util.Map;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;

/** The two fonts of the map, and how wide they come out. Measuring takes a twentieth of a millisecond each, too long for every picture: kept. */
final class MapFonts {
    static final double USUAL_PX = 13;
    private static final int MOST = 1000;
    private static final double LINE = 17.0 / 13;

    private final Map<Line, Double> known = new HashMap<>();
    private final double sizePx;
    private final Font plain;
    private final Font bold;

    private record Line(String text, boolean isBold) {}

    MapFonts(double sizePx) {
        this.sizePx = sizePx;
        this.plain = Font.font(Theme.FAMILY, FontWeight.NORMAL, sizePx);
        this.bold = Font.font(Theme.FAMILY, FontWeight.BOLD, sizePx);
    }

    Font font(boolean isBold) {
        return isBold ? bold : plain;
    }

    double sizePx() {
        return sizePx;
    }

    /** Height of a line, px. */
    double linePx() {
        return sizePx * LINE;
    }

    double px(String text, boolean isBold) {
        if (known.size() > MOST) known.clear();
        return known.computeIfAbsent(new Line(text, isBold), this::measured);
    }

    private double measured(Line line) {
        Text text = new Text(line.text());
        text.setFont(font(line.isBold()));
        return text.getLayoutBounds().getWidth();
    }
}
