package handreach.desktop;

import handreach.input.NumberText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javafx.geometry.Rectangle2D;

/**
 * How the window looked when it was closed: its place, its words, night, what was folded. One word and its value a line in a small
 * file of the user's own folder; what cannot be read there is forgotten.
 */
final class WindowMemory {
    private static final String FILE = "window.txt";
    private static final double MOST_PX = 20_000;

    private final SortedMap<String, String> kept = new TreeMap<>();

    /** What the last window left. */
    static WindowMemory read() {
        WindowMemory memory = new WindowMemory();
        try {
            for (String line : Files.readAllLines(RecentPlans.folder().resolve(FILE), StandardCharsets.UTF_8)) {
                int equals = line.indexOf('=');
                if (equals > 0)
                    memory.kept.put(
                            line.substring(0, equals).strip(),
                            line.substring(equals + 1).strip());
            }
        } catch (IOException e) {
            return memory;
        }
        return memory;
    }

    void write() {
        RecentPlans.keep(
                FILE,
                kept.entrySet().stream()
                        .map(line -> line.getKey() + " = " + line.getValue() + "\n")
                        .collect(Collectors.joining()));
    }

    OptionalDouble number(String word) {
        OptionalDouble number = NumberText.parse(kept.getOrDefault(word, ""));
        return number.isPresent() && Math.abs(number.getAsDouble()) <= MOST_PX ? number : OptionalDouble.empty();
    }

    /** Words that were kept; empty where there are none. */
    Optional<String> text(String word) {
        return Optional.ofNullable(kept.get(word)).filter(words -> !words.isEmpty());
    }

    boolean isYes(String word) {
        return "yes".equals(kept.get(word));
    }

    void keep(String word, double number) {
        kept.put(word, Long.toString(Math.round(number)));
    }

    /** Words of one line; what would be several is not kept. */
    void keep(String word, String words) {
        kept.put(word, words.contains("\n") || words.contains("\r") ? "" : words);
    }

    void keep(String word, boolean is) {
        kept.put(word, is ? "yes" : "no");
    }

    /** Where the window stood; empty where that is unknown or no size for a window. */
    Optional<Rectangle2D> place() {
        OptionalDouble x = number("x");
        OptionalDouble y = number("y");
        double width = number("width").orElse(0);
        double height = number("height").orElse(0);
        return x.isEmpty() || y.isEmpty() || width < 300 || height < 200
                ? Optional.empty()
                : Optional.of(new Rectangle2D(x.getAsDouble(), y.getAsDouble(), width, height));
    }

    void keep(Rectangle2D place) {
        keep("x", place.getMinX());
        keep("y", place.getMinY());
        keep("width", place.getWidth());
        keep("height", place.getHeight());
    }
}
