package handreach.walk;

import handreach.input.Keyword;
import java.util.List;

/** Who was heard: a report is about one direction, or about a call that had to go both ways. */
public enum Way {
    /** The base called, the walker listened. */
    TO_WALKER("to-walker"),
    /** The walker called, the base listened. */
    TO_BASE("to-base"),
    /** Call and answer. */
    BOTH("both");

    /** How files and options name them. */
    public static final Keyword<Way> KEYWORD = Keyword.of(List.of(values()), Way::word);

    private final String word;

    Way(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
