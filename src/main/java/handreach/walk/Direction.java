package handreach.walk;

import handreach.input.Keyword;
import java.util.List;

/** Who was heard: a report is about one direction, or about a call that had to go both ways. */
public enum Direction {
    /** The base called, the walker listened. */
    TO_WALKER("to-walker"),
    /** The walker called, the base listened. */
    TO_BASE("to-base"),
    /** Call and answer. */
    BOTH("both");

    /** How files and options name them. */
    public static final Keyword<Direction> KEYWORD = Keyword.of(List.of(values()), Direction::word);

    private final String word;

    Direction(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
