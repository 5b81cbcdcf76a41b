package handreach.desktop;

import java.util.HashMap;
import java.util.Map;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/** How wide words come out, px. Measuring takes a twentieth of a millisecond each, too long for every picture: kept. */
final class WordWidths {
    private static final int MOST = 1000;

    private final Map<Words, Double> known = new HashMap<>();

    private record Words(String text, Font font) {}

    double px(String text, Font font) {
        if (known.size() > MOST) known.clear();
        return known.computeIfAbsent(new Words(text, font), WordWidths::measured);
    }

    private static double measured(Words words) {
        Text text = new Text(words.text());
        text.setFont(words.font());
        return text.getLayoutBounds().getWidth();
    }
}
