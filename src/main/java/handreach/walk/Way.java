package handreach.walk;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Who was heard: a report is about one direction, or about a call that had to go both ways. */
public enum Way {
    TO_WALKER("to-walker", "the base called, the walker listened"),
    TO_BASE("to-base", "the walker called, the base listened"),
    BOTH("both", "call and answer");

    private final String word;
    private final String meaning;

    Way(String word, String meaning) {
        this.word = word;
        this.meaning = meaning;
    }

    public String word() {
        return word;
    }

    public String meaning() {
        return meaning;
    }

    public static Optional<Way> of(String word) {
        String low = word.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(way -> way.word.equals(low)).findFirst();
    }

    public static List<String> words() {
        return Arrays.stream(values()).map(Way::word).toList();
    }
}
