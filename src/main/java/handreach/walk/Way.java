package handreach.walk;

import handreach.input.Keyword;
import java.util.List;

/** Who was heard: a report is about one direction, or about a call that had to go both ways. */
public enum Way {
    TO_WALKER("to-walker", "the base called, the walker listened"),
    TO_BASE("to-base", "the walker called, the base listened"),
    BOTH("both", "call and answer");

    /** How files and options name them. */
    public static final Keyword<Way> KEYWORD = Keyword.of(List.of(values()), Way::word);

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
}
